// Starts the two other engines, Firefox and WebKitGTK, on a screen of their own in memory, so that both have WebGL. What a test is
// given looks like the page of tests/browser: `evaluate`, `keyboard`, `goto`, `reload`, `waitForTimeout`, `screenshot`.
//
// OVERWATER_FIREFOX and OVERWATER_MINIBROWSER name other programs than Debian's.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import puppeteer from 'puppeteer-core';
import { Builder, Key } from 'selenium-webdriver';
import { ended, freePort, onPath, screen } from './screen.mjs';

const size = { width: 1366, height: 768 };

async function firefox(display) {
    const browser = await puppeteer.launch({
        browser: 'firefox', headless: false, executablePath: process.env.OVERWATER_FIREFOX ?? onPath('firefox-esr', 'firefox'),
        env: { ...process.env, DISPLAY: display, LIBGL_ALWAYS_SOFTWARE: '1', MOZ_DISABLE_CONTENT_SANDBOX: '1' },
        defaultViewport: size, timeout: 60_000,
        extraPrefsFirefox: { 'webgl.force-enabled': true, 'intl.accept_languages': 'en', 'browser.shell.checkDefaultBrowser': false },
    });
    const page = await browser.newPage();
    const messages = [];
    page.on('console', (message) => { if (message.type() === 'error') messages.push(message.text()); });
    page.on('pageerror', (error) => messages.push(String(error)));
    const keys = { Space: ' ' };
    return {
        version: await browser.version(), messages,
        evaluate: (fn, ...arguments_) => page.evaluate(fn, ...arguments_),
        keyboard: {
            async press(key) {
                if (key !== 'Shift+Tab') return page.keyboard.press(keys[key] ?? key);
                await page.keyboard.down('Shift');
                await page.keyboard.press('Tab');
                await page.keyboard.up('Shift');
            },
            type: (text) => page.keyboard.type(text),
        },
        goto: (address) => page.goto(address), reload: () => page.reload(), waitForTimeout: pause,
        screenshot: async () => Buffer.from(await page.screenshot()),
        close: () => browser.close(),
    };
}

/** Debian keeps the small browser of WebKitGTK beside the library. */
export function miniBrowser() {
    if (process.env.OVERWATER_MINIBROWSER) return process.env.OVERWATER_MINIBROWSER;
    const folders = readdirSync('/usr/lib').filter((name) => name.includes('-linux-')).flatMap((name) =>
        readdirSync(join('/usr/lib', name)).filter((one) => one.startsWith('webkit2gtk-')).map((one) => join('/usr/lib', name, one)));
    return folders.map((folder) => join(folder, 'MiniBrowser')).find(existsSync);
}

async function webkit(display) {
    const port = await freePort();
    const home = mkdtempSync(join(tmpdir(), 'overwater-webkit-'));
    const program = spawn('WebKitWebDriver', [`--port=${port}`, '--host=127.0.0.1'], {
        stdio: 'ignore',
        env: {
            ...process.env, DISPLAY: display, LIBGL_ALWAYS_SOFTWARE: '1', WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1', LANG: 'C.UTF-8',
            XDG_DATA_HOME: home, XDG_CACHE_HOME: home, XDG_CONFIG_HOME: home,
        },
    });
    for (let tries = 0; tries < 100; ++tries) {
        if (await fetch(`http://127.0.0.1:${port}/status`).then((answer) => answer.ok, () => false)) break;
        await pause(100);
    }
    const driver = await new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities({
        browserName: 'MiniBrowser', 'webkitgtk:browserOptions': { binary: miniBrowser(), args: ['--automation'] },
    }).build();
    await driver.manage().setTimeouts({ script: 30_000 });
    await driver.manage().window().setRect({ x: 0, y: 0, ...size });
    const keys = { Tab: Key.TAB, Enter: Key.ENTER, Space: ' ', ArrowRight: Key.ARROW_RIGHT, ArrowDown: Key.ARROW_DOWN, 'Shift+Tab': Key.chord(Key.SHIFT, Key.TAB) };
    // Sent to the element that has the focus: as actions of the keyboard, letters come twice.
    const send = async (text) => (await driver.switchTo().activeElement()).sendKeys(text);
    return {
        version: `WebKitGTK ${(await driver.getCapabilities()).get('browserVersion')}`, messages: [],
        evaluate: (fn, ...arguments_) => driver.executeScript(`return (${fn})(...arguments)`, ...arguments_),
        keyboard: { press: (key) => send(keys[key] ?? key), type: send },
        goto: (address) => driver.get(address), reload: () => driver.navigate().refresh(), waitForTimeout: pause,
        screenshot: async () => Buffer.from(await driver.takeScreenshot(), 'base64'),
        async close() {
            await driver.quit().catch(() => {});
            await ended(program);
            rmSync(home, { recursive: true, force: true, maxRetries: 5 });
        },
    };
}

export const engines = { Firefox: firefox, WebKitGTK: webkit };

/** Runs `body` with a page of the engine, and ends everything whatever happens. */
export async function withEngine(name, body) {
    const { display, close } = await screen({ width: size.width, height: size.height + 200 });
    try {
        const tab = await engines[name](display);
        try {
            await body(tab);
        } finally {
            await tab.close();
        }
    } finally {
        await close();
    }
}
