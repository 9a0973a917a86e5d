// @ts-check
// In the page of one file the WebAssembly module lies in the page itself, gzipped and in base64. This runs before
// main.mjs and hands it to Emscripten, so main.mjs starts both pages in the same way.

/** The bytes of the module, unpacked. */
async function unpacked() {
    const holder = /** @type {HTMLElement} */ (document.getElementById('wasm'));
    const text = atob(holder.textContent ?? '');
    holder.remove();
    const bytes = Uint8Array.from(text, (character) => character.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
    return new Response(stream).arrayBuffer();
}

const page = /** @type {any} */ (globalThis);
const create = page.createOverwater;

/** @param {object} settings */
page.createOverwater = (settings) =>
    new Promise((ready, failed) => {
        create({
            ...settings,
            /**
             * @param {WebAssembly.Imports} imports
             * @param {(instance: WebAssembly.Instance) => void} receive
             */
            instantiateWasm(imports, receive) {
                unpacked()
                    .then((bytes) => WebAssembly.instantiate(bytes, imports))
                    .then(({ instance }) => receive(instance))
                    .catch(failed);
                return {};
            },
        }).then(ready, failed);
    });
