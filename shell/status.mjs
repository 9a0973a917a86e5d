// @ts-check
// Speaking. A live region has to stand in the page before it speaks, so the two of index.html are lent to the mirror's
// status nodes; and many screen readers speak what is added, not what is changed, so each text is a new child.

/**
 * The waiting region for a role, or undefined where the role does not speak or its region is taken.
 * @param {string | undefined} role
 * @returns {HTMLElement | undefined}
 */
export function regionFor(role) {
    const id = role === 'status' ? 'polite' : role === 'alert' ? 'assertive' : '';
    return (id && document.getElementById(id)) || undefined;
}

/**
 * @param {Element} region
 * @param {string} text
 */
export function say(region, text) {
    region.replaceChildren();
    if (text === '') return;
    const spoken = document.createElement('span');
    spoken.textContent = text;
    region.append(spoken);
}
