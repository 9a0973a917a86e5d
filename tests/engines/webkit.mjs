// WebKitGTK's small browser for the tests of tests/browser: WebKitWebDriver for what a person does, the remote inspector for the rest,
// and over both what the tests use of Playwright's pages (webkit_tab.mjs). A browser of its own for each page.
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Builder } from 'selenium-webdriver';
import { inspectorAt } from './inspector.mjs';
import { begun, ended, freePort, screen, startedHere } from './screen.mjs';
import { catchChoosers, makeTab } from './webkit_tab.mjs';

/** The screen: what a test wants has room on it. */
const roomFor = (size) => ({ width: Math.max(1920, size.width), height: Math.max(1200, size.height + 200) });

/** Debian keeps the small browser of WebKitGTK beside the library. */
function miniBrowser() {
    if (process.env.OVERWATER_MINIBROWSER) return process.env.OVERWATER_MINIBROWSER;
    const folders = readdirSync('/usr/lib').filter((name) => name.includes('-linux-')).flatMap((name) =>
        readdirSync(join('/usr/lib', name)).filter((one) => one.startsWith('webkit2gtk-')).map((one) => join('/usr/lib', name, one)));
    return folders.map((folder) => join(folder, 'MiniBrowser')).find(existsSync);
}

/** Hands calls of `globalThis[name]` out as messages of the console. Runs in the page. */
const bind = (name) => {
    globalThis[name] = (...values) => console.debug(`overwater-binding ${name} ${JSON.stringify(values)}`);
};
const speak = (locale) => {
    Object.defineProperties(navigator, { language: { get: () => locale }, languages: { get: () => [locale] } });
};

/** Starts everything; what was started is ended by `close`, whatever happens. */
async function start({ room, ratio, webgl }) {
    const home = mkdtempSync(join(tmpdir(), 'overwater-webkit-'));
    const downloads = join(home, 'downloads');
    mkdirSync(downloads);
    writeFileSync(join(home, 'user-dirs.dirs'), `XDG_DOWNLOAD_DIR="${downloads}"\n`);
    const { display, close: closeScreen } = await screen({ width: room.width * ratio, height: room.height * ratio });
    const [inspectorPort, driverPort] = [await freePort(), await freePort()];
    const env = {
        ...process.env, DISPLAY: display, LIBGL_ALWAYS_SOFTWARE: '1', WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1', LANG: 'C.UTF-8', HOME: home,
        MESA_SHADER_CACHE_DISABLE: 'true', XDG_DATA_HOME: home, XDG_CACHE_HOME: home, XDG_CONFIG_HOME: home, GDK_SCALE: String(ratio),
    };
    const browser = begun(miniBrowser(), ['--automation', '--javascript-can-open-windows-automatically=true', ...(webgl ? [] : ['--enable-webgl=false'])],
        { stdio: 'ignore', env: { ...env, WEBKIT_INSPECTOR_SERVER: `127.0.0.1:${inspectorPort}` } });
    // The driver takes the browser that is there, which leaves room for the inspector.
    const program = begun('WebKitWebDriver', [`--port=${driverPort}`, '--host=127.0.0.1', `--target=127.0.0.1:${inspectorPort}`], { stdio: 'ignore', env });
    async function close() {
        await Promise.all([ended(program), ended(browser)]);
        await closeScreen();
        rmSync(home, { recursive: true, force: true, maxRetries: 20 });
    }
    const server = `http://127.0.0.1:${driverPort}`;
    /** A session of WebDriver with the browser, once that listens. */
    async function driven() {
        for (let tries = 0; ; ++tries) {
            const begun = new Builder().usingServer(server).withCapabilities({ browserName: 'MiniBrowser' }).build();
            const driver = await Promise.resolve(begun).catch((error) => { if (tries > 20) throw error; });
            if (driver) return driver;
            await pause(500);
        }
    }
    try {
        for (let tries = 0; tries < 300 && !(await fetch(`${server}/status`).then((answer) => answer.ok, () => false)); ++tries) await pause(100);
        return { driver: await driven(), driven, inspector: await inspectorAt(inspectorPort), downloads, close };
    } catch (error) {
        await close();
        throw error;
    }
}

/** A browser with these settings (see `open` in tests/browser/harness.mjs). */
export async function launchWebKit({ size, ratio, scheme, motion, locale, webgl }) {
    const room = roomFor(size);
    const { driver: first, driven, inspector, downloads, close } = await start({ room, ratio, webgl });
    let driver = first;
    const scripts = [`(${catchChoosers})()`, ...(locale ? [`(${speak})(${JSON.stringify(locale)})`] : [])];
    const bindings = new Map();
    const heard = [];
    let queue = Promise.resolve();
    let current;

    /** One after the other, each in its own window. */
    const inWindow = (handle) => (work) => {
        const done = queue.then(async () => {
            if (current !== handle) await driver.switchTo().window(handle);
            current = handle;
            return work(driver);
        });
        queue = done.catch(() => {});
        return done;
    };
    async function prepare(send) {
        for (const domain of ['Page', 'Runtime', 'Console', 'Network']) await send(`${domain}.enable`);
        await send('Page.setBootstrapScript', { source: scripts.join(';\n') });
        await send('Page.overrideUserPreference', { name: 'PrefersColorScheme', value: scheme === 'dark' ? 'Dark' : 'Light' });
        await send('Page.overrideUserPreference', { name: 'PrefersReducedMotion', value: motion === 'reduce' ? 'Reduce' : 'NoPreference' });
    }
    /** The window's inner size becomes that of the page. It lies under the pointer, where a window without a manager has the focus. */
    async function fit(tab, here) {
        let outer = { ...size };
        for (let tries = 0; tries < 5; ++tries) {
            await here(() => driver.manage().window().setRect({ x: Math.max(0, Math.round((room.width - outer.width) / 2)), y: Math.max(0, Math.round((room.height - outer.height) / 2)), ...outer }));
            await pause(200);
            const inner = await tab.evaluate(() => ({ width: innerWidth, height: innerHeight }));
            if (inner.width === size.width && inner.height === size.height) return;
            outer = { width: outer.width + size.width - inner.width, height: outer.height + size.height - inner.height };
        }
        throw new Error(`no window of ${size.width} by ${size.height}, only ${JSON.stringify(await tab.evaluate(() => [innerWidth, innerHeight]))}`);
    }
    let died = false;
    let home; // a window that opens those of the tests
    async function newPage() {
        const made = queue.then(async () => {
            current = undefined;
            if (!home) {
                if (died) await driver.switchTo().newWindow('window');
                home = await driver.getWindowHandle();
            }
            await driver.switchTo().window(home);
            const before = await driver.getAllWindowHandles();
            // Without a bar for addresses, which would not let it be as narrow as a phone.
            await driver.executeScript(`open('about:blank', '_blank', 'popup,noopener,width=${size.width},height=${size.height}')`);
            for (let tries = 0; tries < 100; ++tries, await pause(50)) {
                const handle = (await driver.getAllWindowHandles()).find((one) => !before.includes(one));
                if (handle) return handle;
            }
            throw new Error('no window opened');
        });
        queue = made.catch(() => {});
        const handle = await made;
        const here = inWindow(handle);
        const own = await (died ? inspector.newestAgain(prepare) : inspector.newest(prepare));
        own.on('Network.requestWillBeSent', ({ request }) => heard.forEach((hear) => hear({ url: () => request.url })));
        own.on('Console.messageAdded', ({ message: { text } }) => {
            const [, name, values] = /^overwater-binding (\w+) (.*)$/s.exec(text) ?? [];
            if (name) bindings.get(name)?.({}, ...JSON.parse(values));
        });
        const tab = makeTab({ inWindow: here, inspector: own, downloads, ratio, onClose: () => here(async () => { await driver.close(); current = undefined; own.leave(); }) });
        await fit(tab, here);
        return tab;
    }
    const context = {
        newPage,
        on: (_, hear) => heard.push(hear),
        addInitScript: async (fn) => void scripts.push(`(${fn})()`),
        async exposeBinding(name, answer) {
            bindings.set(name, answer);
            scripts.push(`(${bind})(${JSON.stringify(name)})`);
        },
        cookies: () => inWindow(current)(() => driver.manage().getCookies()),
    };
    return {
        context,
        /** WebKit does not know this part of the policy, which other browsers heed, and says so. */
        isNoise: (text) => text.startsWith("Unrecognized Content-Security-Policy directive 'manifest-src'"),
        /** Ends the processes that show pages, at once. WebDriver's session ends with them. */
        async die() {
            for (const id of startedHere(/WebKitWebProcess/)) process.kill(id, 'SIGKILL');
            await pause(1000);
            await driver.getWindowHandle().catch(() => {});
            driver = await driven();
            died = true;
            home = undefined;
        },
        async close() {
            await driver.quit().catch(() => {});
            inspector.close();
            await close();
        },
    };
}
