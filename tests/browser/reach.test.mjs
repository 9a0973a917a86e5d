// The page for people whose browser is set otherwise: forced colours, less motion, four times as large, text set wider, letters that
// are composed of several keys.
import assert from 'node:assert/strict';
import { describe, it } from 'node:test';
import { assertNotFlat, canvasPicture, engine, frames, lacks, still } from './harness.mjs';
import { enterRecordA, violations, withCleanPage } from './people.mjs';
import { distinctColours } from './png.mjs';

const at = (tab, key) => tab.locator(`[data-key="${key}"]`);
const go = async (tab, name) => { await at(tab, `header.${name}`).click(); await still(tab); };
const beyond = (tab) => tab.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

// 1280 by 1024 at 400 %: what WCAG 2.2, success criterion 1.4.10 asks for.
const magnified = { width: 320, height: 256 };

/**
 * What runs out of the page, and, where the browser lays out the text, what is wider than its place: keys of such controls and texts.
 * (What the canvas draws is looked at in tests/ui/app_layout.cpp; a table there lies unseen over its drawing, as wide as its words ask.)
 */
const cut = (tab) => tab.evaluate(() => [...document.querySelectorAll('#page [data-key]')].filter((el) => {
    const box = el.getBoundingClientRect();
    const plain = document.body.classList.contains('plain');
    const laidOut = plain && el.children.length === 0 && !/^(INPUT|SELECT|TEXTAREA|svg|math)$/.test(el.tagName);
    return box.width > 0 && !el.closest('.spoken, .scroller') && (plain || el.tagName !== 'TABLE') && (box.right > innerWidth + 1 || (laidOut && el.clientWidth > 0 && el.scrollWidth > el.clientWidth + 2));
}).map((el) => el.dataset.key));

describe('a browser that is set otherwise', { timeout: 900_000 }, () => {
    it('in forced colours draws in high contrast, and shows the focus', lacks({ WebKitGTK: 'WebKitGTK has no forced colours' }), async () => {
        let before;
        const look = async ({ tab }) => { before = distinctColours(await canvasPicture(tab)); };
        const lookAgain = async ({ tab }) => {
            await still(tab);
            await assertNotFlat(tab);
            assert.ok(await tab.evaluate(() => matchMedia('(forced-colors: active)').matches));
            assert.notEqual(distinctColours(await canvasPicture(tab)), before, 'the same colours as before');
            await tab.keyboard.press('Tab');
            const outline = await tab.evaluate(() => {
                const style = getComputedStyle(document.activeElement);
                return { width: parseFloat(style.outlineWidth), kind: style.outlineStyle };
            });
            assert.ok(outline.width >= 2 && outline.kind !== 'none', `outline ${outline.kind} ${outline.width}`);
            assert.deepEqual(await violations(tab), []);
        };
        if (engine === 'Chromium') {
            await withCleanPage({ kind: 'one-file' }, async (page) => {
                await look(page);
                await page.tab.emulateMedia({ forcedColors: 'active' });
                await lookAgain(page);
            });
        } else {
            // Firefox can't be told while it runs.
            await withCleanPage({ kind: 'one-file' }, look);
            await withCleanPage({ kind: 'one-file', forced: true }, lookAgain);
        }
    });

    it('with less motion moves nothing: a press is a frame or two', () => withCleanPage({ kind: 'one-file', motion: 'reduce' }, async ({ tab }) => {
        assert.ok(await tab.evaluate(() => matchMedia('(prefers-reduced-motion: reduce)').matches));
        const before = await frames(tab);
        await go(tab, 'working');
        assert.ok(await frames(tab) - before <= 6, `${await frames(tab) - before} frames`);
        assert.equal(await tab.evaluate(() => getComputedStyle(document.documentElement).scrollBehavior), 'auto');
    }));

    for (const webgl of [true, false]) {
        it(`at 400 % loses nothing and scrolls one way, ${webgl ? 'painted' : 'without WebGL'}`, () => withCleanPage({ kind: 'one-file', size: magnified, webgl }, async ({ tab }) => {
            await enterRecordA(tab);
            assert.match(String(await tab.locator('output').allTextContents()), /22\.68/);
            for (const name of ['bench', 'working', 'how_sure', 'gap', 'conventions', 'record', 'equations']) {
                await go(tab, name);
                assert.ok(await beyond(tab) <= 0, `${name}: ${await beyond(tab)} px beyond the right edge`);
                assert.deepEqual(await cut(tab), [], name);
            }
            assert.deepEqual(await violations(tab), []);
        }));
    }

    // WCAG 2.2, success criterion 1.4.12: lines 1.5, paragraphs 2, letters 0.12, words 0.16 of the size of the type.
    it('with text set wider loses nothing on the page without WebGL', () => withCleanPage({ kind: 'one-file', webgl: false }, async ({ tab }) => {
        const sheet = '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }';
        for (const name of ['bench', 'working', 'how_sure', 'gap', 'conventions', 'record']) {
            await go(tab, name);
            await tab.evaluate((text) => {
                const style = new CSSStyleSheet();
                style.replaceSync(text);
                document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
            }, sheet);
            await still(tab);
            assert.ok(await tab.evaluate(() => getComputedStyle(document.querySelector('#page [data-key]')).letterSpacing !== 'normal'), 'the text is as before');
            assert.ok(await beyond(tab) <= 0, `${name}: ${await beyond(tab)} px beyond the right edge`);
            assert.deepEqual(await cut(tab), [], name);
        }
    }));

    it('composes letters from several keys without losing one', lacks({
        Firefox: 'composing is asked of Chromium by its own protocol; WebDriver BiDi has no word for it',
        WebKitGTK: 'composing is asked of Chromium by its own protocol; WebDriver has no word for it',
    }), () => withCleanPage({ kind: 'one-file' }, async ({ tab, context }) => {
        await go(tab, 'record');
        const session = await context.newCDPSession(tab);
        const name = at(tab, 'records.name');
        await name.fill('');
        await name.focus();
        // A dead accent and then e; an umlaut; a character chosen from a list, its reading shown until then.
        await tab.keyboard.insertText('Jos');
        await session.send('Input.imeSetComposition', { text: '´', selectionStart: 1, selectionEnd: 1 });
        await tab.waitForTimeout(120);
        await session.send('Input.insertText', { text: 'é' });
        await tab.keyboard.insertText(' Zoë ');
        for (const text of ['l', 'li', '李']) {
            await session.send('Input.imeSetComposition', { text, selectionStart: text.length, selectionEnd: text.length });
            await tab.waitForTimeout(120);
            assert.ok((await name.inputValue()).endsWith(text), 'a frame took the composition away');
        }
        await session.send('Input.insertText', { text: '李' });
        await still(tab);
        assert.equal(await name.inputValue(), 'José Zoë 李');
        await tab.reload();
        await still(tab);
        await go(tab, 'record');
        assert.equal(await at(tab, 'records.name').inputValue(), 'José Zoë 李');
    }));
});
