// Serves the built page on the loopback interface, with the content-security policy as a header too.
//
//   node tools/server.mjs [--port N] [--folder dist]
//
// As a module: `const { address, close } = await serve({ folder, port: 0 })`.
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { servedPolicy } from '../shell/policy.mjs';

const types = {
    '.css': 'text/css; charset=utf-8',
    '.html': 'text/html; charset=utf-8',
    '.js': 'text/javascript; charset=utf-8',
    '.json': 'application/json; charset=utf-8',
    '.png': 'image/png',
    '.svg': 'image/svg+xml',
    '.ttf': 'font/ttf',
    '.txt': 'text/plain; charset=utf-8',
    '.wasm': 'application/wasm',
    '.webmanifest': 'application/manifest+json',
};

/** The path of a file inside `folder` for a request, or null for one that leads out of it. */
function fileFor(folder, url) {
    let path;
    try {
        path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    } catch {
        return null;
    }
    const file = normalize(join(folder, path.endsWith('/') ? `${path}index.html` : path));
    return file.startsWith(folder + sep) && !file.includes('\0') ? file : null;
}

async function answer(folder, request, response) {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
        response.writeHead(405, { allow: 'GET, HEAD' }).end();
        return;
    }
    const file = fileFor(folder, request.url);
    const body = file && (await readFile(file).catch(() => null));
    if (!body) {
        response.writeHead(404, { 'content-type': 'text/plain' }).end('not found');
        return;
    }
    const tag = `"${createHash('sha256').update(body).digest('base64url').slice(0, 22)}"`;
    const headers = {
        // Always asked for again, answered with 304 when unchanged: a rebuilt page is seen at the next load. The
        // service worker is what makes a visit without a network work.
        'cache-control': 'no-cache',
        'content-type': types[extname(file)] ?? 'application/octet-stream',
        'cross-origin-opener-policy': 'same-origin',
        'referrer-policy': 'no-referrer',
        'x-content-type-options': 'nosniff',
        etag: tag,
    };
    // The one-file page carries a policy of its own, with the hashes of its scripts.
    if (extname(file) === '.html' && !file.endsWith('overwater.html')) headers['content-security-policy'] = servedPolicy;
    if (request.headers['if-none-match'] === tag) {
        response.writeHead(304, headers).end();
        return;
    }
    response.writeHead(200, { ...headers, 'content-length': body.length });
    response.end(request.method === 'HEAD' ? undefined : body);
}

/** Starts the server; port 0 takes a free one. Resolves to { address, port, close() }. */
export function serve({ folder = 'dist', port = 0 } = {}) {
    const root = resolve(folder);
    const server = createServer((request, response) => {
        answer(root, request, response).catch(() => response.destroy());
    });
    return new Promise((started, failed) => {
        server.once('error', failed);
        server.listen(port, '127.0.0.1', () => {
            const { port: actual } = server.address();
            started({
                address: `http://127.0.0.1:${actual}/`,
                port: actual,
                close: () => {
                    server.closeAllConnections?.();
                    return new Promise((closed) => server.close(closed));
                },
            });
        });
    });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
    const option = (name, fallback) => {
        const at = process.argv.indexOf(name);
        return at > 0 ? process.argv[at + 1] : fallback;
    };
    const home = fileURLToPath(new URL('../dist', import.meta.url));
    const { address } = await serve({ folder: option('--folder', home), port: Number(option('--port', 8080)) }).catch(
        (error) => {
            console.error(`server: ${error.code === 'EADDRINUSE' ? 'this port is taken; try --port N' : error.message}`);
            process.exit(1);
        },
    );
    console.log(`Overwater is at ${address} (Ctrl+C ends it)`);
}
