// Debian's Firefox for the tests of tests/browser. Playwright drives it over WebDriver BiDi, Firefox's own protocol, so that the tests
// have the page API that they have in Chromium. Each has a container of its own, with its own storage.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { firefox } from 'playwright-core';
import { nextDownload } from './downloads.mjs';
import { onPath, screen, startedHere } from './screen.mjs';
import { sharedBrowsers } from './shared.mjs';
import { insert, replace } from './typing.mjs';

const quiet = {
    'browser.shell.checkDefaultBrowser': false, 'app.normandy.enabled': false, 'services.settings.server': 'data:,#remote-settings-dummy/v1',
    // Two windows of a test lie one over the other, and both go on.
    'widget.windows.window_occlusion_tracking.enabled': false,
};

/** What BiDi can't ask for is a preference. */
const preferences = ({ webgl, scheme, forced, motion, touch }) => ({
    ...quiet,
    // A list of what was fetched would come up and take the keys.
    'browser.download.alwaysOpenPanel': false,
    ...(webgl ? { 'webgl.force-enabled': true } : { 'webgl.disabled': true }),
    'layout.css.prefers-color-scheme.content-override': scheme === 'dark' ? 0 : 1,
    'ui.prefersReducedMotion': motion === 'reduce' ? 1 : 0,
    ...(forced && { 'ui.useAccessibilityTheme': 1, 'browser.display.document_color_use': 2 }),
    // The page asks whether it is pointed at by a finger.
    ...(touch && { 'ui.primaryPointerCapabilities': 1, 'ui.allPointerCapabilities': 1 }),
});

/** Playwright has Firefox end when one page's process dies. A person's goes on, and so has that of a test. */
function program(folder) {
    const file = join(folder, 'firefox');
    const real = process.env.OVERWATER_FIREFOX ?? onPath('firefox-esr', 'firefox');
    writeFileSync(file, `#!/bin/sh\nunset MOZ_CRASHREPORTER_SHUTDOWN\nexec '${real}' "$@"\n`, { mode: 0o755 });
    return file;
}

async function begin(firefoxUserPrefs) {
    const folder = mkdtempSync(join(tmpdir(), 'overwater-firefox-'));
    const downloads = join(folder, 'downloads');
    mkdirSync(downloads);
    const { display, close } = await screen({ width: 3840, height: 2400 });
    async function clear() {
        await close();
        rmSync(folder, { recursive: true, force: true, maxRetries: 20 });
    }
    try {
        const browser = await firefox.launch({
            channel: 'moz-firefox', executablePath: program(folder), headless: false, firefoxUserPrefs, timeout: 120_000, downloadsPath: downloads,
            env: { ...process.env, DISPLAY: display, LIBGL_ALWAYS_SOFTWARE: '1', MOZ_DISABLE_CONTENT_SANDBOX: '1' },
        });
        return { browser, downloads, end: () => browser.close().finally(clear) };
    } catch (error) {
        await clear();
        throw error;
    }
}

const browsers = sharedBrowsers(begin);

// For a picture Playwright adds an empty sheet for a moment, which the page's policy refuses.
const emptySheet = 'sha256-YjaKGiklmzC6wjXA513HAMmzus8VE61XCOT+SmwNZWA=';

/** A browser with these settings (see `open` in tests/browser/harness.mjs). */
export async function launchFirefox(settings) {
    const used = await browsers.taken(preferences(settings));
    const { size, ratio, touch, locale } = settings;
    const context = await used.browser.newContext({ viewport: size, deviceScaleFactor: ratio, hasTouch: touch, acceptDownloads: true, locale });
    // Firefox runs what comes before a page's scripts in the empty window too, where nothing may be stored.
    const addInitScript = context.addInitScript.bind(context);
    context.addInitScript = (fn) => addInitScript({ content: `if (globalThis !== globalThis.top || document.URL !== 'about:blank') (${fn})();` });
    // What Playwright does otherwise than in Chromium: long texts it types letter by letter; of files it is not told which page gave them.
    const newPage = context.newPage.bind(context);
    context.newPage = async () => {
        const tab = await newPage();
        const waitForEvent = tab.waitForEvent.bind(tab);
        tab.waitForEvent = (name, ...more) => (name === 'download' ? nextDownload(used.downloads) : waitForEvent(name, ...more));
        tab.keyboard.insertText = (text) => tab.evaluate(insert, text);
        Object.getPrototypeOf(tab.locator('body')).fill = async function (text) {
            await this.waitFor();
            await this.evaluate(replace, text);
        };
        return tab;
    };
    return {
        context,
        /** A message or a violation that is not the page's. Each real violation leaves a message with another hash too. */
        isNoise: (text) => text.includes(emptySheet) || text === 'style-src-elem inline',
        /** Ends the processes that show pages, at once. */
        async die() {
            const contents = startedHere(/-contentproc .* tab$|-contentproc .* tab /);
            for (const id of contents) process.kill(id, 'SIGKILL');
            used.hurt = true;
            await pause(1000);
        },
        async close() {
            await context.close();
            await browsers.left(used);
        },
    };
}
