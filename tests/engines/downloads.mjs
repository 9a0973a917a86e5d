// Files that a browser has put into a folder, as downloads of Playwright: where a browser's driver says nothing of them.
import { mkdtempSync, readdirSync, renameSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

const unfinished = /\.(wkdownload|part)$/;

/** The next file that comes into the folder and is complete. It is taken away, so that another can have its name. */
export async function nextDownload(folder, timeout = 30_000) {
    for (const end = Date.now() + timeout; Date.now() < end; await pause(100)) {
        const name = readdirSync(folder).find((one) => !unfinished.test(one));
        if (!name || readdirSync(folder).some((one) => unfinished.test(one))) continue;
        const size = () => statSync(join(folder, name)).size;
        const before = size();
        await pause(200);
        if (size() !== before) continue;
        const path = join(mkdtempSync(join(dirname(folder), 'taken-')), name);
        renameSync(join(folder, name), path);
        return { suggestedFilename: () => name, path: async () => path };
    }
    throw new Error(`no file came in ${timeout} ms`);
}
