// The mirror under 10,000 random changes of tree, texts and language while a field is being typed in: the field keeps
// focus, caret and text, and the elements are those of a plain model of the tree.
import assert from 'node:assert/strict';
import { it } from 'node:test';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { open } from './harness.mjs';

const mirrorModule = fileURLToPath(new URL('../../shell/mirror.mjs', import.meta.url));

async function script() {
    const { outputFiles } = await build({
        entryPoints: [mirrorModule], bundle: true, write: false, format: 'iife', globalName: 'shell',
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

it('keeps focus, caret and text through 10,000 random changes', { timeout: 120_000 }, async () => {
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
