// What a person does with the page in the tests: goes through it by keyboard, and has axe look at it.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { engine, open, still } from './harness.mjs';

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

/** Whether the control is looked for more quickly backwards: it comes before the one with the focus. */
async function liesBefore(tab, matches) {
    const [names, at] = await tab.evaluate(() => {
        const controls = [...document.querySelectorAll('button, input, select, textarea, a[href], [tabindex="0"]')];
        const nameOf = (el) => el.labels?.[0]?.textContent ?? el.getAttribute('aria-label') ?? el.textContent ?? '';
        return [controls.map(nameOf), controls.indexOf(document.activeElement)];
    });
    const found = names.findIndex(matches);
    return found >= 0 && (at < 0 ? found < names.length / 2 : found < at);
}

/** Presses Tab, or Shift+Tab, `most` times at the most, until the control with this name has the focus. */
export async function tabTo(tab, name, { most = 60, back = undefined, matches = (found) => found === name } = {}) {
    const passed = [];
    // After its last control Firefox goes on in its own buttons, and what the driver presses then does nothing in the page.
    back ??= engine === 'Firefox' && await liesBefore(tab, matches);
    for (let presses = 0; presses < most; ++presses) {
        const found = await focusedName(tab);
        if (matches(found)) return;
        passed.push(found);
        await tab.keyboard.press(back ? 'Shift+Tab' : 'Tab');
    }
    throw new Error(`Tab never came to ${name}, but to ${passed.map((found) => found.slice(0, 30)).join(', ')}`);
}

/** Goes to the control and presses a key there. */
export async function pressAt(tab, name, { key = 'Enter', ...how } = {}) {
    await tabTo(tab, name, how);
    await tab.keyboard.press(key);
    await still(tab);
}

// Record A of the method (invented): the readings in the order of the bench.
const recordA = [
    ['Mass of metal', '0.0412'], ['Acid volume', '10.0'], ['Acid concentration', '3.0'], ['Tube capacity', '50'],
    ['End space', '2.35'], ['Scale reading', '9.15'], ['Level difference', '112'], ['Temperature', '21.4'], ['Barometer', '99.62'],
];

/** Record A typed into a run of one's own, by keyboard. */
export async function enterRecordA(tab) {
    await tabTo(tab, 'Start my own run');
    await tab.keyboard.press('Enter');
    await still(tab);
    for (const [name, text] of recordA) {
        if (name === 'Tube capacity') {
            // Radio buttons: Tab comes to the first, the arrow chooses the next.
            await tabTo(tab, '0');
            await tab.keyboard.press('ArrowRight');
            await still(tab);
        }
        if (name === 'Level difference') {
            await tabTo(tab, 'higher inside');
            await tab.keyboard.press('Space');
            await still(tab);
        }
        await tabTo(tab, name);
        await tab.keyboard.type(text);
    }
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
