// One whole run by keyboard, from the served page and from the one file: entered, worked out, kept over a reload. `tools/test` has it done
// in Firefox and in WebKitGTK (OVERWATER_ENGINE); each page is watched as those of tests/browser are.
import assert from 'node:assert/strict';
import { describe, it } from 'node:test';
import { assertLiveCanvas, assertNotFlat, engine, kinds, started } from '../browser/harness.mjs';
import { enterRecordA, pressAt, withCleanPage } from '../browser/people.mjs';

const words = (tab, key) => tab.locator(`[data-key="${key}"]`).textContent();

describe(engine, { concurrency: false }, () => {
    for (const kind of kinds) {
        it(`carries a run, ${kind}`, () => withCleanPage({ kind }, async ({ tab }) => {
            await assertLiveCanvas(tab);
            await enterRecordA(tab);
            assert.equal(await words(tab, 'result.headline'), '22.68\u00a0L/mol'); // method.md, record A: 22.6818
            await assertNotFlat(tab);
            // Backwards: forwards the way leads through the browser's own buttons.
            await pressAt(tab, 'Working', { most: 120, back: true });
            // method.md, record A, to the digits printed there.
            const table = await tab.getByRole('table').textContent();
            for (const value of ['43.20', '2549.94', '95974.0', '1.69512', '22.6818']) assert.ok(table?.includes(value), value);
            await pressAt(tab, 'How sure');
            assert.match(await tab.evaluate(() => document.body.textContent ?? ''), /95.% interval/);

            // Kept over a reload, and the place too.
            await tab.reload();
            await started(tab);
            await pressAt(tab, 'Bench', { most: 120 });
            assert.equal(await words(tab, 'result.headline'), '22.68\u00a0L/mol');
        }));
    }
});
