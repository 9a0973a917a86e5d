// @ts-check
// Making and filling elements for the mirror.

const namespaces = { svg: 'http://www.w3.org/2000/svg', math: 'http://www.w3.org/1998/Math/MathML' };

/** An element in the namespace that its name or its parent asks for. @param {string} name @param {Element} parent */
export function make(name, parent) {
    const inherited = parent.localName === 'foreignObject' ? null : parent.namespaceURI;
    const space = namespaces[/** @type {'svg' | 'math'} */ (name)] ?? inherited;
    return space === null ? document.createElement(name) : document.createElementNS(space, name);
}

/** @param {Element} el @param {string} name @param {string} text */
export function setAttribute(el, name, text) {
    // A handler or a style in an attribute is refused by the page's policy, and never meant.
    if (!/^(on|style$|id$|data-key$)/i.test(name) && el.getAttribute(name) !== text) el.setAttribute(name, text);
}

/** @param {Tree | string} tree @param {Element} parent @returns {Node} */
function build(tree, parent) {
    if (typeof tree === 'string') return document.createTextNode(tree);
    const [name, attributes, ...children] = tree;
    const el = make(name, parent);
    for (const [attribute, text] of Object.entries(attributes ?? {})) setAttribute(el, attribute, text);
    el.append(...children.map((child) => build(child, el)));
    return el;
}

/** @param {Element} el @param {any[]} content one tree, or a list of trees and texts */
export function fill(el, content) {
    const single = typeof content[0] === 'string' && typeof content[1] === 'object' && !Array.isArray(content[1]);
    const trees = single ? [/** @type {Tree} */ (content)] : content;
    el.replaceChildren(...trees.map((tree) => build(tree, el)));
}

/** @param {HTMLSelectElement} el @param {[string, string][]} options value and text of each */
export function offer(el, options) {
    const chosen = el.value;
    el.replaceChildren(...options.map(([value, text]) => new Option(text, value)));
    el.value = chosen;
}

/** @param {any} el @param {number[] | null} box x, y, width, height in CSS pixels from the parent's corner */
export function place(el, box) {
    el.toggleAttribute('data-boxed', box !== null);
    ['left', 'top', 'width', 'height'].forEach((side, i) => { el.style[side] = box ? `${box[i]}px` : ''; });
}

/** @param {any} el */
export const holdsValue = (el) => /^(input|select|textarea)$/.test(el.localName);
/** @param {any} el */
export const isTicked = (el) => el.type === 'radio' || el.type === 'checkbox';
/** @param {any} el */
export const isSlider = (el) => el.type === 'range';
/** Typed into, rather than chosen from. @param {any} el */
export const isField = (el) => holdsValue(el) && !isTicked(el) && !isSlider(el) && el.localName !== 'select';
/** Key of the mirrored element that `el` is or lies in, or ''. @param {any} el @returns {string} */
export const keyOf = (el) => el?.closest?.('[data-key]')?.dataset.key ?? '';
