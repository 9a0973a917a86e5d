// Milliseconds of C++ for one frame of the class set (its mirror's patch included) and for one changed reading with all that
// follows from it, in a class of 1,000 invented groups.
//
//   node tests/bench/class_frame.mjs [GROUPS]
//
// No test asserts a time; the README quotes the figures. A frame at 60 Hz has 16.7 ms.
import { open, still } from '../browser/harness.mjs';

const groups = Number(process.argv[2] ?? 1000);
const at = (tab, key) => tab.locator(`[data-key="${key}"]`);
const table = ['Group\tMass of metal (g)\tScale reading (mL)', ...Array.from({ length: groups }, (_, i) => {
    const mass = 0.030 + 0.0012 * (i % 10);
    return `${i + 1}\t${mass.toFixed(4)}\t${(50 - 1050 * mass + 0.1 * ((i * 7) % 5)).toFixed(2)}`;
})].join('\n');

const page = await open({ kind: 'served' });
const { tab } = page;
await at(tab, 'header.class').click();
await still(tab);
await at(tab, 'pool.text').fill(table);
const opened = await tab.evaluate(() => new Promise((done) => {
    const start = performance.now();
    document.querySelector('[data-key="pool.read"]').click();
    done(performance.now() - start);
}));
await still(tab);
const frame = await tab.evaluate(() => globalThis.overwaterBench(50));
await tab.evaluate((el) => el.scrollIntoView(), await at(tab, 'pool.head.group').elementHandle());
await still(tab);
await at(tab, 'pool.group.3.open').click();
await still(tab);
const field = '[data-key="pool.group.3.0.scale_reading"]';
await tab.locator(field).focus();
const changes = [];
for (let i = 0; i < 9; ++i) {
    await still(tab);
    changes.push(await tab.evaluate(([where, text]) => {
        const el = document.querySelector(where);
        el.value = text;
        const start = performance.now();
        el.dispatchEvent(new InputEvent('input', { bubbles: true, data: text, inputType: 'insertText' }));
        return performance.now() - start;
    }, [field, (9 + i / 10).toFixed(2)]));
}
changes.sort((a, b) => a - b);
const nodes = await tab.evaluate(() => document.querySelectorAll('[data-key]').length);
console.log(`${groups} groups: read and pooled ${opened.toFixed(1)} ms, frame ${frame.toFixed(2)} ms, `
    + `a changed reading ${changes[4].toFixed(2)} ms (median of 9), ${nodes} nodes`);
await page.close();
