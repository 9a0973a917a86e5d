// Practice runs in the built page: from the code to the checked result by keyboard alone and by touch alone, what the
// page says to a screen reader, and the key that is printed.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, it } from 'node:test';
import { field, lacks, started, still } from './harness.mjs';
import { focusedName, pressAt, tabTo, violations, withCleanPage, withPage } from './people.mjs';

// Codes of seed 1, number 4, by core/lesson/practice_code.hpp: usual with the results at once; easy after an attempt.
const atOnce = '000DD-04W7';
const afterAttempt = '000CC-0460';

/** What an eye sees, from the picture's description: the mark below, divisions and tenths; or the digits shown. */
async function readDial(tab) {
    const words = (await tab.locator('[data-key="practice.dial"]').getAttribute('aria-label') ?? '').replace(/[\u00a0\u202f]/g, ' ');
    const shown = /(?:shows|says) ([\d.]+)/.exec(words);
    if (shown) return shown[1];
    const marks = /between the numbers ([\d.]+) .*? and ([\d.]+) .*?with (\d+) divisions.*whole divisions (\d+), tenths of the next (\d+)/.exec(words);
    assert.ok(marks, words);
    const [below, above, between, whole, tenths] = marks.slice(1).map(Number);
    return String(Number((below + (above - below) / between * (whole + tenths / 10)).toFixed(4)));
}

const readings = ['Ribbon length', 'Scale reading', 'Level difference', 'Temperature', 'Barometer'];

async function verdicts(tab) {
    const rows = await tab.locator('[data-key="practice.truth"] tbody tr').allTextContents();
    return rows.map((row) => row.endsWith('not right') ? 'not right' : 'right');
}

/** From the code to all readings typed, by keyboard. */
async function readByKeyboard(tab) {
    await pressAt(tab, 'Practice', { most: 90 });
    await tabTo(tab, 'Practice code', { most: 90 });
    await tab.keyboard.type(atOnce.toLowerCase().replace('-', ' '));
    await pressAt(tab, 'Start', { most: 90 });
    // A busy machine needs more than the moment that counts as still.
    for (let tries = 0; tries < 50 && (await focusedName(tab)) !== 'Ribbon length'; ++tries) await tab.waitForTimeout(100);
    assert.equal(await focusedName(tab), 'Ribbon length');
    for (const name of readings) {
        await tabTo(tab, name, { most: 90 });
        await still(tab);
        await tab.keyboard.type(await readDial(tab));
    }
}

/** What is printed is kept instead: a dialogue would wait for a person. */
const keepPrinted = () => {
    globalThis.print = () => {
        globalThis.top.overwaterPrinted = {
            rows: document.querySelectorAll('tbody tr').length,
            title: document.title,
            words: document.body.textContent,
            border: getComputedStyle(document.querySelector('td')).borderTopWidth,
        };
        globalThis.dispatchEvent(new Event('afterprint'));
    };
};

describe('a practice run', { concurrency: false }, () => {
    it('goes from code to checked result by keyboard alone', () => withCleanPage({ kind: 'one-file' }, async ({ tab }) => {
        await readByKeyboard(tab);
        await tabTo(tab, 'Larger', { most: 90 });
        await tab.keyboard.press('Space');
        await still(tab);
        assert.ok(await field(tab, 'Larger', 'button').isDisabled());
        await tabTo(tab, 'Compare readings', { most: 90 });
        await tab.keyboard.press('Enter');
        await still(tab);
        await tabTo(tab, 'Compare with the instruments', { most: 90 });
        await tab.keyboard.press('Enter');
        await still(tab);
        assert.deepEqual(await verdicts(tab), Array(5).fill('right'));
        // The release is in the record.
        await tab.reload();
        await still(tab);
        await tab.waitForSelector('[data-key="practice.truth"]', { state: 'attached' });
    }));

    for (const kind of ['served', 'one-file']) {
        it(`is done, saved, printed and handed in without mouse, WebGL and network (${kind})`, () =>
            withPage({ kind, webgl: false, before: keepPrinted }, async ({ tab, context }) => {
                if (kind === 'served') {
                    await tab.evaluate(() => navigator.serviceWorker.ready);
                    await context.setOffline(true);
                    await tab.reload();
                    await started(tab);
                }
                await readByKeyboard(tab);
                await pressAt(tab, 'Compare readings', { most: 120 });
                await pressAt(tab, 'Compare with the instruments', { most: 120 });
                assert.deepEqual(await verdicts(tab), Array(5).fill('right'));

                await pressAt(tab, 'Records', { most: 120, matches: (name) => /^(Records|Practice run)/.test(name) });
                const saved = tab.waitForEvent('download');
                await pressAt(tab, 'Save a file', { most: 120, matches: (name) => name.startsWith('Save a file of Practice') });
                const file = await (await saved).path();
                const record = JSON.parse(readFileSync(file, 'utf8'));
                assert.equal(record.practice_code, atOnce);

                await pressAt(tab, 'Print the lab sheet', { most: 120 });
                await tab.waitForFunction(() => globalThis.overwaterPrinted);
                assert.match(await tab.evaluate(() => globalThis.overwaterPrinted.words), /Ribbon length/);

                // Handed in: the teacher's page takes the file into the class set.
                await withCleanPage({ kind: 'one-file' }, async ({ tab: teacher }) => {
                    await pressAt(teacher, 'Class', { most: 90 });
                    await pressAt(teacher, 'Class set', { most: 90 });
                    const chooser = teacher.waitForEvent('filechooser');
                    await pressAt(teacher, 'Open files …', { most: 90, matches: (name) => name.startsWith('Open files') });
                    await (await chooser).setFiles(file);
                    await teacher.waitForSelector('[data-key="pool.group.0.open"]', { state: 'attached' });
                    assert.match(await teacher.locator('[data-key="pool.sentence"]').textContent(), /1 run/);
                });
            }));
    }

    it('goes from code to checked result by touch alone, with targets of 44 px', lacks({ Firefox: 'a finger of its driver moves nothing', WebKitGTK: 'its driver has no finger' }), () =>
        withCleanPage({ kind: 'served', size: { width: 390, height: 844 }, touch: true, fragment: `#practice=${afterAttempt}` }, async ({ tab }) => {
            await tab.getByRole('button', { name: 'Start', exact: true }).tap();
            await still(tab);
            for (const name of ['Mass of metal', 'Scale reading', 'Temperature', 'Barometer']) {
                await field(tab, name).tap();
                await still(tab);
                const text = await readDial(tab);
                const [box, dial] = await Promise.all([field(tab, name).boundingBox(), tab.locator('[data-key="practice.dial"]').boundingBox()]);
                assert.ok(dial && box && dial.y + dial.height < box.y && dial.y >= 0 && box.y + box.height <= 844, `${name}: ${JSON.stringify([dial, box])}`);
                await field(tab, name).fill(text);
            }
            assert.equal(await tab.locator('[data-key="result.headline"]').count(), 0);
            await tab.getByRole('button', { name: 'Compare readings', exact: true }).tap();
            await still(tab);
            for (const name of ['Start', 'Go to the bench', 'Show the results', 'Make codes']) {
                const box = await field(tab, name, 'button').boundingBox();
                assert.ok(box && box.height >= 44, name);
            }
            await field(tab, 'My own result, L/mol').fill('22.7');
            await tab.getByRole('button', { name: 'Show the results', exact: true }).tap();
            await still(tab);
            assert.deepEqual(await verdicts(tab), Array(4).fill('right'));
            assert.deepEqual(await violations(tab), []);
        }));

    it('has no fault that axe finds, on the bench, the practice page and the page of codes', () =>
        withCleanPage({ kind: 'served', fragment: `#practice=${atOnce}` }, async ({ tab }) => {
            assert.deepEqual(await violations(tab), []);
            await tab.getByRole('button', { name: 'Start', exact: true }).click();
            await still(tab);
            assert.deepEqual(await violations(tab), []);
            await tab.getByRole('button', { name: 'Compare readings', exact: true }).click();
            await still(tab);
            assert.deepEqual(await violations(tab), []);
            await tab.getByRole('button', { name: 'Make codes', exact: true }).click();
            await still(tab);
            assert.deepEqual(await violations(tab), []);
        }));
});

for (const kind of ['served', 'one-file']) {
    it(`the key is printed as a document of its own (${kind})`, () => withCleanPage({
        kind, fragment: '#practice=',
        before: keepPrinted,
    }, async ({ tab }) => {
        await tab.getByRole('button', { name: 'Make codes', exact: true }).click();
        await still(tab);
        await field(tab, 'Students in the roster').fill('30');
        await tab.getByRole('button', { name: 'Print the key', exact: true }).click();
        await tab.waitForFunction(() => globalThis.overwaterPrinted);
        const printed = await tab.evaluate(() => globalThis.overwaterPrinted);
        assert.ok(printed.rows >= 30, JSON.stringify(printed));
        assert.match(printed.title, /^Key to the practice runs of class \w{5}-00\w\w$/);
        assert.equal(printed.border, '1px');
        await tab.waitForFunction(() => !document.querySelector('iframe'));
    }));
}
