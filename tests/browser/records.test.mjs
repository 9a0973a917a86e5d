// Records in Chromium: files out and in, storage that refuses or is damaged, two pages, a computer left clean. Each test
// first shows that what it looks for can be missing.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, describe, it } from 'node:test';
import { field, kinds, lacks, still } from './harness.mjs';
import { withPage } from './people.mjs';

const folder = mkdtempSync(join(tmpdir(), 'overwater-files-'));
after(() => rmSync(folder, { recursive: true, force: true }));

const at = (tab, key) => tab.locator(`[data-key="${key}"]`);
const mass = (tab) => field(tab, 'Mass of metal');
const storage = (tab) => tab.evaluate(() => ({ ...localStorage }));
const ownKeys = async (tab) => Object.keys(await storage(tab)).filter((key) => key.startsWith('overwater.'));
const recordTexts = async (tab) => Object.entries(await storage(tab)).filter(([key]) => key.startsWith('overwater.record.')).map(([, text]) => text);
const notices = (tab) => tab.locator('[data-key^="notice."]').allTextContents();
const ownRun = async (tab) => {
    await at(tab, 'example.start_own').click();
    await still(tab);
};
const toRecords = async (tab) => {
    await at(tab, 'header.record').click();
    await at(tab, 'records.new').waitFor();
};

/** Waits until a notice has these words. */
async function told(tab, words, timeout = 5000) {
    await tab.locator('[data-key^="notice."]', { hasText: words }).first().waitFor({ timeout });
}

/** The file that a press offers, as text. */
async function savedBy(tab, press) {
    const [download] = await Promise.all([tab.waitForEvent('download'), press()]);
    return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

/** Chooses files by the page's own button. `files`: name and text (or bytes) of each. */
async function choose(tab, files) {
    const paths = files.map(({ name, text }) => {
        const path = join(folder, name);
        writeFileSync(path, text);
        return path;
    });
    const [chooser] = await Promise.all([tab.waitForEvent('filechooser'), at(tab, 'records.import').click()]);
    await chooser.setFiles(paths);
}

/** Drops files on the page. */
async function drop(tab, files) {
    const data = await tab.evaluateHandle((list) => {
        const transfer = new DataTransfer();
        for (const { name, text } of list) transfer.items.add(new File([text], name, { type: 'application/json' }));
        return transfer;
    }, files);
    await tab.dispatchEvent('body', 'dragover', { dataTransfer: data });
    await tab.dispatchEvent('body', 'drop', { dataTransfer: data });
}

const record = (members) => `{"overwater":"record","version":1,${members}}`;
const good = record('"id":"g1","name":"From a file","runs":[{"entries":{"mass_of_metal":{"text":"0.0412"}}}]');

// What the file holds, and what the sentence says of it.
const faulty = [
    ['empty.json', '', /empty/],
    ['picture.png', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 255, 254]), /not a complete record/],
    ['truncated.json', good.slice(0, 70), /not a complete record/],
    ['foreign.json', '{"type":"FeatureCollection","features":[]}', /no Overwater record/],
    ['huge.json', record(`"notes":"${'x'.repeat(1_100_000)}"`), /1 MB/],
    ['deep.json', record(`"x":${'['.repeat(100_000)}${']'.repeat(100_000)}`), /nested/],
    ['wrong-type.json', record('"runs":[{"entries":{"mass_of_metal":{"text":0.0412}}}]'), /runs\[0\]\.entries\.mass_of_metal\.text/],
    ['unit.json', record('"shared":{"barometer":{"text":"99","unit":"mL"}}'), /not a unit/],
    ['newer-set.json', '{"overwater":"records","version":2,"records":[]}', /newer version/],
    ['one-bad.json', `{"overwater":"records","version":1,"records":[${good},{"overwater":"record","version":1,"name":1}]}`, /name/],
];

for (const kind of kinds) {
    describe(`records, ${kind}`, { timeout: 600_000 }, () => {
        it('go out as a file and come back by the button and by a drop', () => withPage({ kind }, async (page) => {
            const { tab } = page;
            await ownRun(tab);
            await mass(tab).fill('0.0412');
            await toRecords(tab);
            await at(tab, 'records.name').fill('Blue bench');
            const key = (await ownKeys(tab)).find((name) => name.startsWith('overwater.record.'));
            const id = key.replace('overwater.record.', '');
            const { name, text } = await savedBy(tab, () => at(tab, `records.export.${id}`).click());
            assert.match(name, /^Blue-bench-\d{4}-\d\d-\d\d\.json$/);
            assert.deepEqual(JSON.parse(text), JSON.parse((await storage(tab))[key]).data);

            await at(tab, `records.delete.${id}`).click();
            await still(tab);
            assert.deepEqual(await recordTexts(tab), [], 'the record is still there, so its return proves nothing');
            await choose(tab, [{ name: 'blue.json', text }]);
            await told(tab, 'blue.json');
            assert.deepEqual(JSON.parse((await storage(tab))[key]).data.runs, JSON.parse(text).runs);

            await drop(tab, [{ name: 'one.json', text: good }, { name: 'two.json', text: good.replaceAll('g1', 'g2').replace('0.0412', '0.0390') }]);
            await told(tab, 'two.json');
            assert.equal((await recordTexts(tab)).length, 3);
            await at(tab, 'header.bench').click();
            assert.equal(await mass(tab).inputValue(), '0.0390');
            page.assertClean();
        }));

        it('take nothing from a faulty file, and say why', () => withPage({ kind }, async (page) => {
            const { tab } = page;
            await ownRun(tab);
            await mass(tab).fill('0.0500');
            await toRecords(tab);
            await still(tab);
            const before = await storage(tab);
            for (const [name, text, reason] of faulty) {
                await choose(tab, [{ name, text }]);
                await told(tab, name);
                const words = (await notices(tab)).join(' ');
                assert.match(words, reason, name);
                assert.ok(words.includes('was not opened'), words);
                assert.deepEqual(await storage(tab), before, name);
            }
            // A good one changes something, so the comparison sees what it should.
            await choose(tab, [{ name: 'good.json', text: good }]);
            await told(tab, 'good.json');
            assert.notDeepEqual(await storage(tab), before);
            page.assertClean();
        }));

        it('of a newer program can be read, are not changed, and go out as they came', () => withPage({ kind }, async (page) => {
            const { tab } = page;
            const newer = good.replace('"version":1', '"version":2,"weight":1.50').replace('From a file', 'From tomorrow');
            await drop(tab, [{ name: 'newer.json', text: newer }]);
            await told(tab, 'newer version');
            await at(tab, 'header.bench').click();
            assert.equal(await mass(tab).inputValue(), '0.0412');
            const before = await recordTexts(tab);
            await mass(tab).focus();
            await tab.keyboard.type('9');
            await told(tab, 'not changed');
            await still(tab);
            assert.equal(await mass(tab).inputValue(), '0.0412');
            await at(tab, 'bench.metal').selectOption('zinc');
            await still(tab);
            assert.notEqual(await at(tab, 'bench.metal').inputValue(), 'zinc');
            assert.deepEqual(await recordTexts(tab), before);
            await toRecords(tab);
            const { text } = await savedBy(tab, () => at(tab, 'records.export.g1').click());
            assert.equal(text, newer);
            page.assertClean();
        }));

        it('are offered as a file while storage is full', () => withPage({ kind }, async (page) => {
            const { tab } = page;
            await ownRun(tab);
            assert.equal(await at(tab, 'header.export').count(), 0, 'the offer is there before anything is wrong');
            // Really full, to the last letter.
            await tab.evaluate(() => {
                for (let size = 1 << 20, i = 0; size >= 1; i += 1) {
                    try {
                        localStorage.setItem(`other.${i}`, 'x'.repeat(size));
                    } catch {
                        size = Math.floor(size / 2);
                    }
                }
            });
            await mass(tab).fill('0.0412345678901234567890123456789012345678901234567890');
            await still(tab);
            assert.match(await at(tab, 'header.record').textContent(), /full/);
            const { text } = await savedBy(tab, () => at(tab, 'header.export').click());
            assert.match(text, /0\.0412345678901234567890/);
            await tab.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('other.')).forEach((key) => localStorage.removeItem(key)));
            await mass(tab).fill('0.0412');
            await still(tab);
            assert.match(await at(tab, 'header.record').textContent(), /, saved/);
            assert.equal(await at(tab, 'header.export').count(), 0);
            page.assertClean();
        }));

        it('that are damaged are left alone, and can be saved as they are or deleted', () => withPage({
            kind,
            before: () => {
                if (sessionStorage.getItem('planted')) return;
                sessionStorage.setItem('planted', 'yes');
                localStorage.setItem('overwater.record.torn', '{"schema":1,"data":{"over');
                localStorage.setItem('overwater.settings', 'no settings');
            },
        }, async (page) => {
            const { tab } = page;
            await ownRun(tab);
            await mass(tab).fill('0.0412');
            await toRecords(tab);
            const now = await storage(tab);
            assert.equal(now['overwater.record.torn'], '{"schema":1,"data":{"over');
            assert.equal(now['overwater.settings'], 'no settings');
            const { text } = await savedBy(tab, () => at(tab, 'records.damaged_export.overwater.record.torn').click());
            assert.equal(text, '{"schema":1,"data":{"over');
            await at(tab, 'records.damaged_delete.overwater.record.torn').click();
            await still(tab);
            assert.equal((await storage(tab))['overwater.record.torn'], undefined);
            await at(tab, 'notice.undo').click();
            await still(tab);
            assert.equal((await storage(tab))['overwater.record.torn'], '{"schema":1,"data":{"over');
            page.assertClean();
        }));

        const deaf = kind === 'one-file' ? lacks({ WebKitGTK: 'tells no window of a file what another has stored' }) : {};
        it('of two pages: neither loses a word', deaf, () => withPage({ kind }, async (page) => {
            const one = page.tab;
            await ownRun(one);
            await mass(one).fill('0.0412');
            const two = await page.newTab();
            assert.equal(await mass(two).inputValue(), '0.0412');
            assert.equal(await field(two, 'Barometer').inputValue(), '');
            // One types while the other looks on: it is taken over, and the focus stays.
            await mass(two).focus();
            await field(one, 'Barometer').fill('99.62');
            await told(two, 'another window');
            assert.equal(await field(two, 'Barometer').inputValue(), '99.62');
            assert.equal(await two.evaluate(() => document.activeElement.dataset.key), 'bench.mass_of_metal');
            assert.equal((await recordTexts(one)).length, 1);

            // Both type at once. Whether one hears of the other before it types is the browser's affair: the two words end up
            // in one record or in two, and both are there.
            const words = async () => {
                const kept = await recordTexts(one);
                assert.ok(kept.some((text) => text.includes('"21.5"')), 'the word of the first is lost');
                assert.ok(kept.some((text) => text.includes('"0.0778"')), 'the word of the second is lost');
                return kept.length;
            };
            await Promise.all([field(one, 'Temperature').fill('21.4'), mass(two).fill('0.0777')]);
            await one.waitForTimeout(500);
            await Promise.all([field(one, 'Temperature').fill('21.5'), mass(two).fill('0.0778')]);
            await one.waitForTimeout(500);
            assert.equal(await mass(two).inputValue(), '0.0778');
            assert.equal(await field(one, 'Temperature').inputValue(), '21.5');
            const together = await words();

            // Another window has written, and this one types before it can hear of it: they go different ways.
            await two.close();
            await one.evaluate(() => {
                const [key, text] = Object.entries(localStorage).find(([name, kept]) => name.startsWith('overwater.record.') && kept.includes('"21.5"'));
                localStorage.setItem(key, text.replace(/"99\.62"/g, '"98.11"').replace(/"revision":(\d+)/, (_, number) => `"revision":${Number(number) + 1}`));
                const input = document.querySelector('[data-key="bench.temperature"]');
                input.value = '21.7';
                input.dispatchEvent(new InputEvent('input', { bubbles: true }));
            });
            await still(one);
            assert.equal(await field(one, 'Temperature').inputValue(), '21.7');
            const apart = await recordTexts(one);
            assert.equal(apart.length, together + 1, 'the two pages never went different ways');
            assert.ok(apart.some((text) => text.includes('"98.11"') && !text.includes('"21.7"')), 'the word of the other is lost');
            assert.ok(apart.some((text) => text.includes('"21.7"')), 'the word of this one is lost');
            page.assertClean();
        }));

        it('and all else of ours are gone after Finish on this computer', () => withPage({ kind }, async (page) => {
            const { tab } = page;
            await tab.evaluate(() => localStorage.setItem('somebody.else', 'theirs'));
            if (kind === 'served') await tab.evaluate(() => navigator.serviceWorker.ready.then(() => true));
            await ownRun(tab);
            await mass(tab).fill('0.0412');
            await toRecords(tab);
            const left = async () => ({
                keys: await ownKeys(tab),
                ...(kind === 'served' && {
                    caches: await tab.evaluate(() => caches.keys()),
                    workers: await tab.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length),
                }),
            });
            const before = await left();
            assert.ok(before.keys.length > 1);
            if (kind === 'served') assert.ok(before.caches.length > 0 && before.workers > 0);

            await at(tab, 'records.finish').click();
            await still(tab);
            assert.deepEqual(await left(), before, 'removed before the answer');
            const { text } = await savedBy(tab, () => at(tab, 'records.finish_export').click());
            assert.equal(JSON.parse(text).records.length, 1);
            await at(tab, 'records.finish_yes').click();
            await told(tab, 'nothing of yours is left');
            await tab.waitForTimeout(500);
            await at(tab, 'header.bench').click();
            await still(tab);
            assert.deepEqual(await left(), kind === 'served' ? { keys: [], caches: [], workers: 0 } : { keys: [] });
            assert.equal((await storage(tab))['somebody.else'], 'theirs');
            assert.ok(await at(tab, 'example.start_own').isVisible());
            page.assertClean();
        }));

        it('are not written while they are not to be kept', () => withPage({ kind }, async (page) => {
            const { tab } = page;
            await toRecords(tab);
            await still(tab);
            const before = await storage(tab);
            await at(tab, 'records.not_kept.label').click();
            await still(tab);
            assert.match(await at(tab, 'header.record').textContent(), /not kept/);
            await at(tab, 'records.new').click();
            await mass(tab).fill('0.0412');
            await still(tab);
            assert.deepEqual(await storage(tab), before);
            await toRecords(tab);
            await at(tab, 'records.not_kept.label').click();
            await still(tab);
            assert.ok((await recordTexts(tab)).some((text) => text.includes('0.0412')), 'nothing is ever written');
            page.assertClean();
        }));

        it('have the last keystroke though the page dies right after it', () => withPage({ kind }, async (page) => {
            const { tab } = page;
            await ownRun(tab);
            await mass(tab).focus();
            for (const letter of '0.04125') await tab.keyboard.press(letter);
            await page.die();
            const again = await page.newTab();
            assert.equal(await mass(again).inputValue(), '0.04125');
        }));
    });
}

describe('records without storage', { timeout: 600_000 }, () => {
    it('are offered as a file where storage is denied', () => withPage({
        kind: 'served',
        before: () => Object.defineProperty(globalThis, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } }),
    }, async (page) => {
        const { tab } = page;
        await assert.rejects(tab.evaluate(() => localStorage.length), 'storage works');
        await ownRun(tab);
        await mass(tab).fill('0.0412');
        await still(tab);
        assert.match(await at(tab, 'header.record').textContent(), /not saved/);
        const { text } = await savedBy(tab, () => at(tab, 'header.export').click());
        assert.match(text, /0\.0412/);
        await toRecords(tab);
        await choose(tab, [{ name: 'good.json', text: good }]);
        await told(tab, 'good.json');
        await at(tab, 'header.bench').click();
        assert.equal(await mass(tab).inputValue(), '0.0412');
        page.assertClean();
    }));
});
