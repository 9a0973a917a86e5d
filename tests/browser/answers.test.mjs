// @ts-nocheck
// Answers and marking in the built page, by keyboard alone, and what axe finds on both pages.
import assert from 'node:assert/strict';
import { describe, it } from 'node:test';
import { pressAt, tabTo, violations, withCleanPage } from './people.mjs';

const how = (name) => ({ most: 120, matches: (found) => found.startsWith(name) });
const goTo = (tab, name) => tabTo(tab, name, how(name));
const press = (tab, name, key = 'Enter') => pressAt(tab, name, { key, ...how(name) });

const words = async (tab, key) => (await tab.locator(`[data-key="${key}"]`).textContent() ?? '').replace(/[\u00a0\u202f]/g, ' ');

// Record A of the method, which is the page's example: 43.20 mL; the vapour forgotten, 98.52 kPa instead of 95.97.
describe('answers and marking', { concurrency: false }, () => {
    for (const kind of ['served', 'one-file']) {
        it(`a step is typed, checked, and helped by keyboard alone (${kind})`, () => withCleanPage({ kind }, async ({ tab }) => {
            await press(tab, 'Answers');
            await goTo(tab, 'Gas volume');
            await tab.keyboard.type('43.20 mL');
            await press(tab, 'Check: Gas volume', 'Space');
            assert.equal(await words(tab, 'sheet.gas_volume.said'), 'Right.');
            await goTo(tab, 'Dry-gas pressure');
            await tab.keyboard.type('98.52 kPa');
            await press(tab, 'Check: Dry-gas pressure');
            assert.equal(await words(tab, 'sheet.dry_gas_pressure.said'), 'Not right yet.');
            // The same button goes on, and keeps the focus.
            await press(tab, 'Show more: Dry-gas pressure');
            assert.match(await words(tab, 'sheet.dry_gas_pressure.slip1'), /not subtracted/);
            await press(tab, 'Show the step: Dry-gas pressure');
            assert.match(await words(tab, 'sheet.dry_gas_pressure.step.result'), /95\.97\d? kPa/);
            assert.deepEqual(await violations(tab), []);
        }));
    }

    it('a class is pasted, marked and looked into by keyboard alone', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        await press(tab, 'Practice');
        await press(tab, 'Mark sheets');
        await goTo(tab, 'Sheets of the class');
        await tab.keyboard.insertText('Group\tGas volume (mL)\tDry-gas pressure (kPa)\n1\t43.20\t95.97\n2\t43.20\t98.52\n');
        await press(tab, 'Mark these');
        await press(tab, 'Group 2: ');
        assert.match(await words(tab, 'marking.sheet.2'), /98\.52 kPa\. Not right\. Expected 95\.97 kPa/);
        assert.deepEqual(await violations(tab), []);
    }));
});
