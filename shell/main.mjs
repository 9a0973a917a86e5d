// @ts-check
// Starts the page: C++ first, then fonts, then events and frames. Decides nothing; everything is C++'s to decide.

import { createBridge, kind } from './bridge.mjs';
import { listen } from './events.mjs';
import { clipboardPut, listenToDrops, printHtml, saveFile } from './files.mjs';
import { createFrames } from './frames.mjs';
import { listenToMedia, listenToPrinting, mediaBits } from './media.mjs';
import { createMirror } from './mirror.mjs';
import { forgetOffline, keepOffline, takeUpdate } from './offline.mjs';
import { createPainter } from './painter.mjs';
import { joinSecondPart, startProgram } from './program.mjs';
import { listenToStorage, storeGet, storeList, storePut, storeRemove } from './storage.mjs';
import { createTexts } from './texts.mjs';

/** @param {string} id @returns {any} */
const part = (id) => document.getElementById(id);
const mirror = createMirror(part('page'), part('fixed'));

/** Shows one of the sentences of index.html. @param {'trouble' | 'stopped'} which @param {unknown} reason */
function tell(which, reason) {
    part(which).hidden = false;
    console.error(reason);
}

/** The browser's side of web/browser/platform.hpp. @type {any} */
const host = {
    storeGet, storePut, storeRemove, storeList, saveFile, printHtml, clipboardPut, takeUpdate, forgetOffline,
    focus: mirror.focus,
    media: mediaBits,
    scrollTo: (/** @type {number} */ y) => window.scrollTo({ top: y, behavior: 'instant' }),
    isoTime: () => `${new Date().toISOString().slice(0, 19)}Z`,
    random: () => crypto.getRandomValues(new Int32Array(1))[0],
    language: () => navigator.language || 'en',
    fragment: () => location.hash.slice(1),
    forgetFragment: () => history.replaceState(null, '', location.pathname + location.search),
};

/** Gives the page's elements the very bytes that the canvas is drawn with. @param {any} module */
async function shareFonts(module) {
    await Promise.all(['400', '600'].map(async (weight, which) => {
        const at = module._ow_font(which);
        const bytes = module.HEAPU8.slice(at, at + module._ow_font_size(which));
        document.fonts.add(await new FontFace('Overwater Sans', bytes, { weight }).load());
    }));
}

async function start() {
    const module = await startProgram(host);
    const { send, inside } = createBridge(module, (reason) => tell('stopped', reason));
    let fitCanvas = () => {};
    const { wake } = createFrames(() => {
        fitCanvas();
        return inside(() => module._ow_frame());
    });
    /** @type {Map<string, number>} */
    const timers = new Map();
    const texts = createTexts(send);
    Object.assign(host, {
        // Nothing is drawn before there are words to draw.
        wake() {},
        bringText: texts.bringText,
        bringSecondPart() {
            joinSecondPart().then(() => send(kind.part, '', '', 1), () => send(kind.part));
        },
        painter: createPainter(part('canvas'), send),
        /** @param {string} json */
        patchMirror(json) {
            const lost = mirror.apply(json);
            if (lost !== '') send(kind.blur, lost);
        },
        /** @param {string} name @param {number} milliseconds */
        startTimer(name, milliseconds) {
            clearTimeout(timers.get(name));
            timers.set(name, window.setTimeout(() => send(kind.timer, name), milliseconds));
        },
    });

    const painted = () => module._ow_painting() !== 0;
    inside(() => module._ow_start());
    await Promise.all([shareFonts(module), texts.here()]);
    host.wake = wake;
    document.body.classList.toggle('plain', !painted());
    fitCanvas = listenToMedia(part('canvas'), send);
    listenToPrinting(painted);
    listen(send, mirror);
    listenToDrops(send);
    listenToStorage(send);
    // For measuring: mean milliseconds of a frame's C++ side, over n frames.
    globalThis.overwaterBench = (n) => inside(() => module._ow_bench(n));
    wake(3);
    keepOffline(send);
}

start().catch((reason) => tell('trouble', reason));
