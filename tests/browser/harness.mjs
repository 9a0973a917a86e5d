// Starts the built page in Chromium, served or as one file, and watches what must never happen: a message of error, a
// violation of the content-security policy, a request to anywhere else.
//
//   const page = await open({ kind: 'served' });   // or 'one-file'
//   await page.tab.getByRole('textbox', { name: 'Scale reading' }).fill('9.15');
//   page.assertClean();
//   await page.close();
//
// OVERWATER_DIST names another folder than dist, OVERWATER_CHROMIUM another browser than the `chromium` on the path.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../tools/server.mjs';
import { distinctColours } from './png.mjs';

export const dist = resolve(process.env.OVERWATER_DIST ?? fileURLToPath(new URL('../../dist', import.meta.url)));
export const kinds = ['served', 'one-file'];

// Headless, with WebGL in software; nothing that would use the network of its own accord.
const flags = [
    '--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update',
    '--disable-sync', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
];
const withoutWebgl = ['--disable-gpu', '--disable-software-rasterizer', '--disable-3d-apis'];

function browserPath() {
    if (process.env.OVERWATER_CHROMIUM) return process.env.OVERWATER_CHROMIUM;
    for (const name of ['chromium', 'chromium-browser', 'google-chrome']) {
        try {
            return execFileSync('sh', ['-c', `command -v ${name}`]).toString().trim();
        } catch {
            // try the next
        }
    }
    throw new Error('no Chromium on the path; `tools/need tests` installs it');
}

/**
 * Opens the page in a browser of its own.
 * kind: 'served' or 'one-file'; webgl: false for a browser without; size, ratio: viewport; scheme, contrast, motion:
 * what the browser asks the page for; locale: its language; before: script run in each document first; query: added to the address.
 */
export async function open({
    kind = 'served', webgl = true, size = { width: 1366, height: 620 }, ratio = 1, touch = false, scheme = 'light',
    before = undefined, fragment = '', ready = true, locale = undefined,
} = {}) {
    const server = kind === 'served' ? await serve({ folder: dist, port: 0 }) : undefined;
    const address = server?.address ?? pathToFileURL(join(dist, 'overwater.html')).href;
    const profile = mkdtempSync(join(tmpdir(), 'overwater-profile-'));
    const context = await chromium.launchPersistentContext(profile, {
        executablePath: browserPath(), headless: true, args: [...flags, ...(webgl ? [] : withoutWebgl)], viewport: size,
        deviceScaleFactor: ratio, hasTouch: touch, isMobile: touch, colorScheme: scheme, acceptDownloads: true, locale,
    });
    const seen = { messages: [], violations: [], strangers: [] };

    await context.exposeBinding('overwaterViolation', (_, text) => void seen.violations.push(text));
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
            if (message.type() === 'error' || message.type() === 'warning') seen.messages.push(message.text());
        });
        tab.on('pageerror', (error) => seen.messages.push(String(error)));
        await tab.goto(at);
        if (wait) await started(tab);
        return tab;
    }

    const tab = await newTab();
    return {
        kind, address, context, server, seen, tab, newTab,
        assertClean() {
            assert.deepEqual(seen, { messages: [], violations: [], strangers: [] });
        },
        async close() {
            await context.close();
            await server?.close();
            rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
        },
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
