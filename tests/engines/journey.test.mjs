// One whole run by keyboard in Firefox and in WebKitGTK, from the served page and from the one file: entered, worked out, kept.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { describe, it } from 'node:test';
import { pathToFileURL } from 'node:url';
import { serve } from '../../tools/server.mjs';
import { dist, still } from '../browser/harness.mjs';
import { enterRecordA, pressAt } from '../browser/people.mjs';
import { distinctColours } from '../browser/png.mjs';
import { engines, withEngine } from './engines.mjs';

const started = async (tab) => {
    for (let tries = 0; tries < 200; ++tries) {
        if (await tab.evaluate(() => performance.getEntriesByName('overwater-first-frame').length > 0)) return still(tab);
        await tab.waitForTimeout(100);
    }
    throw new Error('the page did not start');
};
const words = (tab, key) => tab.evaluate((key) => document.querySelector(`[data-key="${key}"]`)?.textContent ?? '', key);

async function journey(tab, address) {
    await tab.goto(address);
    await started(tab);
    assert.equal(await tab.evaluate(() => {
        const canvas = document.querySelector('canvas');
        const context = canvas?.getContext('webgl2') ?? canvas?.getContext('webgl');
        return context ? (context.isContextLost() ? 'lost' : 'live') : 'none';
    }), 'live', 'WebGL context');
    await tab.evaluate(() => {
        globalThis.overwaterSeen = [];
        for (const name of ['error', 'unhandledrejection', 'securitypolicyviolation']) {
            addEventListener(name, (event) => globalThis.overwaterSeen.push(`${name} ${event.message ?? event.reason ?? event.violatedDirective}`));
        }
    });
    await enterRecordA(tab);
    assert.equal(await words(tab, 'result.headline'), '22.68\u00a0L/mol'); // method.md, record A: 22.6818
    assert.ok(distinctColours(await tab.screenshot()) > 20, 'the page is painted');
    // Backwards: forwards the way leads through the browser's own buttons.
    await pressAt(tab, 'Working', { most: 120, back: true });
    // method.md, record A, to the digits printed there.
    const table = await tab.evaluate(() => document.querySelector('table')?.textContent);
    for (const value of ['43.20', '2549.94', '95974.0', '1.69512', '22.6818']) assert.ok(table?.includes(value), value);
    await pressAt(tab, 'How sure');
    assert.match(await tab.evaluate(() => document.body.textContent), /95.% interval/);
    assert.deepEqual(await tab.evaluate(() => globalThis.overwaterSeen), []);

    // Kept over a reload, and the place too.
    await tab.reload();
    await started(tab);
    await pressAt(tab, 'Bench', { most: 120 });
    assert.equal(await words(tab, 'result.headline'), '22.68\u00a0L/mol');
    assert.deepEqual(tab.messages, []);
}

for (const name of Object.keys(engines)) {
    describe(name, { concurrency: false }, () => {
        it('carries a run from the served page', () => withEngine(name, async (tab) => {
            const server = await serve({ folder: dist, port: 0 });
            try {
                await journey(tab, server.address);
            } finally {
                await server.close();
            }
        }));
        it('carries a run from the one file', () => withEngine(name, (tab) => journey(tab, pathToFileURL(join(dist, 'overwater.html')).href)));
    });
}
