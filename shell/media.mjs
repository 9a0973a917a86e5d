// @ts-check
// What the page is shown on: size, pixel ratio, and what the person has set in the browser or the system.

import { kind } from './bridge.mjs';

// In the order of the bits that `ow_media` returns (browser_platform.cpp).
const lists = [
    '(prefers-color-scheme: dark)', '(prefers-contrast: more)', '(forced-colors: active)',
    '(prefers-reduced-motion: reduce)', '(pointer: coarse)',
].map((query) => matchMedia(query)); // made once: each frame asks

/** One bit for each question answered with yes. */
export const mediaBits = () => lists.reduce((bits, list, i) => bits | (Number(list.matches) << i), 0);

/**
 * @param {HTMLCanvasElement} canvas
 * @param {Send} send
 */
export function listenToMedia(canvas, send) {
    const pixels = { width: canvas.width, height: canvas.height };
    let told = '';

    function measure() {
        const { width, height } = canvas.getBoundingClientRect();
        const size = `${width} ${height} ${devicePixelRatio}`;
        if (size === told) return;
        told = size;
        pixels.width = Math.max(1, Math.round(width * devicePixelRatio));
        pixels.height = Math.max(1, Math.round(height * devicePixelRatio));
        send(kind.resize, '', '', width, height, devicePixelRatio);
    }
    function watchRatio() {
        matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener(
            'change', () => { measure(); watchRatio(); }, { once: true });
    }
    measure();
    watchRatio();
    new ResizeObserver(measure).observe(canvas);
    for (const list of lists) list.addEventListener('change', () => send(kind.media));
    document.addEventListener('visibilitychange', () => send(kind.visibility, '', '', Number(!document.hidden)));

    /** Called at the start of a frame: a canvas is emptied by a change of size, so it is changed just before drawing. */
    return function fitCanvas() {
        if (canvas.width !== pixels.width) canvas.width = pixels.width;
        if (canvas.height !== pixels.height) canvas.height = pixels.height;
    };
}

/** On paper the mirror is the page, as it is without WebGL. @param {() => boolean} painted */
export function listenToPrinting(painted) {
    window.addEventListener('beforeprint', () => document.body.classList.add('plain'));
    window.addEventListener('afterprint', () => document.body.classList.toggle('plain', !painted()));
}
