// @ts-check
// Brings the WebAssembly module, sorted by kind of byte (wasm_streams.mjs), puts it together and gives it to Emscripten. Its
// name ends in .wasm so that hosts compress it as they do modules.

import { brought } from './brought.mjs';
import { moduleOf } from './wasm_streams.mjs';

const sorted = async () => (await brought('program', 'sorted.wasm')).arrayBuffer();

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
