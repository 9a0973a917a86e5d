// @ts-check
// Frames on demand: nothing is drawn unless someone asked for it.

/** @param {() => number} draw draws one frame and returns how many more it wants */
export function createFrames(draw) {
    let wanted = 0;
    let asked = false;
    globalThis.overwaterFrames = 0;

    function step() {
        asked = false;
        wanted -= 1;
        globalThis.overwaterFrames += 1;
        const more = draw();
        // The first frame has no glyphs yet: the second is the first to be read.
        if (globalThis.overwaterFrames === 2) performance.mark('overwater-first-frame');
        wake(Math.max(wanted, more));
    }

    /** At least `frames` more frames. @param {number} frames */
    function wake(frames) {
        wanted = Math.max(wanted, frames);
        if (wanted <= 0 || asked) return;
        asked = true;
        requestAnimationFrame(step);
    }
    return { wake };
}
