// @ts-check
// Brings the WebAssembly modules, sorted by kind of byte (wasm_streams.mjs), and puts them together again: the first for
// Emscripten, the second (tools/second_part.mjs) when it is asked for. Their names end in .wasm so that hosts compress them as
// they do modules.

import { brought } from './brought.mjs';
import { keepBrought } from './offline.mjs';
import { moduleOf } from './wasm_streams.mjs';

/** @type {WebAssembly.Exports} */
let first;

/** In the place of what the second part brings. C++ never calls it: web/app/second_part.hpp. */
const absent = new Proxy({}, { get: () => () => { throw new Error('not there yet'); } });

/**
 * @param {string} id
 * @param {string} file
 * @param {WebAssembly.Imports} imports
 * @param {string} [integrity]
 */
async function instanceOf(id, file, imports, integrity) {
    const sorted = await (await brought(id, file, integrity)).arrayBuffer();
    return (await WebAssembly.instantiate(moduleOf(new Uint8Array(sorted)), imports)).instance;
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
                instanceOf('program', 'sorted.wasm', { ...imports, absent }).then((instance) => {
                    first = instance.exports;
                    receive(instance);
                }).catch(failed);
                return {};
            },
        }).then(ready, failed);
    });
}

/**
 * Puts the second part beside the first, which calls it from then on. It takes the memory of the first and finds its functions in
 * the table, so no other than the one that was made with it may come: a newer one beside an open page is refused.
 */
export async function joinSecondPart() {
    const file = 'more.wasm';
    const table = /** @type {any} */ (Object.values(first).find((one) => one instanceof WebAssembly.Table));
    const shared = /** @type {any} */ (new Proxy({}, { get: (_, slot) => table.get(slot) }));
    await instanceOf('more', file, { first, shared }, secondPart);
    keepBrought(file);
}
