// Starts the built page in Chromium or another engine, served or as one file, and watches what must never happen: a message of error, a
// violation of the content-security policy, a request to anywhere else.
//
//   const page = await open({ kind: 'served' });   // or 'one-file'
//   await page.tab.getByRole('textbox', { name: 'Scale reading' }).fill('9.15');
//   page.assertClean();
//   await page.close();
//
// OVERWATER_DIST names another folder than dist, OVERWATER_CHROMIUM another browser than the `chromium` on the path,
// OVERWATER_ENGINE=Firefox or WebKitGTK another engine (tests/engines; `tools/long engines` runs every test in both).
import assert from 'node:assert/strict';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { serve } from '../../tools/server.mjs';
import { launchChromium } from '../engines/chromium.mjs';
import { launchFirefox } from '../engines/firefox.mjs';
import { launchWebKit } from '../engines/webkit.mjs';
import { distinctColours } from './png.mjs';

export const dist = resolve(process.env.OVERWATER_DIST ?? fileURLToPath(new URL('../../dist', import.meta.url)));
export const kinds = ['served', 'one-file'];

/** Chromium, or the engine that OVERWATER_ENGINE names. */
export const engine = process.env.OVERWATER_ENGINE ?? 'Chromium';
const launch = { Chromium: launchChromium, Firefox: launchFirefox, WebKitGTK: launchWebKit }[engine];
if (!launch) throw new Error(`no engine is called ${engine}`);

/** How a test is left out in an engine: `it(name, lacks({ WebKitGTK: 'a sentence' }), ...)`. */
export const lacks = (reasons) => ({ skip: reasons[engine] ?? false });

/** Serves the page; what is closed can be opened again at the same address, as a network goes and comes. */
async function startServer() {
    let running = await serve({ folder: dist, port: 0 });
    const { address, port } = running;
    return {
        address,
        async close() {
            const before = running;
            running = undefined;
            await before?.close();
        },
        async open() { running ??= await serve({ folder: dist, port }); },
    };
}

/**
 * Opens the page in a browser of its own.
 * kind: 'served' or 'one-file'; webgl: false for a browser without; size, ratio: viewport; scheme, forced colours, motion:
 * what the browser asks the page for; locale: its language; before: script run in each document first; fragment: added to the address.
 */
export async function open({
    kind = 'served', webgl = true, size = { width: 1366, height: 620 }, ratio = 1, touch = false, scheme = 'light',
    forced = false, motion = 'no-preference', before = undefined, fragment = '', ready = true, locale = undefined,
} = {}) {
    const server = kind === 'served' ? await startServer() : undefined;
    const address = server?.address ?? pathToFileURL(join(dist, 'overwater.html')).href;
    const { context, isNoise, die, close } = await launch({ size, ratio, touch, scheme, forced, motion, locale, webgl });
    // Elsewhere than in Chromium the server goes away, and not the network.
    if (engine !== 'Chromium') context.setOffline = (off) => (off ? server?.close() : server?.open());
    const seen = { messages: [], violations: [], strangers: [] };

    await context.exposeBinding('overwaterViolation', (_, text) => void (isNoise(text) || seen.violations.push(text)));
    await context.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', (event) =>
            globalThis.overwaterViolation(`${event.violatedDirective} ${event.blockedURI}`));
    });
    if (before) await context.addInitScript(before);
    const home = new URL(address);
    const own = (url) => ['blob:', 'data:', 'about:', 'chrome:'].includes(url.protocol) || url.protocol === home.protocol && url.host === home.host;
    context.on('request', (request) => {
        if (!own(new URL(request.url()))) seen.strangers.push(request.url());
    });

    /** A tab on the page, watched. */
    async function newTab({ at = address + fragment, wait = ready } = {}) {
        const tab = await context.newPage();
        tab.on('console', (message) => {
            if (/^(error|warning)$/.test(message.type()) && !isNoise(message.text())) seen.messages.push(message.text());
        });
        tab.on('pageerror', (error) => void (isNoise(String(error)) || seen.messages.push(String(error))));
        await tab.goto(at);
        if (wait) await started(tab);
        return tab;
    }

    async function closeAll() {
        await close();
        await server?.close();
    }
    const tab = await newTab().catch(async (error) => {
        await closeAll();
        throw error;
    });
    return {
        kind, address, context, server, seen, tab, newTab,
        /** The process that shows the page ends, without a word to it. */
        die: () => die(tab),
        assertClean() {
            assert.deepEqual(seen, { messages: [], violations: [], strangers: [] });
        },
        close: closeAll,
    };
}

/** Waits until the page has drawn twice and wants no more frames. */
export async function started(tab, timeout = 60_000) {
    await tab.waitForFunction(() => performance.getEntriesByName('overwater-first-frame').length > 0, undefined, { timeout });
    await still(tab);
}

export const frames = (tab) => tab.evaluate(() => globalThis.overwaterFrames);

/**
 * Waits until the page lets five of the browser's frames go by without drawing one of its own: a busy machine, whose frames come
 * late, is waited for longer. A page in the background is asked for none, so a wait of half a second stands for one there.
 */
export async function still(tab) {
    await tab.evaluate(async () => {
        const pause = (ms) => new Promise((done) => void setTimeout(done, ms));
        const offered = () => new Promise((done) => {
            const late = setTimeout(done, 500);
            requestAnimationFrame(() => { clearTimeout(late); done(undefined); });
        });
        for (let quiet = 0, before = globalThis.overwaterFrames; quiet < 5;) {
            await offered();
            await pause(20);
            quiet = before === globalThis.overwaterFrames ? quiet + 1 : 0;
            before = globalThis.overwaterFrames;
        }
    });
}

/** A text field, select, button ... by its role and accessible name. */
export const field = (tab, name, role = 'textbox') => tab.getByRole(role, { name, exact: true });

/** The canvas has a context that is not lost. */
export async function assertLiveCanvas(tab) {
    const state = await tab.evaluate(() => {
        const canvas = document.querySelector('canvas');
        const context = canvas?.getContext('webgl2') ?? canvas?.getContext('webgl');
        return context ? (context.isContextLost() ? 'lost' : 'live') : 'none';
    });
    assert.equal(state, 'live', 'WebGL context');
}

/** What is seen, with the mirror hidden so that only the canvas is looked at. */
export async function canvasPicture(tab) {
    await tab.evaluate(() => ['page', 'fixed'].forEach((id) => (document.getElementById(id) ?? document.body).style.setProperty('visibility', 'hidden')));
    const picture = await tab.screenshot();
    await tab.evaluate(() => ['page', 'fixed'].forEach((id) => (document.getElementById(id) ?? document.body).style.removeProperty('visibility')));
    return picture;
}

/** The canvas shows something: text in several shades, not one colour. */
export async function assertNotFlat(tab) {
    const colours = distinctColours(await canvasPicture(tab));
    assert.ok(colours > 20, `the canvas has ${colours} colours`);
}

/** Runs a check against an empty page and demands that it fails: a check that can't fail proves nothing. */
export async function assertCanFail(context, check) {
    const empty = await context.newPage();
    await empty.goto('about:blank');
    await assert.rejects(async () => check(empty), 'the check passes on an empty page');
    await empty.close();
}
