// Finds what goes into the second part of the page's program (web/panels/second_part.hpp): every function that is reached
// through functions of the namespace overwater::second_part alone, by calls or through the table.
//
//   node tools/second_part.mjs IN.wasm OUT.wasm LIST
//
// IN has the names of its functions. OUT is the same without them, and LIST has a line for each function of the second part,
// its number among the module's own: by that, wasm-split knows a function without a name.
import { readFileSync, writeFileSync } from 'node:fs';
import { stream, walkBody } from '../shell/wasm_streams.mjs';

const entry = 'overwater::second_part::';
const section = Object.freeze({ custom: 0, imports: 2, functions: 3, exports: 7, start: 8, elements: 9, code: 10 });
const externalKind = Object.freeze({ functions: 0, table: 1, memory: 2, global: 3 });

const fail = (sentence) => {
    console.error(`second_part: ${sentence}`);
    process.exit(1);
};

/** Reads numbers, bytes and names of a module one after the other. */
class Reader {
    constructor(bytes, at = 0) {
        this.bytes = bytes;
        this.at = at;
    }
    number() {
        let value = 0;
        for (let shift = 0; ; shift += 7) {
            const byte = this.bytes[this.at++];
            value |= (byte & 127) << shift;
            if (byte < 128) return value >>> 0;
        }
    }
    /** The opcode behind the number that comes next. */
    behindNumber() {
        let place = this.at;
        while (this.bytes[place] > 127) ++place;
        return this.bytes[place + 1];
    }
    text() {
        const length = this.number();
        this.at += length;
        return this.bytes.subarray(this.at - length, this.at).toString();
    }
    limits() {
        const flags = this.number();
        this.number();
        if (flags & 1) this.number();
    }
    /** A constant expression of one i32.const. */
    offset() {
        if (this.bytes[this.at++] !== 0x41) fail('a segment of the table does not begin at a constant');
        const value = this.number();
        ++this.at;
        return value;
    }
}

const sections = (bytes) => {
    const found = [];
    for (const reader = new Reader(bytes, 8); reader.at < bytes.length;) {
        const begin = reader.at;
        const id = bytes[reader.at++];
        const size = reader.number();
        found.push({ id, begin, content: reader.at, end: (reader.at += size) });
    }
    return found;
};

/** What a function calls, by walking over its body. */
function callsOf(reader) {
    const calls = new Set();
    walkBody((from, bytes = 0) => {
        if (bytes > 0) {
            reader.at += bytes;
            return reader.bytes[reader.at - bytes];
        }
        const value = reader.number();
        if (from === stream.call) calls.add(value);
        return value;
    }, () => reader.behindNumber());
    return calls;
}

/** The functions of a module: names, bodies' calls, and which are reached from outside or through the table. Imported ones come first. */
function functionsOf(bytes) {
    const found = { imported: 0, calls: [], sizes: [], names: [], roots: [] };
    for (const { id, content, end } of sections(bytes)) {
        const reader = new Reader(bytes, content);
        if (id === section.imports) {
            for (let left = reader.number(); left > 0; --left) {
                reader.text();
                reader.text();
                const kind = reader.number();
                if (kind === externalKind.functions) ++found.imported;
                else if (kind !== externalKind.memory) reader.number();
                if (kind === externalKind.global) reader.number();
                else if (kind !== externalKind.functions) reader.limits();
                else reader.number();
            }
        } else if (id === section.exports) {
            for (let left = reader.number(); left > 0; --left) {
                reader.text();
                const kind = reader.number();
                const which = reader.number();
                if (kind === externalKind.functions) found.roots.push(which);
            }
        } else if (id === section.start) {
            found.roots.push(reader.number());
        } else if (id === section.elements) {
            for (let left = reader.number(); left > 0; --left) {
                if (reader.number() !== 0) fail('a segment of the table is of a kind that is not known here');
                reader.offset();
                for (let more = reader.number(); more > 0; --more) found.roots.push(reader.number());
            }
        } else if (id === section.code) {
            for (let left = reader.number(); left > 0; --left) {
                const size = reader.number();
                const begin = reader.at;
                found.calls.push(callsOf(reader));
                found.sizes.push(size);
                if (reader.at !== begin + size) fail('a function does not end where it should');
            }
        } else if (id === section.custom && reader.text() === 'name') {
            while (reader.at < end) {
                const kind = reader.number();
                const size = reader.number();
                if (kind !== 1) {
                    reader.at += size;
                    continue;
                }
                for (let left = reader.number(); left > 0; --left) {
                    const which = reader.number();
                    found.names[which] = reader.text();
                }
            }
        }
    }
    return found;
}

const [from, to, list] = process.argv.slice(2);
const bytes = readFileSync(from);
const { imported, calls, sizes, names, roots } = functionsOf(bytes);
const isEntry = (which) => names[which]?.startsWith(entry);
if (!names.some((_, which) => isEntry(which))) fail(`no function of ${from} has a name that begins with ${entry}`);

const first = new Set();
for (const waiting = roots.filter((which) => !isEntry(which)); waiting.length > 0;) {
    const which = waiting.pop();
    if (first.has(which)) continue;
    first.add(which);
    for (const called of calls[which - imported] ?? []) if (!isEntry(called)) waiting.push(called);
}
const second = sizes.map((_, place) => place).filter((place) => !first.has(place + imported));

const kept = sections(bytes).filter(({ id, content }) => id !== section.custom || new Reader(bytes, content).text() !== 'name');
writeFileSync(to, Buffer.concat([bytes.subarray(0, 8), ...kept.map(({ begin, end }) => bytes.subarray(begin, end))]));
writeFileSync(list, second.map((place) => `${place}\n`).join(''));
const weight = (places) => places.reduce((sum, place) => sum + sizes[place], 0);
console.log(`second part: ${second.length} of ${sizes.length} functions, ${weight(second)} of ${weight(sizes.map((_, place) => place))} bytes of code`);
