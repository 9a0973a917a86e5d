// Milliseconds for one frame of the bench page: everything is drawn into triangles and compared with what the mirror holds; WebGL does
// not paint them. The median of 25 times 60 frames, by the clock and by the processor time of the page's main thread, which others on
// the machine do not lengthen.
//
//   node tests/bench/frame.mjs
//
// No test asserts a time; the README quotes the figures.
import { open, still } from '../browser/harness.mjs';

const rounds = 25, frames = 60;
const { tab, context, close } = await open({ kind: 'served' });
const session = await context.newCDPSession(tab);
await session.send('Performance.enable', { timeDomain: 'threadTicks' });

/** Processor time of the page's main thread so far, in milliseconds. */
async function processor() {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'ThreadTime').value * 1000;
}

const draw = (count) => tab.evaluate((n) => globalThis.overwaterBench(n), count);
await still(tab);
await draw(frames);
// What the asking itself takes.
const idle = [];
for (let i = 0; i < 9; ++i) {
    const before = await processor();
    await tab.evaluate(() => 0);
    idle.push(await processor() - before);
}
const sorted = (numbers) => numbers.sort((a, b) => a - b);
const asking = sorted(idle)[4];
const clock = [], cpu = [];
for (let i = 0; i < rounds; ++i) {
    const before = await processor();
    clock.push(await draw(frames));
    cpu.push((await processor() - before - asking) / frames);
}
for (const [name, all] of [['clock', clock], ['processor', cpu]]) {
    sorted(all);
    console.log(`${name.padEnd(10)} median ${all[Math.floor(rounds / 2)].toFixed(2)} ms, from ${all[0].toFixed(2)} to ${all.at(-1).toFixed(2)}`);
}
await close();
