// What both other engines are started with: a screen of their own in memory, programs found, processes ended.
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';

/** The first of these programs that is on the path. */
export const onPath = (...names) =>
    names.flatMap((name) => process.env.PATH.split(':').map((folder) => join(folder, name))).find((file) => existsSync(file));

/** Starts a program that does not outlive the test, however that ends. */
export function begun(...how) {
    const program = spawn(...how);
    const end = () => program.kill();
    process.once('exit', end);
    program.once('exit', () => process.removeListener('exit', end));
    return program;
}

/** Ends a program that was started here and waits until it is gone. */
export async function ended(program) {
    if (program.exitCode !== null || program.signalCode !== null) return;
    const gone = new Promise((resolve) => program.once('exit', resolve));
    program.kill();
    await gone;
}

/** A screen in memory; its number comes back on its third channel. */
export async function screen({ width, height }) {
    const program = begun('Xvfb', ['-displayfd', '3', '-screen', '0', `${width}x${height}x24`, '-nolisten', 'tcp'],
        { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
    const number = await new Promise((resolve, reject) => {
        program.stdio[3].once('data', (text) => resolve(String(text).trim()));
        program.once('error', reject);
        program.once('exit', () => reject(new Error('Xvfb ended')));
    });
    return { display: `:${number}`, close: () => ended(program) };
}

/** A port that is free now. */
export const freePort = () => new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
        const { port } = server.address();
        server.close(() => resolve(port));
    });
});

/** The process above this one, or none where it has gone. */
function above(id) {
    try {
        return Number(/\) \S (\d+)/.exec(readFileSync(`/proc/${id}/stat`, 'utf8'))?.[1]);
    } catch {
        return 0;
    }
}

/** What a process was started as. */
function command(id) {
    try {
        return readFileSync(`/proc/${id}/cmdline`, 'utf8').replaceAll('\0', ' ');
    } catch {
        return '';
    }
}

/** The processes below this test's own whose command is such a one. */
export function startedHere(wanted) {
    const all = readdirSync('/proc').filter((name) => /^\d+$/.test(name)).map(Number);
    const parents = new Map(all.map((id) => [id, above(id)]));
    const ours = (id) => id === process.pid || (id > 1 && ours(parents.get(id) ?? 0));
    return all.filter((id) => id !== process.pid && ours(id) && wanted.test(command(id)));
}
