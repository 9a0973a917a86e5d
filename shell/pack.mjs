// Packs the page from the WebAssembly build and shell/:
//
//   dist/index.html, app.js, style.css, sorted.wasm, sw.js and what lies beside them: the served page
//   dist/more.wasm: the second part of the program (tools/second_part.mjs), loaded when it is wanted
//   dist/text/TAG.txt: the text of each language but English, of which a visit loads at most the one that is spoken
//   dist/overwater.html: all of it in one file, which works from a memory stick
//
//   node shell/pack.mjs [--build build/page/web] [--out dist] [--limits]
//
// index.html has the places <!--policy-->, <!--style--> and <!--script-->. The modules are joined, beginning with
// main.mjs, into one classic script behind Emscripten's, which sets the global createOverwater. In sw.js __CACHE__ stands
// for a hash of the content of all files and __FILES__ for their names in JSON.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { build, transform } from 'esbuild';
import { oneFilePolicy, servedPolicy } from './policy.mjs';
import { sortedModule } from './wasm_sort.mjs';

const served_limit = 300000; // bytes, brotli, all that a visit in English loads: what it may come to in the end
const more_limit = 60000; // bytes, brotli, the program's second part
const text_limit = 30000; // bytes, brotli, the text of each other language
const one_file_limit = 600000; // bytes of overwater.html

const shell = fileURLToPath(new URL('.', import.meta.url));
const top = join(shell, '..');
const option = (name, fallback) => {
    const at = process.argv.indexOf(name);
    return at > 0 ? process.argv[at + 1] : fallback;
};
// Served for tests of the layout; nobody reads it, so it is not in the one file.
const pseudo = 'en-x-pseudo.txt';
const compiled = option('--build', join(top, 'build/page/web'));
const out = option('--out', join(top, 'dist'));

const fail = (sentence) => {
    console.error(`pack: ${sentence}`);
    process.exit(1);
};
const read = (folder, name) => {
    const file = join(folder, name);
    return existsSync(file) ? readFileSync(file) : fail(`${file} is missing`);
};
const sha256 = (text) => `sha256-${createHash('sha256').update(text).digest('base64')}`;

/** Puts `text` at the place `<!--name-->`, which has to be there once. */
function fill(page, name, text) {
    const parts = page.split(`<!--${name}-->`);
    if (parts.length !== 2) fail(`index.html has the place <!--${name}--> ${parts.length - 1} times, not once`);
    return parts.join(text);
}

/** The modules from `entry` on, joined into one script, with `names` in it replaced by texts. */
async function joined(entry, names) {
    const { outputFiles } = await build({
        entryPoints: [join(shell, entry)],
        bundle: true,
        define: Object.fromEntries(Object.entries(names).map(([name, text]) => [name, JSON.stringify(text)])),
        write: false,
        minify: true,
        format: 'iife',
        target: 'es2020',
        charset: 'utf8',
        legalComments: 'none',
        logLevel: 'warning',
    });
    return outputFiles[0].text.trim();
}

const minified = async (text, loader) =>
    (await transform(text, { loader, minify: true, target: 'es2020', charset: 'utf8', legalComments: 'none' })).code.trim();

/** Files beside the page that are served as they are: manifest and icons. */
function beside() {
    const names = readdirSync(shell).filter((name) => ['.webmanifest', '.svg', '.png'].includes(extname(name)));
    return Object.fromEntries(names.map((name) => [name, readFileSync(join(shell, name))]));
}

/** The page with `address` as its icon. */
const with_icon = (page, address) => page.replace(/(<link rel="icon" href=")[^"]*/, `$1${address}`);

const meta = (policy) => `<meta http-equiv="Content-Security-Policy" content="${policy}">`;

/** The texts of other languages by their paths in the served page. */
function texts() {
    const folder = join(compiled, '../include/generated/text');
    if (!existsSync(folder)) fail(`${folder} is missing`);
    return Object.fromEntries(readdirSync(folder).sort().map((name) => [`text/${name}`, read(folder, name)]));
}

async function served_page(template, app, style, program, files, later, worker) {
    const all = { ...files, 'app.js': app, 'style.css': style, 'sorted.wasm': program };
    const links = ['<link rel="stylesheet" href="style.css">'];
    if (files['manifest.webmanifest']) links.push('<link rel="manifest" href="manifest.webmanifest">');
    let page = files['icon.svg'] ? with_icon(template, 'icon.svg') : template;
    page = fill(page, 'policy', meta(servedPolicy));
    page = fill(page, 'style', links.join('\n'));
    all['index.html'] = fill(page, 'script', '<script src="app.js" defer></script>');

    const names = Object.keys(all).sort();
    const hash = createHash('sha256').update(worker);
    for (const [name, data] of Object.entries({ ...all, ...later })) hash.update(`${name}\0`).update(data);
    const told = worker.replaceAll('__CACHE__', hash.digest('hex').slice(0, 16)).replaceAll('__FILES__', JSON.stringify(names));
    return { ...all, 'sw.js': await minified(told, 'js') };
}

/** Bytes in 85 letters, from "(" on and without "<", which shell/brought.mjs reads again. */
function written(bytes) {
    const spare = (4 - (bytes.length % 4)) % 4;
    const padded = Buffer.concat([bytes, Buffer.alloc(spare)]);
    const letters = [String(spare)];
    for (let at = 0; at < padded.length; at += 4) {
        let word = padded.readUInt32BE(at);
        let five = '';
        for (let i = 0; i < 5; ++i) {
            const digit = word % 85;
            five = String.fromCharCode(digit + (digit > 19 ? 41 : 40)) + five;
            word = (word - digit) / 85;
        }
        letters.push(five);
    }
    return letters.join('');
}

/** As gzip reads it, but 7 % smaller than gzip makes it: zopfli looks longer for the shortest way. */
function squeezed(data) {
    const folder = mkdtempSync(join(tmpdir(), 'overwater-'));
    try {
        const file = join(folder, 'data');
        writeFileSync(file, data);
        return execFileSync('zopfli', ['-c', file], { maxBuffer: data.length + 4096 });
    } finally {
        rmSync(folder, { recursive: true });
    }
}

/** Data in a page of one file, which shell/brought.mjs takes out again. */
const holder = (id, data) => `<script type="application/octet-stream" id="${id}">${written(squeezed(data))}</script>\n`;

function one_file(template, script, style, program, more, files, languages) {
    if (/<\/script|<!--/i.test(script)) fail('the script holds </script or <!--, which would end it inside a page');
    const spoken = Object.entries(languages).filter(([name]) => !name.endsWith(pseudo));
    const held = [['program', program], ['more', more], ...spoken].map(([id, data]) => holder(id, data)).join('');
    const icon = `data:image/svg+xml;base64,${(files['icon.svg'] ?? Buffer.alloc(0)).toString('base64')}`;
    let page = files['icon.svg'] ? with_icon(template, icon) : template;
    page = fill(page, 'policy', meta(oneFilePolicy([sha256(script)], [sha256(style)])));
    page = fill(page, 'style', `<style>${style}</style>`);
    return fill(page, 'script', `${held}<script>${script}</script>`);
}

const brotli = (data) =>
    brotliCompressSync(data, {
        params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: data.length },
    }).length;

/** Prints bytes by part; false where a limit is passed. */
function report(all, more, languages, page) {
    const row = (name, raw, gzip, small) =>
        console.log(`${name.padEnd(24)}${String(raw).padStart(9)}${String(gzip).padStart(9)}${String(small).padStart(9)}`);
    row('bytes', 'raw', 'gzip', 'brotli');
    const sum = [0, 0, 0];
    const total = (files) => {
        let largest = 0;
        for (const name of Object.keys(files).sort()) {
            const data = Buffer.from(files[name]);
            const sizes = [data.length, gzipSync(data, { level: 9 }).length, brotli(data)];
            row(name, ...sizes);
            sizes.forEach((size, i) => (sum[i] += size));
            largest = Math.max(largest, sizes[2]);
        }
        return largest;
    };
    total(all);
    const english = sum[2];
    row('a visit in English', ...sum);
    const second = total({ 'more.wasm': more });
    const text = total(languages);
    row('all served', ...sum);
    row('overwater.html', page.length, gzipSync(page, { level: 9 }).length, brotli(page));
    console.log(`limits: a visit in English ${served_limit} brotli, the second part ${more_limit} brotli, a language more ${text_limit} brotli, overwater.html ${one_file_limit} raw`);
    return english <= served_limit && second <= more_limit && text <= text_limit && page.length <= one_file_limit;
}

const template = read(shell, 'index.html').toString();
const style = await minified(read(shell, 'style.css').toString(), 'css');
const emscripten = await minified(read(compiled, 'overwater.js').toString(), 'js');
const program = sortedModule(read(compiled, 'overwater.wasm'));
const more = sortedModule(read(compiled, 'more.wasm'));
const worker = read(shell, 'sw.js').toString();
const files = beside();
const languages = texts();
const script = `${emscripten}\n${await joined('main.mjs', { secondPart: sha256(more) })}\n`;

const later = { 'more.wasm': more, ...languages };
const all = await served_page(template, script, style, program, files, later, worker);
const page = Buffer.from(one_file(template, script, style, program, more, files, languages));

rmSync(out, { recursive: true, force: true });
mkdirSync(join(out, 'text'), { recursive: true });
for (const [name, data] of Object.entries({ ...all, ...later })) writeFileSync(join(out, name), data);
writeFileSync(join(out, 'overwater.html'), page);

const within = report(all, more, languages, page);
if (process.argv.includes('--limits') && !within) fail('a limit on the size is passed');
