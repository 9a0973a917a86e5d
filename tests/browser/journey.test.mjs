// One whole run, entered by keyboard alone, in the built page; what it comes to; and the picture of the README.
import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import { describe, it } from 'node:test';
import { fileURLToPath } from 'node:url';
import { field, frames, still } from './harness.mjs';
import { enterRecordA, pressAt, tabTo, violations, withCleanPage } from './people.mjs';

const headline = (tab) => tab.locator('[data-key="result.headline"]').textContent();

describe('a whole run', { concurrency: false }, () => {
    it('is entered by keyboard alone and comes to the values of the method', () => withCleanPage({ kind: 'one-file' }, async ({ tab }) => {
        await enterRecordA(tab);
        assert.equal(await headline(tab), '22.68\u00a0L/mol');  // method.md, record A: 22.6818
        await tab.getByRole('button', { name: 'Working', exact: true }).click();
        await still(tab);
        const table = await tab.getByRole('table').textContent();
        // method.md, record A, to the digits printed there.
        for (const value of ['43.20', '2549.94', '19.126', '997.907', '1096.05', '95974.0', '1.69512', '25.4849', '24.5521', '8.30380',
            '22.6818', '−0.128', '22.3852', '6.038']) {
            assert.ok(table?.includes(value), `${value} stands in the table`);
        }
        assert.ok(!table?.includes('22.6819'), 'a neighbouring value does not');
    }));

    it('changes the result in the frame of the keystroke', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        const reading = field(tab, 'Scale reading');
        await reading.focus();
        await still(tab);
        const before = await headline(tab);
        const [after, drawn] = await tab.evaluate(async () => {
            const input = /** @type {HTMLInputElement} */ (document.activeElement);
            const start = globalThis.overwaterFrames;
            input.value = '9.25';
            input.dispatchEvent(new InputEvent('input', { bubbles: true }));
            await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
            return [document.querySelector('[data-key="result.headline"]')?.textContent, globalThis.overwaterFrames - start];
        });
        assert.notEqual(after, before);
        assert.ok(drawn >= 1 && drawn <= 2, `${drawn} frames`);
    }));

    for (const [name, options] of Object.entries({
        laptop: { size: { width: 1366, height: 620 } }, dark: { size: { width: 1280, height: 720 }, scheme: 'dark' },
        phone: { size: { width: 390, height: 844 }, touch: true, ratio: 2 }, zoomed: { size: { width: 683, height: 310 } },
    })) {
        it(`has no barrier that axe finds, ${name}`, () => withCleanPage({ kind: 'served', ...options }, async ({ tab }) => {
            for (const page of [null, 'Working', 'How sure', 'The gap', 'Cautions', 'Conventions', 'Records', 'Equations', 'Projector']) {
                if (page) {
                    await tab.getByRole('button', { name: page === 'Records' ? /^Records/ : page, exact: page !== 'Records' }).first().click();
                }
                await still(tab);
                assert.deepEqual(await violations(tab), [], page ?? 'Bench');
            }
            await tab.evaluate(() => document.body.insertAdjacentHTML('beforeend', '<input id="nameless">'));
            assert.notDeepEqual(await violations(tab), [], 'a planted barrier is found');
        }));
    }

    it('balances an equation typed by keyboard, and tells what limits', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        await pressAt(tab, 'Equations');
        await tabTo(tab, 'Formula or equation');
        await tab.keyboard.type('CaCO3 + HCl -> CaCl2 + H2O + CO2');
        await still(tab);
        const math = tab.locator('math[data-key="equations.set.0"]');
        assert.equal(await math.textContent(), 'CaCO₃+2HCl→CaCl₂+H₂O+CO₂↑');  // every textbook
        await tabTo(tab, 'CaCO₃');
        await tab.keyboard.type('2.50');
        await tabTo(tab, 'HCl');
        await tab.keyboard.type('1.00');
        await still(tab);
        // 0.0274 mol of acid are less than twice 0.0250 mol (python3-periodictable 1.6.0).
        assert.equal(await tab.locator('[data-key="equations.limits"]').textContent(), 'HCl limits: it is used up first.');
        assert.deepEqual(await violations(tab), []);
        await tab.keyboard.press('Control+z');
        await still(tab);
        assert.equal(await field(tab, 'Mass or amount of HCl').inputValue(), '');
    }));

    it('fits a laptop without scrolling, and is the picture of the README', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        const [content, room] = await tab.evaluate(() => [document.documentElement.scrollHeight, innerHeight]);
        assert.ok(content <= room, `${content} of ${room}`);
        await tab.getByRole('button', { name: 'Conventions', exact: true }).click();
        await still(tab);
        assert.ok(await tab.evaluate(() => document.documentElement.scrollHeight > innerHeight), 'a longer page scrolls');
        await tab.getByRole('button', { name: 'Bench', exact: true }).click();
        await still(tab);
        const folder = fileURLToPath(new URL('../../build/pictures', import.meta.url));
        mkdirSync(folder, { recursive: true });
        await tab.mouse.move(700, 600);
        await tab.screenshot({ path: `${folder}/bench.png` });
        assert.ok(await frames(tab) > 0);
    }));
});
