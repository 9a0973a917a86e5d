// The pages of a class in the built page: what axe finds on them, a group's numbers by keyboard and by pointer, files.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, it } from 'node:test';
import { still } from './harness.mjs';
import { violations, withCleanPage } from './people.mjs';

const at = (tab, key) => tab.locator(`[data-key="${key}"]`);

/** An invented class: masses around 0.04 g, about 1.05 mL of gas for each milligram, with some scatter. */
const table = (groups) => ['Group\tMass of metal (g)\tScale reading (mL)', ...Array.from({ length: groups }, (_, i) => {
    const mass = 0.030 + 0.0012 * (i % 10);
    return `${i + 1}\t${mass.toFixed(4)}\t${(50 - 1050 * mass + 0.1 * ((i * 7) % 5)).toFixed(2)}`;
})].join('\n');

async function classOf(tab, groups) {
    await at(tab, 'header.class').click();
    await still(tab);
    await at(tab, 'pool.text').fill(table(groups));
    await at(tab, 'pool.read').click();
    await still(tab);
}

describe('the pages of a class', { timeout: 600_000 }, () => {
    for (const [name, options] of Object.entries({
        laptop: { size: { width: 1366, height: 620 } }, dark: { size: { width: 1366, height: 620 }, scheme: 'dark' },
        phone: { size: { width: 390, height: 844 }, touch: true, ratio: 2 },
    })) {
        it(`have no barrier that axe finds, ${name}`, () => withCleanPage({ kind: 'served', ...options }, async ({ tab }) => {
            await classOf(tab, 10);
            assert.deepEqual(await violations(tab), [], 'class set');
            await at(tab, 'pool.group.3.open').click();
            await still(tab);
            await at(tab, 'pool.group.3.out.label').click();
            await still(tab);
            assert.deepEqual(await violations(tab), [], 'a group left out');
            for (const page of ['plan', 'codes', 'marking']) {
                await at(tab, `class.${page}`).click();
                await still(tab);
                assert.deepEqual(await violations(tab), [], page);
            }
        }));
    }

    it('tell a group\'s numbers where the pointer or the focus is', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        await classOf(tab, 10);
        const told = () => at(tab, 'pool.pointed').textContent();
        await tab.mouse.move(2, 2);
        await still(tab);
        const before = await told();
        assert.doesNotMatch(before, /Group \d/);
        await at(tab, 'pool.group.4.open').focus();
        await still(tab);
        assert.match(await told(), /^Group 5, .*mmol/);
        await at(tab, 'pool.text').focus();
        await still(tab);
        assert.equal(await told(), before);
        // Somewhere down the middle of the dots one of them is met.
        const box = await at(tab, 'pool.dots').boundingBox();
        await tab.evaluate((y) => window.scrollBy(0, y - 100), box.y);
        await still(tab);
        const seen = await at(tab, 'pool.dots').boundingBox();
        let met = false;
        for (let x = seen.x + 40; x < seen.x + seen.width && !met; x += 12) {
            await tab.mouse.move(x, seen.y + 22 + 20 * 4.5);
            await still(tab);
            met = /^Group 5, /.test(await told());
        }
        assert.ok(met, 'no dot was met');
    }));

    it('stay where they are while a box scrolls inside itself', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        await at(tab, 'header.class').click();
        await tab.mouse.move(2, 600);
        await still(tab);
        const heading = () => at(tab, 'pool.heading').screenshot();
        const before = await heading();
        await at(tab, 'pool.text').focus();
        await tab.evaluate((text) => document.execCommand('insertText', false, text), table(30));
        await at(tab, 'pool.text').evaluate((box) => { box.scrollTop = 200; });
        await still(tab);
        assert.ok(await at(tab, 'pool.text').evaluate((box) => box.scrollTop) > 0);
        assert.ok((await heading()).equals(before), 'the painting moved');
    }));

    it('hold a thousand groups in a thousand nodes', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        await classOf(tab, 1000);
        assert.match(await at(tab, 'pool.sentence').textContent(), /1000 runs/);
        assert.ok(await tab.evaluate(() => document.querySelectorAll('[data-key]').length) <= 1000);
        await at(tab, 'pool.records').scrollIntoViewIfNeeded();
        assert.ok(await tab.evaluate(() => globalThis.overwaterBench(3)) > 0);
    }));

    it('give the class out as a file that a spreadsheet and the page read', () => withCleanPage({ kind: 'served' }, async ({ tab }) => {
        await classOf(tab, 5);
        const sentence = await at(tab, 'pool.sentence').textContent();
        const [download] = await Promise.all([tab.waitForEvent('download'), at(tab, 'pool.save_table').click()]);
        const bytes = readFileSync(await download.path());
        assert.deepEqual([...bytes.subarray(0, 3)], [0xef, 0xbb, 0xbf]);
        await at(tab, 'pool.clear').click();
        await still(tab);
        const [chooser] = await Promise.all([tab.waitForEvent('filechooser'), at(tab, 'pool.files').click()]);
        // As older spreadsheets write it: one byte a letter.
        const old = Buffer.from(bytes.subarray(3).toString('utf8').replace(/Group/, 'Group,"Größe"').replace(/\n(\d)/g, '\n$1,x'), 'latin1');
        await chooser.setFiles([{ name: 'class.csv', mimeType: 'text/csv', buffer: old }]);
        await at(tab, 'pool.sentence').waitFor();
        await still(tab);
        assert.equal(await at(tab, 'pool.sentence').textContent(), sentence);
        assert.match(await tab.locator('[data-key^="pool.problem"]').first().textContent(), /Größe/);
    }));
});
