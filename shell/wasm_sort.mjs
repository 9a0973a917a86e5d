// @ts-check
// Sorts a WebAssembly module by kind of byte, for shell/pack.mjs. shell/wasm_streams.mjs says why and puts it together again.

import { moduleOf, stream, streamCount, walkBody } from './wasm_streams.mjs';

const codeSection = 10;

/** @param {number} value */
function lebBytes(value) {
    const bytes = [];
    for (; value > 127; value >>>= 7) bytes.push((value & 127) | 128);
    return [...bytes, value];
}

/**
 * The sorted form of `module`. Throws where the module uses an instruction that the walk does not know, or sizes longer than need
 * be: what comes back has to be the very same bytes.
 * @param {Uint8Array} module
 */
export function sortedModule(module) {
    /** @type {number[][]} */
    const streams = Array.from({ length: streamCount }, () => []);
    let at = 8;
    const number = () => {
        let value = 0;
        for (let shift = 0; ; shift += 7) {
            value |= (module[at] & 127) << shift;
            if (module[at++] < 128) return value >>> 0;
        }
    };
    const behindNumber = () => {
        let place = at;
        while (module[place] > 127) ++place;
        return place + 1;
    };
    const take = (/** @type {number} */ into, bytes = 0) => {
        const end = bytes > 0 ? at + bytes : behindNumber();
        for (let place = at; place < end; ++place) streams[into].push(module[place]);
        const value = bytes > 0 ? module[at] : number();
        at = end;
        return value;
    };
    let end = at;
    for (let id = 0; id !== codeSection; at = end) {
        id = module[at++];
        if (id === codeSection) break;
        const size = number();
        end = at + size;
    }
    streams[stream.before] = [...module.subarray(0, at)];
    number();
    for (let functions = take(stream.locals); functions > 0; --functions) {
        number();
        walkBody(take, () => module[behindNumber()]);
    }
    streams[stream.after] = [...module.subarray(at)];

    const sorted = Uint8Array.from([...lebBytes(module.length), ...streams.flatMap((one) => lebBytes(one.length)), ...streams.flat()]);
    const back = moduleOf(sorted);
    if (back.length !== module.length || !back.every((byte, place) => byte === module[place])) throw new Error('the module is not the same after sorting its bytes');
    return sorted;
}
