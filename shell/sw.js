// @ts-check
// Offline worker: everything the page needs is kept in one cache named by its content, and answered from there first.
// A new version is fetched beside the old one and waits until the person reloads for it.

const worker = /** @type {any} */ (globalThis);
const cacheName = 'overwater-__CACHE__';
/** @type {string[]} */
const files = JSON.parse('__FILES__');

// Texts of languages and the program's second part.
const broughtLater = /\/text\/|\/more\.wasm$/;

// Past the browser's own cache: an old copy of a file must not enter a cache named for the new one.
const fresh = (/** @type {string} */ file) => new Request(file, { cache: 'reload' });

/** The page's files, and what the version before had brought later. */
async function fill() {
    const cache = await caches.open(cacheName);
    await cache.addAll(files.map(fresh));
    for (const name of await caches.keys()) {
        if (!name.startsWith('overwater-') || name === cacheName) continue;
        for (const { url } of await (await caches.open(name)).keys()) {
            if (broughtLater.test(url)) await cache.add(fresh(url)).catch(() => {});
        }
    }
}
worker.addEventListener('install', (/** @type {any} */ event) => event.waitUntil(fill()));

async function dropOlder() {
    for (const name of await caches.keys()) {
        if (name.startsWith('overwater-') && name !== cacheName) await caches.delete(name);
    }
    await worker.clients.claim();
}
worker.addEventListener('activate', (/** @type {any} */ event) => event.waitUntil(dropOlder()));

worker.addEventListener('message', (/** @type {any} */ event) => {
    if (event.data === 'take over') return worker.skipWaiting();
    // What was brought later.
    event.waitUntil(caches.open(cacheName).then(async (cache) => (await cache.match(event.data)) ?? cache.add(fresh(event.data))));
});

/** @param {Request} request */
async function answer(request) {
    const address = new URL(request.url);
    address.search = address.hash = '';
    if (address.href === worker.registration.scope) address.pathname += 'index.html';
    const cache = await caches.open(cacheName);
    return (await cache.match(address.href)) ?? fetch(request);
}
worker.addEventListener('fetch', (/** @type {any} */ event) => {
    const own = new URL(event.request.url).origin === worker.location.origin;
    if (own && event.request.method === 'GET') event.respondWith(answer(event.request));
});
