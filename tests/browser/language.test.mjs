// Languages in the built page: the browser's at the start, another chosen by hand, kept, and there without a network.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, it } from 'node:test';
import { kinds, started, still } from './harness.mjs';
import { violations, withCleanPage, withPage } from './people.mjs';

/** The sentences of a language. */
const sentences = (tag) => JSON.parse(readFileSync(new URL(`../../assets/text/${tag}.json`, import.meta.url), 'utf8'));
const [english, german, french] = ['en', 'de', 'fr'].map(sentences);

const at = (tab, key) => tab.locator(`[data-key="${key}"]`);
const spoken = (tab) => tab.evaluate(() => document.documentElement.lang);
const choose = async (tab, key, tag) => {
    await at(tab, key).selectOption(tag);
    await tab.waitForFunction((wanted) => document.documentElement.lang === wanted, tag);
    await still(tab);
};
const again = async (tab) => {
    await tab.reload();
    await started(tab);
};

for (const kind of kinds) {
    describe(`languages, ${kind}`, { timeout: 600_000 }, () => {
        it('begin as the browser has it, change by hand, and stay', () => withCleanPage({ kind, locale: 'de-AT' }, async ({ tab }) => {
            assert.equal(await spoken(tab), 'de');
            assert.equal(await at(tab, 'header.bench').textContent(), german['page.bench']);
            assert.equal(await tab.title(), german['page.title']);
            assert.notEqual(german['page.title'], english['page.title']);
            const mass = tab.getByRole('textbox', { name: german['field.mass_of_metal'], exact: true });
            await mass.fill('0,0412');
            await choose(tab, 'header.language', 'fr');
            assert.equal(await at(tab, 'header.bench').textContent(), french['page.bench']);
            assert.equal(await at(tab, 'bench.mass_of_metal').inputValue(), '0,0412');
            await again(tab);
            assert.equal(await spoken(tab), 'fr');
            assert.equal(await at(tab, 'bench.mass_of_metal').inputValue(), '0,0412');
            await at(tab, 'header.record').click();
            await choose(tab, 'records.language', 'en');
            await again(tab);
            assert.equal(await at(tab, 'header.bench').textContent(), english['page.bench']);
        }));

        it('say nothing in another language first', () => withPage({
            kind, locale: 'de',
            before: () => {
                globalThis.titles = [];
                new MutationObserver(() => globalThis.titles.push(document.documentElement.lang)).observe(document, {
                    subtree: true, childList: true, attributes: true, attributeFilter: ['lang', 'data-key'],
                });
            },
        }, async ({ tab }) => {
            const before = await tab.evaluate(() => {
                const elements = [...document.querySelectorAll('[data-key]')];
                return { elements: elements.length, languages: [...new Set(globalThis.titles)] };
            });
            assert.ok(before.elements > 80);
            // The file says English of itself; with the first words it is German.
            assert.deepEqual(before.languages, ['en', 'de']);
            assert.equal(await at(tab, 'header.undo').textContent(), german['header.undo']);
        }));

        it('have no barrier that axe finds', () => withCleanPage({ kind, locale: 'fr-FR' }, async ({ tab }) => {
            assert.deepEqual(await violations(tab), []);
            await at(tab, 'header.record').click();
            await still(tab);
            assert.deepEqual(await violations(tab), []);
        }));
    });
}

describe('languages, served', { timeout: 600_000 }, () => {
    it('are loaded when they are spoken, from the page alone, and none in English', () => withCleanPage({ kind: 'served' }, async ({ tab, context }) => {
        const asked = [];
        context.on('request', (request) => asked.push(new URL(request.url()).pathname));
        await again(tab);
        assert.deepEqual(asked.filter((path) => path.includes('/text/')), []);
        await choose(tab, 'header.language', 'es');
        assert.ok(asked.includes('/text/es.txt'));
        assert.ok(!asked.some((path) => /text\/(de|fr)/.test(path)));
    }));

    it('are there without a network once they were used; one that was not leaves a sentence', () => withPage({ kind: 'served', locale: 'de' }, async ({ tab, context }) => {
        await tab.waitForFunction(async () => {
            for (const name of await caches.keys()) {
                if (await (await caches.open(name)).match('text/de.txt')) return true;
            }
            return false;
        });
        await again(tab);
        await context.setOffline(true);
        await again(tab);
        assert.equal(await spoken(tab), 'de');
        await at(tab, 'header.language').selectOption('fr');
        const words = german['language.not_loaded'].replace('{language}', 'Français');
        await tab.locator('[data-key^="notice."]', { hasText: words }).first().waitFor();
        assert.equal(await spoken(tab), 'de');
        assert.equal(await at(tab, 'header.language').inputValue(), 'de');
        await context.setOffline(false);
        await choose(tab, 'header.language', 'fr');
    }));

    it('that come damaged are refused', () => withPage({
        kind: 'served',
        before: () => {
            const real = globalThis.fetch;
            globalThis.fetch = (file, how) => (String(file).startsWith('text/') ? Promise.resolve(new Response('damaged\n')) : real(file, how));
        },
    }, async ({ tab }) => {
        await at(tab, 'header.language').selectOption('de');
        await tab.locator('[data-key^="notice."]').first().waitFor();
        assert.equal(await spoken(tab), 'en');
        assert.equal(await at(tab, 'header.language').inputValue(), 'en');
    }));
});
