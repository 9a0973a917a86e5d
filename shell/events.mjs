// @ts-check
// Listens on the document, once for each kind of event, and hands everything over to C++.

import { kind } from './bridge.mjs';
import { isField, isSlider, keyOf } from './elements.mjs';
import { openFile } from './files.mjs';

/** Name of a key with its modifiers: "Escape", "Shift+Tab", "Mod+z" (Mod: Ctrl or Cmd). @param {KeyboardEvent} event */
function keyName(event) {
    const letter = event.key.length === 1;
    // AltGr is Ctrl+Alt on some systems, and types a character.
    const mod = (event.ctrlKey || event.metaKey) && !event.getModifierState('AltGraph');
    const name = event.key === ' ' ? 'Space' : mod && letter ? event.key.toLowerCase() : event.key;
    return `${mod ? 'Mod+' : ''}${event.altKey && !letter ? 'Alt+' : ''}${event.shiftKey && (mod || !letter) ? 'Shift+' : ''}${name}`;
}

const history = new Map([['Mod+z', kind.undo], ['Mod+Shift+z', kind.redo], ['Mod+y', kind.redo],
    ['historyUndo', kind.undo], ['historyRedo', kind.redo]]);

/**
 * @param {Send} send
 * @param {ReturnType<typeof import('./mirror.mjs').createMirror>} mirror
 */
export function listen(send, mirror) {
    /** @param {string} name @param {(event: any) => void} answer @param {object} [options] */
    const on = (name, answer, options) => document.addEventListener(name, answer, options);
    /** @param {Event} event @param {boolean} used */
    const stopIf = (event, used) => used && event.preventDefault();

    /** @type {any} the slider whose thumb is held */
    let slider = null;
    function letGo() {
        if (slider) mirror.compose(null), mirror.settle(slider), slider = null;
    }

    on('click', (event) => {
        const el = event.target.closest?.('button, a, summary');
        const key = keyOf(el);
        if (key === '') return;
        if (el.classList.contains('opens-file')) openFile(send, el.dataset.accept ?? '');
        stopIf(event, send(kind.click, key));
    });
    on('input', ({ target }) => {
        if (!(isField(target) || isSlider(target)) || keyOf(target) === '') return;
        mirror.typed(target);
        send(kind.input, keyOf(target), target.value, target.selectionStart ?? 0);
    });
    on('change', ({ target }) => {
        if (isField(target) || keyOf(target) === '') return;
        const text = target.type === 'checkbox' ? String(target.checked) : target.value;
        send(kind.change, keyOf(target), text);
        letGo();
    });

    on('focusin', ({ target }) => {
        if (!mirror.isBusy() && keyOf(target) !== '') send(kind.focus, keyOf(target));
    });
    on('focusout', ({ target }) => {
        if (mirror.isBusy() || keyOf(target) === '') return;
        mirror.settle(target);
        send(kind.blur, keyOf(target));
    });

    on('keydown', (event) => {
        if (isSlider(event.target) && /^(Arrow|Page|Home|End)/.test(event.key)) return; // these move it
        if (event.isComposing || event.keyCode === 229 || /^(Control|Shift|Alt|AltGraph|Meta)$/.test(event.key)) return;
        const name = keyName(event);
        const step = history.get(name);
        if (step) {
            event.preventDefault();
            send(step, keyOf(event.target));
        } else if (event.key.length > 1 || name.startsWith('Mod+') || !isField(event.target)) {
            // What is typed into a field comes as `input`.
            stopIf(event, send(kind.key, keyOf(event.target), name));
        }
    });
    on('beforeinput', (event) => {
        const step = history.get(event.inputType);
        if (!step) return;
        event.preventDefault();
        send(step, keyOf(event.target));
    });
    on('compositionstart', ({ target }) => {
        mirror.compose(target);
        send(kind.compositionStart, keyOf(target));
    });
    on('compositionend', ({ target }) => {
        mirror.compose(null);
        send(kind.compositionEnd, keyOf(target), target.value ?? '', target.selectionStart ?? 0);
    });

    // The pointer's position serves hovering; its button counts only over a picture, never over a control.
    let pressed = false;
    /** @param {PointerEvent} event */
    const move = (event) => send(kind.pointerMove, '', '', event.clientX, event.clientY);
    /** @param {PointerEvent} event */
    const release = (event) => {
        setTimeout(letGo); // its `change` comes after this event
        if (pressed) send(kind.pointerUp, '', '', event.clientX, event.clientY);
        pressed = false;
        if (event.pointerType !== 'mouse') send(kind.pointerLeave);
    };
    on('pointermove', move, { passive: true });
    on('pointerdown', (event) => {
        if (isSlider(event.target)) mirror.compose(slider = event.target);
        const picture = event.target.closest?.('.picture');
        if (!picture || event.button !== 0) return;
        move(event);
        pressed = true;
        picture.setPointerCapture(event.pointerId);
        stopIf(event, send(kind.pointerDown, keyOf(picture), '', event.clientX, event.clientY));
    });
    on('pointerup', release);
    on('pointercancel', release);
    document.documentElement.addEventListener('pointerleave', () => send(kind.pointerLeave));

    // The document's own scrolling alone moves the painting; a text field that scrolls inside itself does not.
    on('scroll', ({ target }) => {
        if (target === document) send(kind.scroll, '', '', window.scrollY, window.scrollX);
    }, { capture: true, passive: true });
    window.addEventListener('hashchange', () => send(kind.fragment, '', location.hash.slice(1)));
}
