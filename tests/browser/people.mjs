// What a person does with the page in the tests: goes through it by keyboard, and has axe look at it.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { open, still } from './harness.mjs';

/** Runs `body` with an open page and closes it, whatever happens. */
export async function withPage(options, body) {
    const page = await open(options);
    try {
        await body(page);
    } finally {
        await page.close();
    }
}

/** The same, and afterwards nothing may have gone wrong unseen. */
export const withCleanPage = (options, body) => withPage(options, async (page) => {
    await body(page);
    page.assertClean();
});

export const focusedName = (tab) => tab.evaluate(() => {
    const el = document.activeElement;
    return el?.labels?.[0]?.textContent ?? el?.getAttribute('aria-label') ?? el?.textContent ?? '';
});

/** Presses Tab, `most` times at the most, until the control with this name has the focus. */
export async function tabTo(tab, name, { most = 60, matches = (found) => found === name } = {}) {
    for (let presses = 0; presses < most; ++presses) {
        if (matches(await focusedName(tab))) return;
        await tab.keyboard.press('Tab');
    }
    throw new Error(`Tab never came to ${name}`);
}

/** Goes to the control and presses a key there. */
export async function pressAt(tab, name, { key = 'Enter', ...how } = {}) {
    await tabTo(tab, name, how);
    await tab.keyboard.press(key);
    await still(tab);
}

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds, a line each. */
export async function violations(tab) {
    await tab.evaluate(axe);
    const result = await tab.evaluate(() => globalThis.axe.run(document, {
        // Drawn text is transparent in the document; colours are checked in C++.
        rules: { 'color-contrast': { enabled: false }, 'target-size': { enabled: true } },
    }));
    return result.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).slice(0, 3).join(', ')}`);
}
