// @ts-check
// Local storage. Some browsers throw on the mere access, so every access is guarded. Other pages may share this storage
// (all local files do in Chromium): only keys that C++ names are touched, and nothing is ever cleared.

import { kind } from './bridge.mjs';

const stored = Object.freeze({ ok: 0, full: 1, denied: 2 });

/** @template T @param {(store: Storage) => T} work @param {T} otherwise */
function guarded(work, otherwise) {
    try {
        return work(globalThis.localStorage);
    } catch {
        return otherwise;
    }
}

/** @param {string} key @returns {string | null} */
export const storeGet = (key) => guarded((store) => store.getItem(key), null);

/** @param {string} key @param {string} text */
export function storePut(key, text) {
    try {
        globalThis.localStorage.setItem(key, text);
        return stored.ok;
    } catch (reason) {
        // A refusal for lack of room has this name; a refusal altogether is a SecurityError or a missing object.
        return reason instanceof DOMException && /quota/i.test(reason.name) ? stored.full : stored.denied;
    }
}

/** @param {string} key */
export const storeRemove = (key) => guarded((store) => store.removeItem(key), undefined);

/** @param {string} prefix @returns {string[]} */
export const storeList = (prefix) =>
    guarded((store) => Array.from({ length: store.length }, (_, i) => store.key(i) ?? '').filter((key) => key.startsWith(prefix)), []);

/** Tells C++ what another tab wrote. @param {Send} send */
export function listenToStorage(send) {
    window.addEventListener('storage', (event) => {
        if (event.key !== null) send(kind.storage, event.key, event.newValue ?? '');
    });
}
