// Milliseconds for one frame of the class set, and for one changed reading with all that follows from it: the handler, and the
// frame after it (painting, the mirror's patch, the document changed by it), in a class of 1,000 invented groups.
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

const page = await open({
    kind: 'served',
    before: () => {
        const ask = globalThis.requestAnimationFrame;
        globalThis.requestAnimationFrame = (draw) => ask((time) => {
            const start = performance.now();
            draw(time);
            globalThis.overwaterLongest = Math.max(globalThis.overwaterLongest ?? 0, performance.now() - start);
        });
    },
});
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
        globalThis.overwaterLongest = 0;
        const start = performance.now();
        el.dispatchEvent(new InputEvent('input', { bubbles: true, data: text, inputType: 'insertText' }));
        const handled = performance.now() - start;
        return new Promise((done) => requestAnimationFrame(() => setTimeout(() => done([handled, globalThis.overwaterLongest]))));
    }, [field, (9 + i / 10).toFixed(2)]));
}
const median = (numbers) => numbers.sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
const handled = median(changes.map(([one]) => one));
const drawn = median(changes.map(([, one]) => one));
const nodes = await tab.evaluate(() => document.querySelectorAll('[data-key]').length);
console.log(`${groups} groups: read and pooled ${opened.toFixed(1)} ms, frame ${frame.toFixed(2)} ms, `
    + `a changed reading ${handled.toFixed(2)} ms and its frame ${drawn.toFixed(2)} ms (medians of 9), ${nodes} nodes`);
await page.close();
