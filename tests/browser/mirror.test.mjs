// The mirror under 10,000 random changes of tree, texts and language while a field is being typed in: the field keeps
// focus, caret and text, and the elements are those of a plain model of the tree. And each kind of control, by mouse,
// finger, keys and the element's own events: what a person does once comes in once.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'node:test';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { lacks, open } from './harness.mjs';

const shell = fileURLToPath(new URL('../../shell/', import.meta.url));

async function script() {
    const contents = ['mirror', 'events', 'bridge'].map((name) => `export * from './${name}.mjs';`).join('');
    const { outputFiles } = await build({
        stdin: { contents, resolveDir: shell }, bundle: true, write: false, format: 'iife', globalName: 'shell',
    });
    return outputFiles[0].text;
}

/** Runs in the browser. `spoil` leaves out the order of one patch: the check has to see it. */
function play({ steps, spoil }) {
    document.body.innerHTML = '<main id="page"></main><div id="fixed"><div id="polite" role="status"></div></div>';
    const mirror = globalThis.shell.createMirror(document.getElementById('page'), document.getElementById('fixed'));
    let seed = 20240229;
    const random = (n) => {
        seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0; // a linear congruential generator, good enough here
        return Math.floor(seed / 2 ** 32 * n);
    };
    /** The model: key to node, and the children of each parent in order. */
    const nodes = new Map();
    const children = new Map([['', []], ['fixed', []]]);
    const tags = ['p', 'button', 'input', 'select', 'section', 'output', 'label'];
    let made = 0;

    function fresh(parent) {
        const t = tags[random(tags.length)];
        const node = { k: `n${made++}`, p: parent, t, a: { lang: ['en', 'de', 'ja'][random(3)] }, b: [random(900), random(900), 90, 32] };
        if (t === 'input') Object.assign(node, { v: `v${random(99)}`, w: 1, c: 'field' });
        if (t === 'select') Object.assign(node, { o: [['a', 'one'], ['b', `two ${random(9)}`]], v: 'b' });
        if (!['input', 'select', 'section'].includes(t)) node.x = `text ${random(99)}`;
        return node;
    }
    const descendants = (key) => [key, ...(children.get(key) ?? []).flatMap(descendants)];
    const holdsTyped = (key) => descendants(key).includes('typed');

    function change(patch) {
        const parents = [...children.keys()];
        const parent = parents[random(parents.length)];
        const list = children.get(parent);
        const touched = new Set([parent]);
        const what = random(5);
        if (what <= 1 && nodes.size < 120) {
            const node = fresh(parent);
            nodes.set(node.k, node);
            list.splice(random(list.length + 1), 0, node.k);
            if (node.t === 'section') children.set(node.k, []), touched.add(node.k);
            patch.set.push(node);
        } else if (what === 2 && list.length > 0) {
            const key = list[random(list.length)];
            if (holdsTyped(key)) return touched;
            list.splice(list.indexOf(key), 1);
            for (const one of descendants(key).reverse()) nodes.delete(one), children.delete(one), touched.delete(one), patch.gone.push(one);
        } else if (what === 3) {
            for (let i = list.length - 1; i > 0; --i) {
                const j = random(i + 1);
                [list[i], list[j]] = [list[j], list[i]];
            }
        } else if (list.length > 0) {
            const key = list[random(list.length)];
            const before = nodes.get(key);
            const after = { ...before, b: [random(900), random(900), 90, 32], a: random(2) ? { title: `t${random(9)}` } : {} };
            if (after.x !== undefined) after.x = `text ${random(999)}`;
            if (after.v !== undefined && after.t === 'input' && key !== 'typed') after.v = `v${random(99)}`;
            nodes.set(key, after);
            patch.set.push(after);
        }
        return touched;
    }

    nodes.set('typed', { k: 'typed', p: '', t: 'input', a: { type: 'text' }, c: 'field', v: 'twelve letters', w: 1, b: [0, 0, 200, 32] });
    children.get('').push('typed');
    mirror.apply(JSON.stringify({ set: [nodes.get('typed')], order: [['', ['typed']]] }));
    const typed = document.getElementById('typed');
    typed.focus();
    typed.setSelectionRange(3, 7);
    const marks = [];
    for (const name of ['blur', 'focus']) typed.addEventListener(name, () => marks.push(name));

    for (let step = 0; step < steps; ++step) {
        const patch = { page: { lang: ['en', 'fr', 'ja'][random(3)] }, set: [], gone: [], order: [] };
        const touched = change(patch);
        if (!(spoil && step === steps - 1)) for (const parent of touched) if (children.has(parent)) patch.order.push([parent, children.get(parent)]);
        if (spoil && step === steps - 1) nodes.get('typed').v = 'spoiled', patch.set.push({ ...nodes.get('typed'), w: 2 });
        mirror.apply(JSON.stringify(patch));

        if (document.activeElement !== typed) return `step ${step}: the focus went`;
        if (typed.value !== 'twelve letters') return `step ${step}: the text became ${typed.value}`;
        if (typed.selectionStart !== 3 || typed.selectionEnd !== 7) return `step ${step}: the caret moved`;
        if (marks.length > 0) return `step ${step}: ${marks}`;
        for (const [parent, keys] of children) {
            const el = parent === '' ? document.getElementById('page') : document.getElementById(parent);
            const shown = [...el.children].map((child) => child.id).filter((id) => id !== 'polite');
            if (shown.join() !== keys.join()) return `step ${step}: ${parent || 'page'} holds ${shown}, not ${keys}`;
        }
        for (const node of nodes.values()) {
            const el = document.getElementById(node.k);
            if (node.x !== undefined && el.textContent !== node.x) return `step ${step}: ${node.k} says ${el.textContent}`;
            if (node.v !== undefined && el.value !== node.v) return `step ${step}: ${node.k} has ${el.value}`;
            if (`${el.title}|${el.lang}` !== `${node.a.title ?? ''}|${node.a.lang ?? ''}`) return `step ${step}: attributes of ${node.k}`;
            if (el.style.left !== `${node.b[0]}px`) return `step ${step}: place of ${node.k}`;
        }
    }
    return `${nodes.size > 20 ? 'all well' : 'a tree too small to prove anything'}`;
}

it('keeps focus, caret and text through 10,000 random changes', { timeout: 600_000 }, async () => {
    const page = await open({ kind: 'one-file', ready: false });
    try {
        const tab = await page.context.newPage();
        await tab.goto('about:blank');
        await tab.evaluate(await script());
        assert.equal(await tab.evaluate(play, { steps: 10_000, spoil: false }), 'all well');
        assert.match(await tab.evaluate(play, { steps: 200, spoil: true }), /^step 199: the text became spoiled/);
    } finally {
        await page.close();
    }
});

/** Runs in the browser: one control of each kind, and a C++ that writes down what comes in and answers in a frame. */
function setUp() {
    document.body.innerHTML = '<main id="page"></main><div id="fixed"><div id="polite" role="status"></div></div>';
    const { createMirror, kind, listen } = globalThis.shell;
    const mirror = createMirror(document.getElementById('page'), document.getElementById('fixed'));
    const box = (row, width = 120) => [20, 20 + 50 * row, width, 44];
    const slider = { k: 'slider', p: '', t: 'input', c: 'slider', v: '0', w: 1, b: box(5, 324),
        a: { type: 'range', min: '-2', max: '2', step: '0.1', 'aria-label': 'Air let in', 'aria-valuetext': '0 mL' } };
    const nodes = [
        { k: 'button', p: '', t: 'button', a: { type: 'button' }, c: 'button', x: 'Press', b: box(0) },
        { k: 'radio', p: '', t: 'input', a: { type: 'radio', value: 'two', 'aria-label': 'Two' }, c: 'radio', on: false, b: box(1) },
        { k: 'check', p: '', t: 'input', a: { type: 'checkbox' }, c: 'radio', on: false, b: box(2) },
        { k: 'label', p: '', t: 'label', a: { for: 'check' }, x: 'Check', b: [160, 120, 120, 44] },
        { k: 'field', p: '', t: 'input', a: { type: 'text', 'aria-label': 'Field' }, c: 'field', v: '', w: 1, b: box(3) },
        { k: 'select', p: '', t: 'select', a: { 'aria-label': 'Select' }, o: [['a', 'one'], ['b', 'two']], v: 'a', w: 1, b: box(4) },
        slider,
    ];
    mirror.apply(JSON.stringify({ set: nodes, order: [['', nodes.map((node) => node.k)]] }));
    const names = Object.fromEntries(Object.entries(kind).map(([name, number]) => [number, name]));
    const seen = [];
    const core = { value: '0', write: 1, holds: null };
    const show = () => {
        const v = core.holds ?? core.value;
        mirror.apply(JSON.stringify({ set: [{ ...slider, v, w: core.write, a: { ...slider.a, 'aria-valuetext': `${v} mL` } }] }));
    };
    listen((what, key = '', text = '') => {
        if (!/^(click|input|change|key|undo)$/.test(names[what])) return false;
        seen.push([names[what], key, text].join(' ').trim());
        if (key === 'slider' && names[what] !== 'key') core.value = text, requestAnimationFrame(show);
        return false;
    }, mirror);
    Object.assign(globalThis, { core, show, taken: () => seen.splice(0) });
}

describe('what a person does once comes in once', { timeout: 600_000 }, () => {
    let page;
    let tab;
    before(async () => {
        page = await open({ kind: 'one-file', ready: false, touch: true, size: { width: 500, height: 500 } });
    });
    after(() => page.close());
    const fresh = async () => {
        await tab?.close();
        tab = await page.context.newPage();
        await tab.goto('about:blank');
        await tab.addStyleTag({ path: `${shell}style.css` });
        await tab.evaluate(await script());
        await tab.evaluate(setUp);
    };
    const frame = () => tab.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    const taken = async () => {
        await frame();
        return tab.evaluate(() => globalThis.taken());
    };
    const centre = async (id) => {
        const { x, y, width, height } = await tab.locator(`#${id}`).boundingBox();
        return [x + width / 2, y + height / 2];
    };
    const own = (id, work) => tab.locator(`#${id}`).evaluate(work);
    const press = async (id, key) => {
        await tab.locator(`#${id}`).focus();
        await taken();
        await tab.keyboard.press(key);
    };
    const noFinger = lacks({ Firefox: 'a finger of its driver moves nothing', WebKitGTK: 'its driver has no finger' });
    /** Each way in a page of its own, since a radio button is chosen only once. */
    const ways = (id, expected, more = {}) => {
        const all = {
            mouse: async () => tab.mouse.click(...await centre(id)),
            finger: async () => tab.touchscreen.tap(...await centre(id)),
            'its own click': () => own(id, (el) => el.click()),
            ...more,
        };
        for (const [name, way] of Object.entries(all)) {
            it(`${id}: ${name}`, name === 'finger' ? noFinger : {}, async () => {
                await fresh();
                await way();
                assert.deepEqual((await taken()).filter((event) => !event.startsWith('key ')), expected);
            });
        }
    };

    ways('button', ['click button'], { Enter: () => press('button', 'Enter'), space: () => press('button', 'Space') });
    ways('radio', ['change radio two'], { space: () => press('radio', 'Space') });
    ways('check', ['change check true'], {
        space: () => press('check', 'Space'), label: async () => tab.mouse.click(...await centre('label')),
    });

    it('field: keys, text put in', async () => {
        await fresh();
        await tab.mouse.click(...await centre('field'));
        assert.deepEqual(await taken(), []);
        await tab.keyboard.press('7');
        assert.deepEqual(await taken(), ['input field 7']);
        await tab.locator('#field').fill('9.15');
        assert.deepEqual(await taken(), ['input field 9.15']);
    });

    it('select: a choice, its own event', async () => {
        await fresh();
        await tab.locator('#select').selectOption('b');
        assert.deepEqual(await taken(), ['change select b']);
        await own('select', (el) => { el.value = 'a'; el.dispatchEvent(new Event('change', { bubbles: true })); });
        assert.deepEqual(await taken(), ['change select a']);
    });

    // The thumb is 24 px wide and the slider 324 from x = 20, so that 300 px are from -2 to 2 (web/draw/slider.hpp).
    const placeOf = (value) => 20 + 12 + (value + 2) * 75;

    it('slider: the mouse takes it where it is drawn', async () => {
        await fresh();
        const [, y] = await centre('slider');
        for (const value of ['1.5', '-0.7', '2', '-2', '0.4']) {
            await tab.mouse.click(placeOf(Number(value)), y);
            assert.deepEqual(await taken(), [`input slider ${value}`, `change slider ${value}`]);
        }
        const slider = tab.getByRole('slider', { name: 'Air let in' });
        assert.equal(await slider.getAttribute('aria-valuetext'), '0.4 mL');
        assert.equal(await slider.inputValue(), '0.4');
        assert.equal(await slider.evaluate((el) => el.getBoundingClientRect().height), 44);
    });

    it('slider: a finger takes it where it is drawn', noFinger, async () => {
        await fresh();
        const [, y] = await centre('slider');
        await tab.touchscreen.tap(placeOf(-1.2), y);
        assert.deepEqual(await taken(), ['input slider -1.2', 'change slider -1.2']);
        assert.equal(await tab.locator('#slider').getAttribute('aria-valuetext'), '-1.2 mL');
        assert.equal(await tab.locator('#slider').inputValue(), '-1.2');
    });

    it('slider: a drag comes in move by move, and its end once', async () => {
        await fresh();
        const [, y] = await centre('slider');
        await tab.mouse.move(placeOf(0), y);
        await tab.mouse.down();
        for (const value of [0.3, 0.6, 0.9]) {
            await tab.mouse.move(placeOf(value), y);
            await frame();
        }
        assert.deepEqual(await taken(), ['input slider 0.3', 'input slider 0.6', 'input slider 0.9']);
        // While the thumb is held the page itself does not move it, however much the value changes ...
        await tab.evaluate(() => { globalThis.core.holds = '-1'; globalThis.show(); });
        assert.equal(await tab.locator('#slider').inputValue(), '0.9');
        await tab.mouse.up();
        // ... and afterwards it stands where the page says.
        assert.deepEqual(await taken(), ['change slider 0.9']);
        assert.equal(await tab.locator('#slider').inputValue(), '-1');
    });

    it('slider: keys move it by a step, and are not handed over', async () => {
        await fresh();
        await tab.locator('#slider').focus();
        for (const [key, value] of [['ArrowRight', '0.1'], ['ArrowUp', '0.2'], ['ArrowLeft', '0.1'], ['Home', '-2'], ['End', '2']]) {
            await tab.keyboard.press(key);
            assert.deepEqual(await taken(), [`input slider ${value}`, `change slider ${value}`], key);
        }
        await tab.keyboard.press('PageDown');
        assert.match((await taken()).join(), /^input slider ([\d.-]+),change slider \1$/);
        await tab.keyboard.press('Escape');
        assert.deepEqual(await taken(), ['key slider Escape']);
        // What C++ changes is shown, with the focus too.
        await tab.evaluate(() => { globalThis.core.value = '1.3'; globalThis.show(); });
        assert.equal(await tab.locator('#slider').inputValue(), '1.3');
        assert.equal(await own('slider', (el) => document.activeElement === el), true);
    });

    it('slider: its own events', async () => {
        await fresh();
        await own('slider', (el) => { el.value = '0.5'; el.dispatchEvent(new Event('input', { bubbles: true })); });
        assert.deepEqual(await taken(), ['input slider 0.5']);
        await own('slider', (el) => el.dispatchEvent(new Event('change', { bubbles: true })));
        assert.deepEqual(await taken(), ['change slider 0.5']);
    });

    it('slider: nothing of it is seen over the canvas, and all of it without one', async () => {
        await fresh();
        await own('slider', (el) => document.body.style.setProperty('background', '#fff'));
        const clip = { x: 10, y: 270, width: 344, height: 44 };
        const bare = await tab.screenshot({ clip });
        await own('slider', (el) => { el.style.visibility = 'hidden'; });
        assert.deepEqual(await tab.screenshot({ clip }), bare);
        await own('slider', (el) => { el.style.visibility = ''; document.body.classList.add('plain'); });
        const box = await tab.locator('#slider').boundingBox();
        assert.ok(box.width > 200 && box.height >= 44, `${box.width} x ${box.height}`);
        const shown = await tab.screenshot({ clip: box });
        await own('slider', (el) => { el.style.visibility = 'hidden'; });
        assert.notDeepEqual(await tab.screenshot({ clip: box }), shown);
        await own('slider', (el) => { el.style.visibility = ''; });
        await press('slider', 'ArrowRight');
        assert.deepEqual(await taken(), ['input slider 0.1', 'change slider 0.1']);
    });
});
