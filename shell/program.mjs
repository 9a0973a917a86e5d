// @ts-check
// Brings the WebAssembly module, sorted by kind of byte (wasm_streams.mjs), puts it together and gives it to Emscripten. In the
// page of one file it lies in the page itself, gzipped and in base64; beside the served page it is a file, whose name ends
// in .wasm so that hosts compress it as they do modules.

import { moduleOf } from './wasm_streams.mjs';

async function sorted() {
    const holder = document.getElementById('program');
    if (holder === null) {
        const response = await fetch('sorted.wasm');
        if (!response.ok) throw new Error(`sorted.wasm: ${response.status}`);
        return response.arrayBuffer();
    }
    const text = atob(holder.textContent ?? '');
    holder.remove();
    const bytes = Uint8Array.from(text, (character) => character.charCodeAt(0));
    return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).arrayBuffer();
}

/**
 * Emscripten's module, running.
 * @param {object} host what C++ calls
 * @returns {Promise<any>}
 */
export function startProgram(host) {
    return new Promise((ready, failed) => {
        createOverwater({
            overwater: host,
            /**
             * @param {WebAssembly.Imports} imports
             * @param {(instance: WebAssembly.Instance) => void} receive
             */
            instantiateWasm(imports, receive) {
                sorted()
                    .then((bytes) => WebAssembly.instantiate(moduleOf(new Uint8Array(bytes)), imports))
                    .then(({ instance }) => receive(instance))
                    .catch(failed);
                return {};
            },
        }).then(ready, failed);
    });
}
