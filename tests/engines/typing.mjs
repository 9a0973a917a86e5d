// Text that comes in at once, as from a paste or an input method: by the browser's own command, so that the page gets the browser's own
// events. Both run in the page.

/** At the caret of the element that has the focus. */
export const insert = (text) => document.execCommand(text === '' ? 'delete' : 'insertText', false, text);

/** Instead of all that is in a field. */
export function replace(field, text) {
    field.focus();
    field.select();
    document.execCommand(text === '' ? 'delete' : 'insertText', false, text);
}
