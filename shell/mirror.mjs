// @ts-check
// Carries out the patches of web/ui/mirror.md: the page's controls and texts as real elements over the canvas.
// One rule above all: the element that has the focus is never moved, replaced or made anew; others are moved around it.

import { fill, holdsValue, isField, isSlider, keyOf, make, offer, place, setAttribute } from './elements.mjs';
import { regionFor, say } from './status.mjs';

/** @param {any} one @param {any} other */
const differs = (one, other) => JSON.stringify(one) !== JSON.stringify(other);

/** @param {HTMLElement} page @param {HTMLElement} fixed */
export function createMirror(page, fixed) {
    /** @type {Map<string, Held>} */
    const all = new Map();
    /** @type {any} the field in which a composition runs, or the slider whose thumb is held */
    let composing = null;
    let busy = false;
    /** @type {{key: string, caret: number} | null} a control to focus as soon as it is there */
    let wish = null;

    /** @param {string} key @returns {any} */
    const container = (key) => (key === '' ? page : key === 'fixed' ? fixed : all.get(key)?.el ?? page);

    /** @param {MirrorNode} node @returns {Held} */
    function begin(node) {
        const region = regionFor(node.a?.role);
        const lent = region !== undefined && !region.dataset.key;
        const el = /** @type {any} */ (lent ? region : make(node.t, container(node.p ?? '')));
        if (!lent) el.id = node.k;
        el.dataset.key = node.k;
        const held = { el, node: { k: node.k, t: node.t, p: node.p }, lent, typed: false };
        all.set(node.k, held);
        return held;
    }

    /** @param {Held} held @param {MirrorNode} node */
    function writeValue({ el, node: before }, node) {
        // An order to write that comes meanwhile stays open. What is being typed is the person's; a list has nothing half done.
        if (composing === el) node.w = before.w;
        else if (node.w !== before.w || !isField(el) || document.activeElement !== el) {
            if (node.v !== undefined && el.value !== node.v) el.value = node.v;
        }
        if (node.on !== undefined) el.checked = node.on;
    }

    /** @param {MirrorNode} node */
    function set(node) {
        const found = all.get(node.k);
        const same = found && (found.lent || found.node.t === node.t);
        const held = same ? found : begin(node);
        const { el, node: before, lent } = held;
        if (found && !same) found.el.replaceWith(el);

        for (const name of Object.keys(before.a ?? {})) if (node.a?.[name] === undefined) el.removeAttribute(name);
        for (const [name, text] of Object.entries(node.a ?? {})) setAttribute(el, name, text);
        if (!lent) {
            const parent = container(node.p ?? '');
            if (!el.parentNode || (node.p !== before.p && el.parentNode !== parent)) parent.append(el);
            if (node.c !== before.c) el.setAttribute('class', node.c ?? '');
            if (differs(node.b, before.b)) place(el, node.b ?? null);
        }
        if (node.x !== undefined && node.x !== before.x) {
            if (regionFor(node.a?.role)) say(el, node.x);
            else el.textContent = node.x;
        }
        if (node.o && differs(node.o, before.o)) offer(el, node.o);
        if (node.m && differs(node.m, before.m)) fill(el, node.m);
        if (holdsValue(el)) writeValue(held, node);
        held.typed = false;
        held.node = node;
    }

    /** @param {string} key */
    function remove(key) {
        const held = all.get(key);
        all.delete(key);
        if (!held?.lent) return held?.el.remove();
        delete held.el.dataset.key;
        say(held.el, '');
    }

    /** @param {string} parentKey @param {string[]} keys */
    function order(parentKey, keys) {
        const parent = container(parentKey);
        const wanted = keys.map((key) => all.get(key)).filter((held) => held && !held.lent).map((held) => held?.el);
        const pivot = wanted.find((el) => el.parentNode === parent && el.contains(document.activeElement));
        let at = parent.firstChild;
        for (const el of wanted) {
            if (el === pivot || el === at) at = el.nextSibling;
            else parent.insertBefore(el, at);
        }
    }

    /** @param {any} part */
    function applyPage({ height, lang, title, theme, dock }) {
        const root = document.documentElement;
        if (height !== undefined) page.style.height = `${height}px`;
        if (lang !== undefined) root.lang = lang;
        if (title !== undefined) document.title = title;
        if (theme !== undefined) root.dataset.theme = theme;
        if (dock !== undefined) root.style.setProperty('--dock', `${dock}px`);
    }

    /** Moves the focus, now or as soon as the control is there. @param {string} key @param {number} caret -1: the end */
    function focus(key, caret) {
        const el = all.get(key)?.el;
        wish = el ? null : { key, caret };
        if (!el) return;
        el.focus();
        const at = caret < 0 ? el.value?.length : caret;
        if (isField(el)) el.setSelectionRange(at, at);
    }

    /** Applies a patch. Returns the key of a control that lost the focus by it, or ''. @param {string} json */
    function apply(json) {
        const patch = JSON.parse(json);
        const active = /** @type {any} */ (document.activeElement);
        const key = keyOf(active);
        const range = active && isField(active) ? [active.selectionStart, active.selectionEnd] : null;
        busy = true;
        if (patch.page) applyPage(patch.page);
        (patch.set ?? []).forEach(set);
        (patch.gone ?? []).forEach(remove);
        for (const [parent, keys] of patch.order ?? []) order(parent, keys);
        // Only an element that came into another parent gets here: that drops the focus, so give it back.
        if (key !== '' && active !== document.activeElement && active.isConnected) {
            active.focus({ preventScroll: true });
            if (range) active.setSelectionRange(range[0], range[1]);
        }
        busy = false;
        const lost = key !== '' && !all.has(key) ? key : '';
        if (wish) focus(wish.key, wish.caret);
        return lost;
    }

    return {
        apply,
        focus,
        /** While true, focus events are the mirror's own doing and not the person's. */
        isBusy: () => busy,
        /** The person changed a value: nothing older may overwrite it. @param {any} el */
        typed(el) {
            const held = all.get(keyOf(el));
            if (held) held.typed = true;
        },
        /** @param {any} el the field in which a composition runs or the slider that is held, or null */
        compose(el) { composing = el; },
        /** The focus has left, or the hand a slider: a value that C++ gave meanwhile is shown now. @param {any} el */
        settle(el) {
            wish = null;
            const held = all.get(keyOf(el));
            const value = held?.node.v;
            if (held && !held.typed && (isField(el) || isSlider(el)) && value !== undefined && el.value !== value) el.value = value;
        },
    };
}
