// Chromium for the tests of tests/browser, each in a context of its own, with its own storage.
import { chromium } from 'playwright-core';
import { onPath } from './screen.mjs';
import { sharedBrowsers } from './shared.mjs';

// Headless, with WebGL in software; nothing that would use the network of its own accord.
const flags = [
    '--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update',
    '--disable-sync', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
];
const withoutWebgl = ['--disable-gpu', '--disable-software-rasterizer', '--disable-3d-apis'];

function browserPath() {
    const path = process.env.OVERWATER_CHROMIUM ?? onPath('chromium', 'chromium-browser', 'google-chrome');
    if (!path) throw new Error('no Chromium on the path; `tools/need tests` installs it');
    return path;
}

const browsers = sharedBrowsers(async ({ webgl }) => {
    const browser = await chromium.launch({ executablePath: browserPath(), headless: true, args: [...flags, ...(webgl ? [] : withoutWebgl)] });
    return { browser, end: () => browser.close() };
});

/** A browser with these settings (see `open` in tests/browser/harness.mjs). */
export async function launchChromium({ size, ratio, touch, scheme, forced, motion, locale, webgl }) {
    const used = await browsers.taken({ webgl });
    const context = await used.browser.newContext({
        viewport: size, deviceScaleFactor: ratio, hasTouch: touch, isMobile: touch, colorScheme: scheme, acceptDownloads: true, locale,
        forcedColors: forced ? 'active' : 'none', reducedMotion: motion,
    });
    return {
        context,
        isNoise: () => false,
        async die(tab) {
            const died = tab.waitForEvent('crash');
            tab.goto('chrome://crash').catch(() => {});
            await died;
        },
        async close() {
            await context.close();
            await browsers.left(used);
        },
    };
}
