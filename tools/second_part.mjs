// Divides the page's program in two (web/panels/second_part.hpp), together with wasm-split.
//
//   node tools/second_part.mjs find IN.wasm OUT.wasm LIST DATA
//   node tools/second_part.mjs join FIRST.wasm SECOND.wasm OUT.wasm DATA
//
// find: every function that is reached through functions of the namespace overwater::second_part alone, by calls or through the
// table, goes into LIST, a line each: its number among the module's own, by which wasm-split knows a function without a name.
// IN has the names of its functions and segments. OUT is the same without them and without the constants of the second part
// (core/quantity/second_part_constants.hpp), which go into DATA.
//
// join: puts DATA into SECOND, and has it find the functions that it calls in the table of FIRST, which is less to load than
// an export for each. OUT is the module before it was split.
import { readFileSync, writeFileSync } from 'node:fs';
import * as wasm from './wasm_module.mjs';

const entry = 'overwater::second_part::';
// Cut at zeros, a segment becomes several with numbers behind the name.
const isConstants = /^second_part(\.\d+)?$/;

function fail(sentence) {
    console.error(`second_part: ${sentence}`);
    process.exit(1);
}

const read = (file) => wasm.sectionsOf(readFileSync(file));

/** The sections with others in the place of those of some numbers; none where that is undefined. */
const changed = (sections, by) => sections.flatMap((one) =>
    !(one.id in by) ? [one] : by[one.id] === undefined ? [] : [{ id: one.id, content: by[one.id] }]);

/** The numbers of functions of the first part. */
function reached(roots, bodies, imported, isEntry) {
    const first = new Set();
    for (const waiting = roots.filter((which) => !isEntry(which)); waiting.length > 0;) {
        const which = waiting.pop();
        if (first.has(which)) continue;
        first.add(which);
        for (const called of bodies[which - imported]?.calls ?? []) if (!isEntry(called)) waiting.push(called);
    }
    return first;
}

function find(from, to, list, data) {
    const sections = read(from);
    const names = wasm.namesOf(sections, wasm.named.function);
    const isEntry = (which) => names[which]?.startsWith(entry);
    if (!names.some((_, which) => isEntry(which))) fail(`no function of ${from} has a name that begins with ${entry}`);
    const imported = wasm.importsOf(sections).filter(({ kind }) => kind === wasm.kind.function).length;
    const bodies = wasm.bodiesOf(sections);
    const first = reached([
        ...wasm.exportsOf(sections).filter(({ kind }) => kind === wasm.kind.function).map(({ which }) => which),
        ...wasm.elementsOf(sections).flatMap(({ functions }) => functions),
        ...wasm.startOf(sections),
    ], bodies, imported, isEntry);
    const second = bodies.flatMap((_, place) => (first.has(place + imported) ? [] : [place]));

    const segmentNames = wasm.namesOf(sections, wasm.named.segment);
    const all = wasm.dataOf(sections);
    const moved = all.filter((_, which) => isConstants.test(segmentNames[which]));
    const left = all.filter((one) => !moved.includes(one));
    const begin = Math.min(...moved.map(({ place }) => place));
    const end = Math.max(...moved.map(({ place, bytes }) => place + bytes.length));
    for (const which of first) {
        for (const number of bodies[which - imported]?.numbers ?? []) {
            if (number >= begin && number < end) fail(`${names[which]} of the first part has ${number}, an address of the second part's constants`);
        }
    }
    const kept = sections.filter(({ id, content }) => id !== wasm.section.custom || new wasm.Reader(content).text() !== 'name');
    writeFileSync(to, wasm.moduleOf(changed(kept, { [wasm.section.data]: wasm.dataBytes(left), [wasm.section.dataCount]: wasm.leb(left.length) })));
    writeFileSync(list, second.map((place) => `${place}\n`).join(''));
    writeFileSync(data, wasm.dataBytes(moved));
    const code = second.reduce((sum, place) => sum + bodies[place].size, 0);
    console.log(`second part: ${second.length} functions, ${code} bytes; ${moved.reduce((sum, { bytes }) => sum + bytes.length, 0)} bytes of constants`);
}

function join(firstFile, secondFile, whole, data) {
    const first = read(firstFile);
    const second = read(secondFile);
    const own = new Set(wasm.exportsOf(read(whole)).map(({ name }) => name));
    const elements = wasm.elementsOf(first);
    const last = elements[elements.length - 1];
    const table = new wasm.Reader(first.find(({ id }) => id === wasm.section.table).content);
    const [tables, type] = [table.number(), table.number()];
    const limits = table.limits();
    if (tables !== 1 || last.place + last.functions.length !== limits.least) fail('the table does not end where its functions do');

    // In the order of the functions: numbers that grow pack better.
    const imports = wasm.importsOf(second);
    const wanted = new Set(imports.filter(({ kind }) => kind === wasm.kind.function).map(({ name }) => name));
    const exports = wasm.exportsOf(first);
    const shared = exports.filter(({ name, kind }) => kind === wasm.kind.function && wanted.has(name) && !own.has(name))
        .sort((a, b) => a.which - b.which);
    const slots = new Map(shared.map(({ name }, i) => [name, limits.least + i]));
    const wider = { ...limits, least: limits.least + shared.length };
    if (wider.most !== undefined) wider.most += shared.length;
    last.functions.push(...shared.map(({ which }) => which));
    writeFileSync(firstFile, wasm.moduleOf(changed(first, {
        [wasm.section.table]: Buffer.concat([wasm.leb(1), wasm.leb(type), wasm.limits(wider)]),
        [wasm.section.exports]: wasm.exportBytes(exports.filter((one) => !shared.includes(one))),
        [wasm.section.elements]: wasm.elementBytes(elements),
    })));

    for (const one of imports) {
        if (one.kind === wasm.kind.function && slots.has(one.name)) Object.assign(one, { module: 'shared', name: `${slots.get(one.name)}` });
        if (one.kind === wasm.kind.table) one.type = Buffer.concat([one.type.subarray(0, 2), wasm.limits(wider)]);
    }
    writeFileSync(secondFile, wasm.moduleOf([
        ...changed(second, { [wasm.section.imports]: wasm.importBytes(imports), [wasm.section.data]: undefined }),
        { id: wasm.section.data, content: readFileSync(data) },
    ]));
}

const [what, ...files] = process.argv.slice(2);
if (what === 'find' && files.length === 4) find(...files);
else if (what === 'join' && files.length === 4) join(...files);
else fail('find IN OUT LIST DATA, or join FIRST SECOND OUT DATA');
