// Random actions in the built page: whatever is pressed, chosen or typed, nothing goes wrong, nothing says "nan", and the page goes on.
//
//   node --test tests/long/monkey.test.mjs      OVERWATER_ACTIONS=10000 actions, OVERWATER_SEED=1
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { started, still } from '../browser/harness.mjs';
import { withCleanPage } from '../browser/people.mjs';

const actions = Number(process.env.OVERWATER_ACTIONS ?? 10000);
const seed = Number(process.env.OVERWATER_SEED ?? 1);
const actionsABatch = 50; // between them real keys, the wheel, another size, now and then loading the page again

/** The same numbers for the same seed (mulberry32, public domain). */
function randomFrom(start) {
    let state = start;
    return (below) => {
        state = (state + 0x6d2b79f5) | 0;
        let t = Math.imul(state ^ (state >>> 15), 1 | state);
        t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
        return ((t ^ (t >>> 14)) >>> 0) % below;
    };
}

const texts = ['', '0', '0.0412', '9.15', '112', '21.4', '99.62', '-3', '1e308', '-1e308', '4.9e-324', '60', '29.42 inHg', '0.04.1', 'abc',
    '±', '° 中', '0,5', '<b>&amp;</b>', '1 2 3', '50', 'José', '\u202e9.15', '9'.repeat(400)];
const keys = ['Tab', 'Shift+Tab', 'Enter', 'Space', 'Escape', 'ArrowRight', 'ArrowLeft', 'ArrowDown', 'Control+z', 'Control+y', 'PageDown', 'Home'];

/** So many actions on the controls of the page, a frame after each. Runs in the page. */
async function actInside({ numbers, texts }) {
    let at = 0;
    const pick = (below) => numbers[at++ % numbers.length] % below;
    const done = [];
    while (at + 4 < numbers.length) {
        const all = [...document.querySelectorAll('button:not([disabled]), input, select, textarea')].filter((el) => el.dataset.key);
        const el = all[pick(all.length)];
        // Removing everything from the browser is one action among very many.
        if (!el || (el.dataset.key.endsWith('finish_yes') && pick(10) > 0)) continue;
        done.push(el.dataset.key);
        if (done.length > 8) done.shift();
        el.focus();
        if (el.tagName === 'SELECT') {
            const open = [...el.options].filter((one) => !one.disabled);
            if (open.length > 0) el.value = open[pick(open.length)].value;
            el.dispatchEvent(new Event('change', { bubbles: true }));
        } else if (el.tagName === 'BUTTON' || el.type === 'radio' || el.type === 'checkbox') {
            if (!el.classList.contains('opens-file')) el.click();
        } else {
            el.value = el.type === 'range' ? String(Number(el.min) + (Number(el.max) - Number(el.min)) * pick(1000) / 1000) : texts[pick(texts.length)];
            el.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'insertText' }));
        }
        if (pick(5) === 0) document.activeElement?.blur();
        await new Promise((resolve) => requestAnimationFrame(resolve));
    }
    return { done, stopped: !document.getElementById('stopped').hidden, words: document.body.innerText };
}

it(`${actions} random actions, seed ${seed}`, { timeout: 3_600_000 }, () => withCleanPage({
    kind: 'served',
    before: () => { globalThis.print = () => globalThis.dispatchEvent(new Event('afterprint')); },
}, async ({ tab }) => {
    const pick = randomFrom(seed);
    tab.on('filechooser', () => {}); // a key may open one; nothing is chosen
    for (let done = 0; done < actions; done += actionsABatch) {
        const numbers = Array.from({ length: 4 * actionsABatch }, () => pick(2 ** 30));
        const said = await tab.evaluate(actInside, { numbers, texts });
        const trace = `after ${done + actionsABatch} actions of seed ${seed}, the last ones ${said.done.join(', ')}`;
        assert.ok(!said.stopped, `the page has stopped ${trace}`);
        assert.doesNotMatch(said.words, /(?<!\p{L})(nan|inf)(?!\p{L})|undefined|\{[a-z_]+\}/iu, trace);
        for (let i = 0; i < 5; ++i) await tab.keyboard.press(keys[pick(keys.length)]);
        await tab.mouse.wheel(0, 200 * (pick(9) - 4));
        if (pick(4) === 0) await tab.setViewportSize([{ width: 1366, height: 620 }, { width: 390, height: 844 }, { width: 683, height: 310 }][pick(3)]);
        if (pick(8) === 0) {
            await tab.reload();
            await started(tab);
        }
    }
    await still(tab);
}));
