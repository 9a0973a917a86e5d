// @ts-check
// A WebAssembly module sorted by kind of byte: opcodes with opcodes, numbers of locals with numbers of locals, and so on. Brotli
// and gzip find more in streams of one kind: 26 kB less to load. Putting the module together again is one pass over it.
//
// The sorted form: the length of the module and of each stream (LEB128), then the streams. Stream `before` holds the
// module up to the code section, `after` all behind it. Sizes inside the code section are not kept: they follow.

/** The streams, in the order in which they pack best. */
export const stream = Object.freeze({
    i64: 0, f64: 1, calledConstant: 2, op: 3, branch: 4, table: 5, call: 6, otherConstant: 7, f32: 8,
    storedConstant: 9, addedConstant: 10, offset: 11, locals: 12, align: 13, block: 14, pointer: 15, before: 16,
    after: 17, local: 18,
});
export const streamCount = 19;

/** Where an i32 constant goes, by the opcode behind it. @param {number} next */
function constantStream(next) {
    if (next === 0x10) return stream.calledConstant;
    if (next === 0x6a) return stream.addedConstant;
    return (next >= 0x36 && next <= 0x3e) || next === 0x20 || next === 0x41 ? stream.storedConstant : stream.otherConstant;
}

/** A local that is read to load from what it points at, or any other. @param {number} op @param {number} next */
function localStream(op, next) {
    return op === 0x20 && next >= 0x28 && next <= 0x35 ? stream.pointer : stream.local;
}

/**
 * Goes over the body of one function. `take` moves what is next of a stream, `bytes` of it or one LEB128 number, and returns its
 * (first) value; `next` tells the opcode behind a number that is about to be taken.
 * @param {(from: number, bytes?: number) => number} take
 * @param {() => number} next
 */
export function walkBody(take, next) {
    for (let groups = take(stream.locals); groups > 0; --groups) {
        take(stream.locals);
        take(stream.locals, 1);
    }
    for (let depth = 1; depth > 0;) {
        const op = take(stream.op, 1);
        if (op >= 0x20 && op <= 0x22) {
            take(localStream(op, next()));
        } else if (op >= 0x28 && op <= 0x3e) {
            take(stream.align);
            take(stream.offset);
        } else if (op === 0x41) {
            take(constantStream(next()));
        } else if (op === 0x0b) {
            --depth;
        } else if (op >= 0x02 && op <= 0x04) {
            ++depth;
            take(stream.block);
        } else if (op === 0x0c || op === 0x0d) {
            take(stream.branch);
        } else if (op === 0x0e) {
            for (let labels = take(stream.table); labels >= 0; --labels) take(stream.table);
        } else if (op === 0x10) {
            take(stream.call);
        } else if (op === 0x11) {
            take(stream.op);
            take(stream.op);
        } else if (op === 0x23 || op === 0x24 || op === 0x3f || op === 0x40) {
            take(stream.op);
        } else if (op === 0x42) {
            take(stream.i64);
        } else if (op === 0x43) {
            take(stream.f32, 4);
        } else if (op === 0x44) {
            take(stream.f64, 8);
        } else if (op === 0xfc) {
            for (let more = [2, 1, 2, 1][take(stream.op) - 8] ?? 0; more > 0; --more) take(stream.op);
        } else if (op === 0xfd) {
            // Vectors: loads and stores, of one lane too; constants and shuffles; one lane of a vector.
            const kind = take(stream.op);
            const lane = kind >= 84 && kind <= 91;
            if (kind <= 11 || lane || kind === 92 || kind === 93) {
                take(stream.align);
                take(stream.offset);
            }
            if (kind === 12 || kind === 13) take(stream.f64, 16);
            if (lane || (kind >= 21 && kind <= 34)) take(stream.op, 1);
        }
    }
}

/** Writes a number as LEB128 and returns the place behind it. @param {Uint8Array} to @param {number} at @param {number} value */
function writeNumber(to, at, value) {
    for (; value > 127; value >>>= 7) to[at++] = (value & 127) | 128;
    to[at++] = value;
    return at;
}

/** The module that `sorted` was made of. Throws where that is cut short. @param {Uint8Array} sorted */
export function moduleOf(sorted) {
    let at = 0;
    const places = new Uint32Array(streamCount);
    const number = () => {
        let value = 0;
        for (let shift = 0; ; shift += 7) {
            value |= (sorted[at] & 127) << shift;
            if (!(sorted[at++] > 127)) return value;
        }
    };
    const size = number();
    // While sizes are not known yet, five bytes are kept for each of two.
    const module = new Uint8Array(size + 10);
    const lengths = Array.from(places, number);
    lengths.forEach((length, which) => {
        places[which] = at;
        at += length;
    });
    if (at !== sorted.length) throw new Error('the program is incomplete');

    let end = lengths[stream.before];
    module.set(sorted.subarray(places[stream.before], places[stream.before] + end));
    // Room for a size is kept in front of what it is the size of, and what is too much of it closed afterwards.
    const sized = (/** @type {() => void} */ content) => {
        const start = end + 5;
        end = start;
        content();
        const length = end - start;
        const from = writeNumber(module, start - 5, length);
        module.copyWithin(from, start, end);
        end = from + length;
    };
    const take = (/** @type {number} */ from, bytes = 0) => {
        let place = places[from];
        let value = sorted[place];
        if (bytes > 0) {
            for (; bytes > 0; --bytes) module[end++] = sorted[place++];
        } else {
            value = 0;
            for (let shift = 0; ; shift += 7) {
                const byte = sorted[place++];
                module[end++] = byte;
                value |= (byte & 127) << shift;
                if (!(byte > 127)) break;
            }
        }
        places[from] = place;
        return value;
    };
    const next = () => sorted[places[stream.op]];
    sized(() => {
        for (let functions = take(stream.locals); functions > 0; --functions) sized(() => walkBody(take, next));
    });
    module.set(sorted.subarray(places[stream.after], places[stream.after] + lengths[stream.after]), end);
    return module.subarray(0, size);
}
