// The program's second part in the built page: nothing of it is loaded before it is wanted; what is behind the gate works; a part
// that cannot be had, or that was made with another program, leaves a sentence, a press to try again, and everything else.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, it } from 'node:test';
import { serve } from '../../tools/server.mjs';
import { dist, field, kinds, started, still } from './harness.mjs';
import { pressAt, violations, withCleanPage, withPage } from './people.mjs';

const [english, french] = ['en', 'fr'].map((tag) => JSON.parse(readFileSync(new URL(`../../assets/text/${tag}.json`, import.meta.url), 'utf8')));
const file = 'more.wasm';

const at = (tab, key) => tab.locator(`[data-key="${key}"]`);
const there = (tab) => at(tab, 'codes.class').waitFor({ state: 'attached' });
const refused = async (tab) => {
    await at(tab, 'part.again').waitFor({ state: 'attached' });
    await still(tab);
    assert.equal(await at(tab, 'part.state').textContent(), english['part.missing']);
};
const toCodes = async (tab) => {
    await at(tab, 'header.practice').click();
    await at(tab, 'practice.to_codes').click();
};
const controlled = (tab) => tab.waitForFunction(() => navigator.serviceWorker.controller !== null);
const kept = (tab) => tab.waitForFunction(async (name) => {
    for (const cache of await caches.keys()) {
        if (await (await caches.open(cache)).match(name)) return true;
    }
    return false;
}, file);

for (const kind of kinds) {
    describe(`the second part, ${kind}`, { timeout: 600_000 }, () => {
        it('comes when its page is opened, and that page works', () => withCleanPage({ kind }, async ({ tab }) => {
            const asked = () => tab.evaluate((name) => performance.getEntriesByType('resource').some((one) => one.name.endsWith(name)), file);
            await pressAt(tab, english['page.practice'], { most: 90 });
            assert.equal(await asked(), false);
            await pressAt(tab, english['practice.to_codes'], { most: 90 });
            await there(tab);
            await still(tab);
            if (kind === 'served') assert.equal(await asked(), true);
            assert.equal(await at(tab, 'part.state').count(), 0);
            assert.deepEqual(await violations(tab), []);
            await field(tab, english['codes.students']).fill('3');
            await at(tab, 'codes.list.4').waitFor({ state: 'detached' });
            assert.equal(await tab.locator('[data-key^="codes.list."][data-key$=".code"]').count(), 3);
            // Its sentences come with it, and in other languages behind it.
            assert.equal(await at(tab, 'codes.print').textContent(), english['codes.print']);
            await at(tab, 'header.language').selectOption('fr');
            await tab.locator('[data-key="codes.print"]', { hasText: french['codes.print'] }).waitFor({ state: 'attached' });
            // It is where one was, so it comes at once.
            await tab.reload();
            await started(tab);
            await there(tab);
            assert.equal(await at(tab, 'codes.print').textContent(), french['codes.print']);
        }));
    });
}

describe('the second part, served', { timeout: 600_000 }, () => {
    it('that cannot be had says so, loses nothing, and comes when it is asked for again', () => withPage({ kind: 'served' }, async ({ tab, context }) => {
        await controlled(tab);
        await field(tab, english['field.mass_of_metal']).fill('0.0399');
        await still(tab);
        await context.setOffline(true);
        await toCodes(tab);
        await refused(tab);
        assert.deepEqual(await violations(tab), []);
        await at(tab, 'part.again').click();
        await refused(tab);
        // Loaded again without a network it is as it was, and all the rest goes on.
        await tab.reload();
        await started(tab);
        await refused(tab);
        await at(tab, 'header.bench').click();
        await still(tab);
        assert.equal(await at(tab, 'bench.mass_of_metal').inputValue(), '0.0399');
        await field(tab, english['field.mass_of_metal']).fill('0.0398');
        await toCodes(tab);
        await refused(tab);
        await context.setOffline(false);
        await at(tab, 'part.again').click();
        await there(tab);
        await at(tab, 'header.bench').click();
        await still(tab);
        assert.equal(await at(tab, 'bench.mass_of_metal').inputValue(), '0.0398');
    }));

    it('is there without a network once it was used', () => withPage({ kind: 'served' }, async ({ tab, context }) => {
        await controlled(tab);
        await toCodes(tab);
        await there(tab);
        await kept(tab);
        await context.setOffline(true);
        await tab.reload();
        await started(tab);
        await there(tab);
        assert.equal(await at(tab, 'part.state').count(), 0);
    }));

    it('is kept from the second visit on, and there without a network though it was never used', () =>
        withPage({ kind: 'served' }, async ({ tab, context }) => {
            await controlled(tab);
            await tab.reload();
            await started(tab);
            await kept(tab);
            await context.setOffline(true);
            await toCodes(tab);
            await there(tab);
            assert.equal(await at(tab, 'part.state').count(), 0);
        }));

    it('that was made with another program is refused', () => withPage({ kind: 'served' }, async ({ newTab }) => {
        const folder = mkdtempSync(join(tmpdir(), 'overwater-other-'));
        cpSync(dist, folder, { recursive: true });
        const other = readFileSync(join(dist, file));
        // One byte of its code.
        other[other.length - 1] ^= 1;
        writeFileSync(join(folder, file), other);
        const server = await serve({ folder, port: 0 });
        try {
            const tab = await newTab({ at: server.address });
            await toCodes(tab);
            await refused(tab);
            assert.equal(await at(tab, 'status').textContent(), english['part.missing']);
            cpSync(join(dist, file), join(folder, file));
            await at(tab, 'part.again').click();
            await there(tab);
        } finally {
            await server.close();
            rmSync(folder, { recursive: true, force: true });
        }
    }));
});
