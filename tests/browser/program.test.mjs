// The module sorted by kind of byte comes back as it was: the page's own, and the tests', which other options have built.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, it } from 'node:test';
import { sortedModule } from '../../shell/wasm_sort.mjs';
import { moduleOf } from '../../shell/wasm_streams.mjs';

const file = (name) => readFileSync(new URL(`../../build/${name}`, import.meta.url));
const inside = (script) => Buffer.from(/["']data:application\/octet-stream;base64,([^"']+)["']/.exec(script)[1], 'base64');

/** The module as binaryen writes it: of an unoptimized link the numbers are wider than they need be, which the sorting refuses. */
function rewritten(module) {
    const folder = mkdtempSync(join(tmpdir(), 'overwater-module-'));
    const [before, after] = ['before.wasm', 'after.wasm'].map((name) => join(folder, name));
    writeFileSync(before, module);
    execFileSync('wasm-opt', ['--enable-simd', '--enable-bulk-memory', '--enable-nontrapping-float-to-int', '--enable-sign-ext', before, '-o', after]);
    const bytes = readFileSync(after);
    rmSync(folder, { recursive: true });
    return bytes;
}

const modules = {
    'of the page': () => file('page/web/overwater.wasm'),
    'of the page\'s second part': () => file('page/web/more.wasm'),
    'of the tests': () => rewritten(inside(file('page/tests/core_tests.js').toString())),
};

/** A module of one function: its types, its body. */
function small(body) {
    const function_ = [body.length + 1, 0, ...body];
    return Uint8Array.from([
        0, 0x61, 0x73, 0x6d, 1, 0, 0, 0, // magic, version
        1, 5, 1, 0x60, 0, 1, 0x7f, // types: () -> i32
        3, 2, 1, 0, // functions
        5, 3, 1, 0, 1, // memory of one page
        7, 5, 1, 1, 0x66, 0, 0, // export f
        10, function_.length + 1, 1, ...function_,
    ]);
}

describe('the sorted module', () => {
    for (const [name, read] of Object.entries(modules)) {
        it(`comes back: ${name}`, () => {
            const module = new Uint8Array(read());
            const sorted = sortedModule(module);
            assert.notDeepEqual(sorted.subarray(0, 8), module.subarray(0, 8));
            assert.ok(Buffer.compare(moduleOf(sorted), module) === 0);
            assert.ok(WebAssembly.validate(moduleOf(sorted)));
        });
    }

    it('runs as before', () => {
        // 7 * 6 by way of memory, a block left by br_table, and memory.fill of nothing.
        const module = small([
            0x41, 8, 0x41, 7, 0x36, 2, 0, 0x02, 0x40, 0x41, 0, 0x0e, 1, 0, 0, 0x0b, 0x41, 0, 0x41, 0, 0x41, 0, 0xfc, 11, 0,
            0x41, 8, 0x28, 2, 0, 0x41, 6, 0x6c, 0x0b,
        ]);
        const { f } = new WebAssembly.Instance(new WebAssembly.Module(moduleOf(sortedModule(module)))).exports;
        assert.equal(f(), 42);
    });

    it('keeps vectors, whose operands look like other instructions', () => {
        // A constant, a store and a load of one lane, one lane taken out; 11 (an end) among the bytes.
        const module = small([
            0x41, 16, 0xfd, 12, ...Array(15).fill(0x0b), 42, 0xfd, 11, 4, 0,
            0x41, 16, 0x41, 16, 0xfd, 0, 4, 0, 0xfd, 84, 0, 15, 11, 0xfd, 22, 11, 0x0b,
        ]);
        assert.ok(WebAssembly.validate(module));
        const { f } = new WebAssembly.Instance(new WebAssembly.Module(moduleOf(sortedModule(module)))).exports;
        assert.equal(f(), 42);
    });

    it('is refused where an instruction is not known, or a part is missing', () => {
        // ref.func 11, whose operand looks like an end.
        assert.throws(() => sortedModule(small([0xd2, 11, 0x1a, 0x41, 42, 0x0b])), /not the same/);
        const sorted = sortedModule(small([0x41, 42, 0x0b]));
        assert.throws(() => moduleOf(sorted.subarray(0, sorted.length - 1)), /incomplete/);
        assert.throws(() => moduleOf(new Uint8Array()));
    });
});
