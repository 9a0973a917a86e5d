// @ts-check
// The offline worker (sw.js). Only for the page of several files, which names a manifest: that of one file needs none.

import { kind } from './bridge.mjs';

const possible = () =>
    location.protocol.startsWith('http') && 'serviceWorker' in navigator && document.querySelector('link[rel=manifest]') !== null;

/** Keeps the page for use without a network, and says when a newer one waits. @param {Send} send */
export async function keepOffline(send) {
    if (!possible()) return;
    try {
        const registration = await navigator.serviceWorker.register('sw.js');
        const tell = () => {
            if (registration.waiting && navigator.serviceWorker.controller) send(kind.update);
        };
        tell();
        registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', tell));
        // Who comes again will want all of it, with or without a network; a first visit loads the less.
        if (navigator.serviceWorker.controller) keepBrought('more.wasm');
    } catch {
        // Refused (a private window, a school's policy): the page works, only not without a network.
    }
}

/** Keeps what was brought later too. Only the worker knows where; it may come later than the file. @param {string} file */
export async function keepBrought(file) {
    if (possible()) (await navigator.serviceWorker.ready).active?.postMessage(file);
}

/** Changes to the version that waits. Only in answer to the person's wish: it loads the page again. */
export async function takeUpdate() {
    const registration = possible() ? await navigator.serviceWorker.getRegistration() : undefined;
    if (!registration?.waiting) return;
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    registration.waiting.postMessage('take over');
}

/** Removes the worker and what it kept. */
export async function forgetOffline() {
    if (!possible()) return;
    const registration = await navigator.serviceWorker.getRegistration();
    await registration?.unregister();
    for (const name of await caches.keys()) if (name.startsWith('overwater-')) await caches.delete(name);
}
