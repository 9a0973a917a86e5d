// @ts-check
// The one way into the C++. Every event goes through `send`. The browser can raise an event while C++ is running (moving
// the focus does); such an event waits until the call before it has come back.

/** Event::Kind of web/browser/event.hpp. */
export const kind = Object.freeze({
    click: 1, input: 2, change: 3, focus: 4, blur: 5, key: 6, pointerMove: 7, pointerLeave: 8, pointerDown: 9,
    pointerUp: 10, resize: 11, scroll: 12, media: 13, visibility: 14, storage: 15, file: 16, timer: 17, undo: 18,
    redo: 19, contextLost: 20, contextRestored: 21, compositionStart: 22, compositionEnd: 23, fragment: 24, update: 26,
    text: 27, part: 28,
});

/**
 * @param {any} module the instance of overwater.js
 * @param {(reason: unknown) => void} broken called once when the C++ has stopped for good
 */
export function createBridge(module, broken) {
    /** @type {Array<[number, string, string, number, number, number]>} */
    const waiting = [];
    const encoder = new TextEncoder();
    let running = false;
    let stopped = false;

    /** @param {string} text */
    function memoryOf(text) {
        const bytes = encoder.encode(text);
        const pointer = module._ow_allocate(bytes.length + 1);
        module.HEAPU8.set(bytes, pointer);
        module.HEAPU8[pointer + bytes.length] = 0;
        return pointer;
    }

    /**
     * Runs `work`, which calls C++, and afterwards hands over the events that came in meanwhile.
     * @param {() => number} work
     */
    function inside(work) {
        if (stopped) return 0;
        running = true;
        let result = 0;
        try {
            result = work();
        } catch (reason) {
            stopped = true;
            broken(reason);
        }
        running = false;
        const next = waiting.shift();
        if (next) send(...next);
        return result;
    }

    /** @type {Send} */
    function send(what, key = '', text = '', a = 0, b = 0, c = 0) {
        if (running) {
            waiting.push([what, key, text, a, b, c]);
            return false;
        }
        return inside(() => {
            const keyAt = memoryOf(key);
            const textAt = memoryOf(text);
            const used = module._ow_handle(what, keyAt, textAt, a, b, c);
            module._ow_release(keyAt);
            module._ow_release(textAt);
            return used;
        }) !== 0;
    }

    return { send, inside };
}
