// The built page in Chromium, served and as one file: it comes up, keeps what is typed, keeps to its policy, rests when
// nothing happens. Each kind of check is first seen to fail where it should.
import assert from 'node:assert/strict';
import { describe, it } from 'node:test';
import {
    assertCanFail, assertLiveCanvas, assertNotFlat, canvasPicture, field, frames, kinds, started, still,
} from './harness.mjs';
import { assertAligned } from './aligned.mjs';
import { withPage } from './people.mjs';
import { decode, distinctColours } from './png.mjs';

const reading = (tab) => field(tab, 'Scale reading');
const focusedKey = (tab) => tab.evaluate(() => document.activeElement?.getAttribute('data-key'));

async function assertRests(tab, milliseconds) {
    const before = await frames(tab);
    await tab.waitForTimeout(milliseconds);
    assert.equal(await frames(tab), before, 'frames drawn while nothing happened');
}

for (const kind of kinds) {
    describe(`the page, ${kind}`, { timeout: 600_000 }, () => {
        it('comes up, drawn and clean', () => withPage({ kind }, async (page) => {
            await assertLiveCanvas(page.tab);
            await assertNotFlat(page.tab);
            await reading(page.tab).waitFor();
            page.assertClean();

            await assertCanFail(page.context, assertLiveCanvas);
            await assertCanFail(page.context, assertNotFlat);
        }));

        it('refuses a script that is not its own', () => withPage({ kind }, async (page) => {
            await page.tab.evaluate(() => {
                const script = document.createElement('script');
                script.textContent = 'globalThis.planted = true';
                document.head.append(script);
            });
            await page.tab.waitForTimeout(200);
            assert.equal(await page.tab.evaluate(() => globalThis.planted), undefined);
            assert.match(page.seen.violations.join(), /script-src/);
            assert.throws(() => page.assertClean(), 'a violation goes unnoticed');
        }));

        it('notices a request to elsewhere', () => withPage({ kind }, async (page) => {
            const other = await page.context.newPage();
            await other.route('**/*', (route) => route.fulfill({ body: '' }));
            await other.goto('http://elsewhere.invalid/');
            assert.throws(() => page.assertClean(), 'a request to elsewhere goes unnoticed');
        }));

        it('keeps what was typed when the tab dies', () => withPage({ kind }, async (page) => {
            assert.notEqual(await reading(page.tab).inputValue(), '8.73', 'nothing to see: it is there before');
            await reading(page.tab).fill('8.73');
            await page.die();
            const second = await page.newTab();
            assert.equal(await reading(second).inputValue(), '8.73');
        }));

        it('draws no frame in 10 s without an event', () => withPage({ kind }, async ({ tab }) => {
            await reading(tab).fill('8.73');
            await tab.waitForTimeout(1500); // what is spoken after a pause
            await still(tab);
            await assertRests(tab, 10_000);
            const resting = assert.rejects(assertRests(tab, 500), 'the counter of frames stands still');
            await tab.mouse.move(100, 100, { steps: 5 });
            await resting;
        }));

        for (const [name, before] of Object.entries({
            full: () => {
                Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError'); };
            },
            denied: () => {
                Object.defineProperty(globalThis, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });
            },
        })) {
            it(`takes what is typed while storage is ${name}`, () => withPage({ kind, before }, async (page) => {
                await assert.rejects(page.tab.evaluate(() => localStorage.setItem('a', 'b')), 'storage works');
                await reading(page.tab).fill('');
                await page.tab.keyboard.type('8.73');
                await still(page.tab);
                assert.equal(await reading(page.tab).inputValue(), '8.73');
                page.assertClean();
            }));
        }

        it('is a page without WebGL too', () => withPage({ kind, webgl: false }, async (page) => {
            await assertCanFail(page.context, (tab) => reading(tab).waitFor({ timeout: 300 }));
            await assert.rejects(assertLiveCanvas(page.tab), 'WebGL is there');
            await reading(page.tab).fill('8.73');
            await still(page.tab);
            assert.equal(await reading(page.tab).inputValue(), '8.73');
            assert.ok(distinctColours(await page.tab.screenshot()) > 20);
            assert.ok(distinctColours(await canvasPicture(page.tab)) < 20, 'something is drawn besides the mirror');
            // That WebGL is missing is said by the browser itself; nothing else may be.
            page.seen.messages = page.seen.messages.filter((text) => !/webgl/i.test(text));
            page.assertClean();
        }));

        it('paints again after its context was lost', () => withPage({ kind }, async ({ tab }) => {
            await tab.evaluate(() => {
                const canvas = document.querySelector('canvas');
                const context = canvas.getContext('webgl2') ?? canvas.getContext('webgl');
                globalThis.loseContext = context.getExtension('WEBGL_lose_context');
                globalThis.loseContext.loseContext();
            });
            await tab.waitForTimeout(300);
            await assert.rejects(assertLiveCanvas(tab), 'the context is not lost');
            await tab.evaluate(() => globalThis.loseContext.restoreContext());
            await tab.waitForTimeout(300);
            await still(tab);
            await assertLiveCanvas(tab);
            await assertNotFlat(tab);
        }));

        it('leaves Tab to the browser', () => withPage({ kind }, async ({ tab }) => {
            await reading(tab).focus();
            const seen = new Set();
            for (let i = 0; i < 5; ++i) {
                seen.add(await focusedKey(tab));
                await tab.keyboard.press('Tab');
            }
            assert.equal(seen.size, 5, 'each Tab goes to another control');
            assert.ok(!seen.has(null), 'Tab leaves the page');
        }));

        // A laptop; a phone; the laptop at 200 %.
        for (const size of [{ width: 1366, height: 620 }, { width: 390, height: 844 }, { width: 683, height: 312 }]) {
            it(`draws the text of a field where the field has it, ${size.width} wide`, () => withPage({ kind, size }, async ({ tab }) => {
                for (const name of ['Mass of metal', 'Scale reading', 'Barometer']) await assertAligned(tab, name);
                await field(tab, 'Barometer').evaluate((el) => { el.style.paddingRight = '11px'; });
                await assert.rejects(assertAligned(tab, 'Barometer'), 'a shift by 3 px goes unnoticed');
            }));
        }
    });
}

describe('the served page', { timeout: 600_000 }, () => {
    it('works without its server once it was loaded', () => withPage({ kind: 'served' }, async (page) => {
        await page.tab.evaluate(() => navigator.serviceWorker.ready);
        await page.server.close();
        await assert.rejects(fetch(page.address), 'the server is still there');
        const tab = await page.newTab();
        await assertLiveCanvas(tab);
        await assertNotFlat(tab);
        await reading(tab).fill('8.73');
        page.assertClean();
    }));

    it('makes no request after it has loaded', () => withPage({ kind: 'served' }, async (page) => {
        await page.tab.evaluate(() => navigator.serviceWorker.ready);
        await page.tab.reload();
        await started(page.tab);
        const after = [];
        page.context.on('request', (request) => after.push(request.url()));
        await reading(page.tab).fill('8.73');
        await page.tab.waitForTimeout(2000);
        assert.deepEqual(after, []);
        assert.deepEqual(await page.context.cookies(), []);
        await page.tab.evaluate(() => fetch('icon.svg'));
        assert.notDeepEqual(after, [], 'requests go unnoticed');
    }));
});
