// One window of WebKitGTK as a tab of Playwright: what a person does comes by WebDriver, all else by the inspector.
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Button, Key } from 'selenium-webdriver';
import { decode } from '../browser/png.mjs';
import { nextDownload } from './downloads.mjs';
import { insert } from './typing.mjs';
import { locate } from './webkit_find.mjs';

const names = { Space: ' ', Control: Key.CONTROL, Shift: Key.SHIFT, ...Object.fromEntries(['Tab', 'Enter', 'Escape', 'Home', 'End', 'Backspace', 'Delete']
    .map((name) => [name, Key[name.toUpperCase()]])), ArrowRight: Key.ARROW_RIGHT, ArrowLeft: Key.ARROW_LEFT, ArrowUp: Key.ARROW_UP,
ArrowDown: Key.ARROW_DOWN, PageUp: Key.PAGE_UP, PageDown: Key.PAGE_DOWN };
const types = { '.json': 'application/json', '.csv': 'text/csv', '.png': 'image/png' };

/** What is left to the page's own click on a field for files, instead of the browser's dialogue. Runs in the page, before its scripts. */
export function catchChoosers() {
    const click = HTMLElement.prototype.click;
    HTMLElement.prototype.click = function () {
        if (this.type === 'file') globalThis.overwaterChooser = this;
        else click.call(this);
    };
}

/** Part of a picture: its samples, which are compared. */
function cutOut(png, { x, y, width, height }, ratio) {
    const picture = decode(png);
    const [left, top, right, bottom] = [x, y, x + width, y + height].map((at) => Math.round(at * ratio));
    const row = (at) => picture.data.subarray((at * picture.width + left) * picture.channels, (at * picture.width + right) * picture.channels);
    return Buffer.concat(Array.from({ length: bottom - top }, (_, i) => row(top + i)));
}

/**
 * inWindow(work): does something by WebDriver in this window, `work(driver)`; inspector: the window's; downloads: where the browser
 * puts files; ratio: pixels a pixel.
 */
export function makeTab({ inWindow, inspector, downloads, ratio, onClose }) {
    const listeners = { console: [], pageerror: [] };
    inspector.on('Console.messageAdded', ({ message: { level, text } }) => {
        if (!text.startsWith('overwater-binding ')) listeners.console.forEach((hear) => hear({ type: () => level, text: () => text }));
    });

    /** The value of an expression, a promise's where it is one. */
    async function run(expression) {
        // What goes wrong comes back as a value: a promise that nobody awaits yet would be reported as the page's own.
        const asked = `(async () => JSON.stringify([await (${expression})]))().catch((error) => String(error))`;
        const { result: promise, wasThrown } = await inspector.send('Runtime.evaluate', { expression: asked, emulateUserGesture: true });
        if (wasThrown) throw new Error(promise.description);
        const { result } = await inspector.send('Runtime.awaitPromise', { promiseObjectId: promise.objectId, returnByValue: true });
        if (!result.value?.startsWith('[')) throw new Error(result.value ?? result.description);
        return JSON.parse(result.value)[0] ?? undefined;
    }
    const evaluate = (fn, arg) => {
        if (typeof fn === 'string') return inspector.send('Runtime.evaluate', { expression: fn });
        return run(`(${fn})(${arg === undefined ? '' : JSON.stringify(arg)})`);
    };
    async function until(condition, timeout, what) {
        for (const end = Date.now() + timeout; ; await pause(50)) {
            const found = await condition();
            if (found) return found;
            if (Date.now() > end) throw new Error(`${what}: not in ${timeout} ms`);
        }
    }
    // To the element that has the focus: as actions of the keyboard, letters come twice.
    const send = (text) => inWindow(async (driver) => (await driver.switchTo().activeElement()).sendKeys(text));
    const point = (work) => inWindow((driver) => work(driver.actions({ async: true })).perform());
    const to = (x, y) => ({ x: Math.round(x), y: Math.round(y), duration: 0 });

    const tab = {
        run, evaluate, waitForTimeout: pause,
        on: (name, hear) => listeners[name].push(hear),
        goto: (address) => inWindow((driver) => driver.get(address)),
        reload: () => inWindow((driver) => driver.navigate().refresh()),
        title: () => evaluate(() => document.title),
        locator: (css, { hasText } = {}) => locate(tab, { css, hasText }),
        getByRole: (role, { name, exact } = {}) =>
            locate(tab, name instanceof RegExp ? { role, pattern: name.source } : { role, name, exact }),
        waitForFunction: (fn, arg, { timeout = 30_000 } = {}) => until(() => evaluate(fn, arg), timeout, String(fn)),
        waitForSelector: (css, how) => tab.locator(css).first().waitFor(how),
        keyboard: {
            press: (keys) => send(keys.length === 1 ? keys : (keys.includes('+') ? Key.chord : String)(...keys.split('+').map((key) => names[key] ?? key))),
            type: send,
            insertText: (text) => evaluate(insert, text),
        },
        mouse: {
            async move(x, y, { steps = 1 } = {}) {
                for (let step = 1; step <= steps; ++step) await point((all) => all.move(to(x - steps + step, y)));
            },
            down: () => point((all) => all.press(Button.LEFT)),
            up: () => point((all) => all.release(Button.LEFT)),
            click: (x, y) => point((all) => all.move(to(x, y)).press(Button.LEFT).release(Button.LEFT)),
        },
        async screenshot({ path, clip } = {}) {
            const png = Buffer.from(await inWindow((driver) => driver.takeScreenshot()), 'base64');
            if (path) writeFileSync(path, png);
            return clip ? cutOut(png, clip, ratio) : png;
        },
        async addStyleTag({ path }) {
            await evaluate((text) => {
                const style = document.createElement('style');
                style.textContent = text;
                document.head.append(style);
            }, readFileSync(path, 'utf8'));
        },
        /** Something that stays in the page, to be given to `dispatchEvent`. */
        evaluateHandle: (fn, arg) => run(`void (globalThis.overwaterHeld = (${fn})(${JSON.stringify(arg)}))`),
        dispatchEvent: (css, type) => run(`void document.querySelector(${JSON.stringify(css)}).dispatchEvent(
            new DragEvent(${JSON.stringify(type)}, { bubbles: true, cancelable: true, dataTransfer: globalThis.overwaterHeld }))`),
        async emulateMedia({ reducedMotion, colorScheme }) {
            if (reducedMotion) await inspector.send('Page.overrideUserPreference', { name: 'PrefersReducedMotion', value: reducedMotion === 'reduce' ? 'Reduce' : 'NoPreference' });
            if (colorScheme) await inspector.send('Page.overrideUserPreference', { name: 'PrefersColorScheme', value: colorScheme === 'dark' ? 'Dark' : 'Light' });
        },
        /** Answers every request of the page itself; nothing of it goes out. */
        async route(_, answer) {
            await inspector.send('Network.setInterceptionEnabled', { enabled: true });
            await inspector.send('Network.addInterception', { url: '', stage: 'request' });
            inspector.on('Network.requestIntercepted', ({ requestId }) => answer({
                fulfill: ({ body }) => inspector.send('Network.interceptRequestWithResponse', {
                    requestId, content: body, base64Encoded: false, mimeType: 'text/html', status: 200, statusText: 'OK', headers: {},
                }).catch(() => {}),
            }));
        },
        waitForEvent(name) {
            return name === 'download' ? nextDownload(downloads) : nextChooser();
        },
        close: onClose,
    };

    async function nextChooser() {
        await until(() => evaluate(() => Boolean(globalThis.overwaterChooser)), 30_000, 'a choice of files');
        return {
            async setFiles(given) {
                const files = [given].flat().map((one) => (typeof one === 'string'
                    ? { name: basename(one), type: types[extname(one)] ?? '', bytes: readFileSync(one).toString('base64') }
                    : { name: one.name, type: one.mimeType, bytes: one.buffer.toString('base64') }));
                await evaluate((list) => {
                    const transfer = new DataTransfer();
                    for (const { name, type, bytes } of list) transfer.items.add(new File([Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0))], name, { type }));
                    const field = globalThis.overwaterChooser;
                    globalThis.overwaterChooser = undefined;
                    field.files = transfer.files;
                    for (const name of ['input', 'change']) field.dispatchEvent(new Event(name, { bubbles: true }));
                }, files);
            },
        };
    }
    return tab;
}
