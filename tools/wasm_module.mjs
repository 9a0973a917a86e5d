// Reads and writes the sections of a WebAssembly module, as far as tools/second_part.mjs needs it.
import { stream, walkBody } from '../shell/wasm_streams.mjs';

export const section = Object.freeze({
    custom: 0, imports: 2, table: 4, exports: 7, start: 8, elements: 9, code: 10, data: 11, dataCount: 12,
});
/** What is imported or exported. */
export const kind = Object.freeze({ function: 0, table: 1, memory: 2, global: 3 });

/** Parts of the section of names. */
export const named = Object.freeze({ function: 1, segment: 9 });

/** Thrown where a module has what is not known here. */
export class Unknown extends Error {}

/** Numbers, bytes and names one after the other. */
export class Reader {
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
    take(length) {
        this.at += length;
        return this.bytes.subarray(this.at - length, this.at);
    }
    text() {
        return this.take(this.number()).toString();
    }
    /** What `read` returns, as many times as the next number says. */
    list(read) {
        return Array.from({ length: this.number() }, () => read(this));
    }
    limits() {
        const flags = this.number();
        return { flags, least: this.number(), most: flags & 1 ? this.number() : undefined };
    }
    /** Where an active segment begins: one i32.const. */
    place() {
        if (this.number() !== 0 || this.number() !== 0x41) throw new Unknown('a segment that does not begin at a constant');
        const value = this.number();
        if (this.number() !== 0x0b) throw new Unknown('a segment that does not begin at a constant');
        return value;
    }
}

/** A number as LEB128; `signed` as constants have it. */
export function leb(value, signed = false) {
    const bytes = [];
    for (; value > (signed ? 63 : 127); value >>>= 7) bytes.push((value & 127) | 128);
    return Buffer.from([...bytes, value]);
}
export const text = (words) => Buffer.concat([leb(Buffer.byteLength(words)), Buffer.from(words)]);
export const list = (items) => Buffer.concat([leb(items.length), ...items]);
export const limits = ({ flags, least, most }) => Buffer.concat([leb(flags), leb(least), ...(flags & 1 ? [leb(most)] : [])]);
const placed = (place) => Buffer.concat([leb(0), leb(0x41), leb(place, true), leb(0x0b)]);

/** The sections of a module in their order: their number and what is in them. */
export function sectionsOf(bytes) {
    const found = [];
    for (const reader = new Reader(bytes, 8); reader.at < bytes.length;) {
        const id = reader.number();
        found.push({ id, content: reader.take(reader.number()) });
    }
    return found;
}
export const moduleOf = (sections) => Buffer.concat([
    Buffer.from([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]),
    ...sections.flatMap(({ id, content }) => [leb(id), leb(content.length), content]),
]);

const found = (sections, id, read, none) => {
    const one = sections.find((section) => section.id === id);
    return one ? read(new Reader(one.content)) : none;
};

/** Each with `module`, `name`, `kind` and, for a table, its limits; `type`: the bytes behind its name. */
export const importsOf = (sections) => found(sections, section.imports, (reader) => reader.list(() => {
    const one = { module: reader.text(), name: reader.text() };
    const begin = reader.at;
    one.kind = reader.number();
    if (one.kind === kind.function) reader.number();
    else if (one.kind === kind.global) reader.take(2);
    else if (one.kind === kind.memory) reader.limits();
    else {
        reader.take(1);
        one.limits = reader.limits();
    }
    one.type = reader.bytes.subarray(begin, reader.at);
    return one;
}), []);
export const importBytes = (all) => list(all.map((one) => Buffer.concat([text(one.module), text(one.name), one.type])));

export const exportsOf = (sections) => found(sections, section.exports, (reader) =>
    reader.list(() => ({ name: reader.text(), kind: reader.number(), which: reader.number() })), []);
export const exportBytes = (all) => list(all.map((one) => Buffer.concat([text(one.name), leb(one.kind), leb(one.which)])));

/** What begins where in the table: `place` and `functions`. */
export const elementsOf = (sections) => found(sections, section.elements, (reader) =>
    reader.list(() => ({ place: reader.place(), functions: reader.list(() => reader.number()) })), []);
export const elementBytes = (all) => list(all.map((one) => Buffer.concat([placed(one.place), list(one.functions.map((which) => leb(which)))])));

/** What lies where in memory: `place` and `bytes`. */
export const dataOf = (sections) => found(sections, section.data, (reader) =>
    reader.list(() => ({ place: reader.place(), bytes: reader.take(reader.number()) })), []);
export const dataBytes = (all) => list(all.map((one) => Buffer.concat([placed(one.place), leb(one.bytes.length), one.bytes])));

/** The function that runs at the start, if there is one. */
export const startOf = (sections) => found(sections, section.start, (reader) => [reader.number()], []);

/** Of each function of the module's own: `size` of its body in bytes, `calls`, and `numbers`, which may be addresses. */
export const bodiesOf = (sections) => found(sections, section.code, (reader) => reader.list(() => {
    const size = reader.number();
    const end = reader.at + size;
    const one = { size, calls: new Set(), numbers: new Set() };
    walkBody((from, bytes = 0) => {
        if (bytes > 0) return reader.take(bytes)[0];
        const value = reader.number();
        if (from === stream.call) one.calls.add(value);
        else one.numbers.add(value);
        return value;
    }, () => {
        let place = reader.at;
        while (reader.bytes[place] > 127) ++place;
        return reader.bytes[place + 1];
    });
    if (reader.at !== end) throw new Unknown('a function that does not end where it should');
    return one;
}), []);

/** Names by number: of functions, or of segments of memory. */
export function namesOf(sections, wanted) {
    const names = [];
    for (const { id, content } of sections) {
        const reader = new Reader(content);
        if (id !== section.custom || reader.text() !== 'name') continue;
        while (reader.at < content.length) {
            const part = reader.number();
            const inside = new Reader(reader.take(reader.number()));
            if (part === wanted) inside.list(() => (names[inside.number()] = inside.text()));
        }
    }
    return names;
}
