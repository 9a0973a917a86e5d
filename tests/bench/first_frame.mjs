// Milliseconds from the beginning of the navigation to the first frame, of the page served and as one file, at full speed and with
// the processor held to a quarter: medians of so many visits, each in a context of its own that has nothing kept.
//
//   node tests/bench/first_frame.mjs [VISITS]
//
// No test asserts a time; the README quotes the figures.
import { kinds, open } from '../browser/harness.mjs';

const visits = Number(process.argv[2] ?? 7);
const median = (numbers) => numbers.sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

for (const kind of kinds) {
    for (const throttle of [1, 4]) {
        const times = [];
        for (let visit = 0; visit < visits; ++visit) {
            const page = await open({ kind, ready: false });
            // The first tab has loaded the page already: what is measured is a visit of its own, in a context without a cache.
            const tab = await page.context.newPage();
            const session = await page.context.newCDPSession(tab);
            await session.send('Network.enable');
            await session.send('Network.setCacheDisabled', { cacheDisabled: true });
            await session.send('Network.setBypassServiceWorker', { bypass: true });
            await page.tab.close();
            await session.send('Emulation.setCPUThrottlingRate', { rate: throttle });
            await tab.goto(page.address);
            await tab.waitForFunction(() => performance.getEntriesByName('overwater-first-frame').length > 0, undefined, { timeout: 60_000 });
            times.push(await tab.evaluate(() => performance.getEntriesByName('overwater-first-frame')[0].startTime));
            await page.close();
        }
        console.log(`${kind.padEnd(10)} processor at 1/${throttle}   ${(median(times) / 1000).toFixed(2)} s`);
    }
}
