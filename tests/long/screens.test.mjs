// The page on every kind of screen: sizes from a small phone to 4K, 1 to 3 pixels a pixel, light and dark, each language, both
// deliveries, by finger and by mouse. Each pair of values of two of these is tried at least once; the rows are found by going
// through all of them and taking the one with the most pairs that are new.
//
//   node --test tests/long/screens.test.mjs       OVERWATER_ENGINE=Firefox or WebKitGTK: in that, where it can be so
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { assertAligned } from '../browser/aligned.mjs';
import { assertLiveCanvas, assertNotFlat, lacks } from '../browser/harness.mjs';
import { withPage } from '../browser/people.mjs';

const axes = {
    size: [[360, 640], [390, 844], [768, 1024], [1024, 768], [1366, 620], [1920, 1080], [2560, 1440], [3840, 2160]],
    ratio: [1, 1.25, 1.5, 2, 3],
    scheme: ['light', 'dark'],
    locale: ['en-GB', 'de-DE', 'es-ES', 'fr-FR'],
    kind: ['served', 'one-file'],
    touch: [false, true],
};
// A picture of 3840 by 2160 three times over is larger than screens and graphics memories are.
const possible = ({ size, ratio }) => size[0] * ratio <= 7680;

const names = Object.keys(axes);
const product = names.reduce((rows, name) => rows.flatMap((row) => axes[name].map((value) => ({ ...row, [name]: value }))), [{}]).filter(possible);
const pairsOf = (row) => names.flatMap((a, i) => names.slice(i + 1).map((b) => `${a} ${row[a]} ${b} ${row[b]}`));

/** Rows that have every pair of values together. */
function pairwise() {
    const left = new Set(product.flatMap(pairsOf));
    const rows = [];
    while (left.size > 0) {
        const news = (row) => pairsOf(row).filter((pair) => left.has(pair)).length;
        const best = product.reduce((found, row) => (news(row) > found.count ? { row, count: news(row) } : found), { row: undefined, count: 0 });
        rows.push(best.row);
        pairsOf(best.row).forEach((pair) => left.delete(pair));
    }
    return rows;
}

/** Why a row cannot be had in an engine, or nothing. */
const missing = ({ ratio, touch }) => ({
    WebKitGTK: touch ? 'no finger on this screen' : Number.isInteger(ratio) ? false : 'only whole numbers of pixels a pixel',
});

const words = { 'en-GB': 'Barometer', 'de-DE': 'Barometer', 'es-ES': 'Barómetro', 'fr-FR': 'Baromètre' };

for (const row of pairwise()) {
    const { size: [width, height], ratio, scheme, locale, kind, touch } = row;
    it(`${width}x${height} at ${ratio}, ${scheme}, ${locale}, ${kind}, ${touch ? 'finger' : 'mouse'}`, { timeout: 400_000, ...lacks(missing(row)) },
        () => withPage({ kind, size: { width, height }, ratio, scheme, locale, touch }, async (page) => {
            await assertLiveCanvas(page.tab);
            await assertNotFlat(page.tab);
            // A picture element for each pixel of the screen, and nothing beyond the right edge.
            const found = await page.tab.evaluate(() => {
                const canvas = document.querySelector('canvas');
                return { drawn: canvas.width, wide: canvas.getBoundingClientRect().width, beyond: document.documentElement.scrollWidth, inner: innerWidth };
            });
            assert.ok(Math.abs(found.drawn - found.wide * ratio) <= 1.5, `canvas ${found.drawn} for ${found.wide} at ${ratio}`);
            assert.ok(found.beyond <= found.inner, `${found.beyond} wide on ${found.inner}`);
            if (scheme === 'light') await assertAligned(page.tab, words[locale], ratio);
            page.assertClean();
        }));
}
