// Finds elements in a page as Playwright's locators do: by CSS, by role and name, by text, by place. `find` runs in the page.

import { replace } from './typing.mjs';

/** The elements of a description: { css, hasText } or { role, name, exact, pattern }, and `nth`. */
export function find({ css, hasText, role, name, exact, pattern, nth }) {
    const plain = (text) => (text ?? '').replace(/\s+/g, ' ').trim();
    const roles = {
        button: 'button, [role=button], input[type=button], input[type=submit]', textbox: 'input:not([type]), input[type=text], textarea, [role=textbox]',
        table: 'table, [role=table]', slider: 'input[type=range], [role=slider]',
    };
    function named(el) {
        const others = el.getAttribute('aria-labelledby');
        if (others) return plain(others.split(' ').map((id) => document.getElementById(id)?.textContent).join(' '));
        return plain(el.getAttribute('aria-label') ?? (el.labels?.length ? [...el.labels].map((label) => label.textContent).join(' ')
            : el.tagName === 'BUTTON' ? el.textContent : el.title));
    }
    function fits(el) {
        if (el.closest('[aria-hidden=true], [inert], [hidden]') || getComputedStyle(el).visibility === 'hidden') return false;
        if (pattern) return new RegExp(pattern).test(named(el));
        if (name === undefined) return true;
        return exact ? named(el) === plain(name) : named(el).toLowerCase().includes(plain(name).toLowerCase());
    }
    if (role && !roles[role]) throw new Error(`the role ${role} is not looked for here`);
    let all = [...document.querySelectorAll(role ? roles[role] : css)];
    if (role) all = all.filter(fits);
    if (hasText !== undefined) all = all.filter((el) => plain(el.textContent).toLowerCase().includes(plain(hasText).toLowerCase()));
    return nth === undefined ? all : all.slice(nth, nth + 1);
}

const shown = (el) => {
    const box = el.getBoundingClientRect();
    return box.width > 0 && box.height > 0 && getComputedStyle(el).visibility === 'visible';
};

/** Whether there is one such element in the state that is waited for; the point of a click, if asked for. Runs in the page. */
function ready(all, state, show) {
    if (all.length > 1) throw new Error(`${all.length} elements, and one is meant`);
    const [el] = all;
    if (state === 'detached') return !el;
    if (state === 'hidden') return !el || !show(el);
    if (!el) return false;
    if (state === 'attached') return true;
    if (!show(el)) return false;
    if (state === 'visible') return true;
    if (el.disabled) return false;
    if (state === 'enabled') return true;
    el.scrollIntoViewIfNeeded?.();
    const box = el.getBoundingClientRect();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const hit = document.elementFromPoint(x, y);
    return hit && (el.contains(hit) || hit.closest('label')?.control === el) ? [x, y] : false;
}

/** A locator on a tab, which has `run`, `mouse`, `screenshot` and `waitForTimeout`. */
export function locate(tab, what) {
    const of = (body, ...more) => tab.run(`(async () => { const find = ${find}, show = ${shown}; const all = find(${JSON.stringify(what)});
        return (${body})(all, ...${JSON.stringify(more)}); })()`);
    async function until(state, timeout = 30_000) {
        for (const end = Date.now() + timeout; ; await tab.waitForTimeout(40)) {
            const now = await of(`(all, state) => (${ready})(all, state, show)`, state);
            if (now) return now;
            if (Date.now() > end) throw new Error(`${JSON.stringify(what)} is not ${state} after ${timeout} ms`);
        }
    }
    /** Something of the element, once it is there. */
    const once = async (fn, ...more) => {
        await until('attached');
        return of(`([el], ...more) => (${fn})(el, ...more)`, ...more);
    };
    const locator = {
        first: () => locate(tab, { ...what, nth: 0 }),
        nth: (nth) => locate(tab, { ...what, nth }),
        count: () => of('(all) => all.length'),
        allTextContents: () => of('(all) => all.map((el) => el.textContent)'),
        isVisible: () => of('(all) => all.length > 0 && show(all[0])'),
        textContent: () => once((el) => el.textContent),
        inputValue: () => once((el) => el.value),
        isDisabled: () => once((el) => el.disabled === true),
        getAttribute: (name) => once((el, name) => el.getAttribute(name), name),
        evaluate: (fn, arg) => once(fn, arg),
        focus: () => once((el) => el.focus()),
        blur: () => once((el) => el.blur()),
        scrollIntoViewIfNeeded: () => once((el) => el.scrollIntoViewIfNeeded()),
        boundingBox: () => once((el) => {
            const { x, y, width, height } = el.getBoundingClientRect();
            return width === 0 && height === 0 ? null : { x, y, width, height };
        }),
        waitFor: async ({ state = 'visible', timeout } = {}) => void await until(state, timeout),
        async click() {
            await tab.mouse.click(...await until('hit'));
        },
        async fill(text) {
            await until('enabled');
            await once(replace, text);
        },
        async selectOption(value) {
            await until('enabled');
            await once((el, value) => {
                if (![...el.options].some((one) => one.value === value)) throw new Error(`no option ${value}`);
                el.focus();
                el.value = value;
                for (const name of ['input', 'change']) el.dispatchEvent(new Event(name, { bubbles: true }));
            }, value);
        },
        async screenshot() {
            await locator.scrollIntoViewIfNeeded();
            return tab.screenshot({ clip: await locator.boundingBox() });
        },
    };
    return locator;
}
