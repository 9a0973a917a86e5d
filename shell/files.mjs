// @ts-check
// Files kept and opened, and the clipboard.

import { kind } from './bridge.mjs';

// More than C++ accepts: what is longer is cut here, so that a film dropped by mistake does not fill the memory, and C++
// still sees that it is too long.
const longest = 32 * 1024 * 1024;
const linkLife = 60_000;

/** @param {string} name @param {string} type @param {Uint8Array<ArrayBuffer>} bytes */
export function saveFile(name, type, bytes) {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([bytes], { type }));
    link.download = name;
    link.click();
    // The browser reads the link after this call; when exactly is its own affair.
    setTimeout(() => URL.revokeObjectURL(link.href), linkLife);
}

/**
 * Prints a document of its own. It is written into an empty frame: no address is loaded, which the policy would refuse.
 * @param {string} html
 */
export function printHtml(html) {
    const frame = document.createElement('iframe');
    Object.assign(frame.style, { position: 'fixed', width: '0', height: '0', border: '0' });
    frame.ariaHidden = 'true';
    frame.tabIndex = -1;
    document.body.append(frame);
    const view = /** @type {any} */ (frame.contentWindow);
    view.document.write(html);
    view.document.close();
    // An adopted sheet is no inline style.
    const sheet = new view.CSSStyleSheet();
    sheet.replaceSync(`article { break-after: page } article:last-child { break-after: auto } article td { height: 7mm } article td:empty { width: 32mm }
        @page { size: ${view.document.body.className}; margin: 12mm } body { font: 9pt/1.3 sans-serif; margin: 0 }
        h1 { font-size: 14pt } h2 { font-size: 11pt; margin: 12pt 0 4pt; break-after: avoid } h3 { font-size: 16pt; margin: 0 }
        p, ul, ol { margin: 3pt 0 } li { break-inside: avoid; margin: 3pt 0 } small { display: block; color: #444 }
        table { border-collapse: collapse; width: 100% } th, td { border: 1px solid #888; padding: 2px 4px; text-align: left;
        vertical-align: top } code { white-space: nowrap; font: inherit } tbody th { font-weight: 400 } thead { display: table-header-group } tr, svg { break-inside: avoid }
        hr { border: 0; border-bottom: 1px solid #888; margin: 8mm 0 0 } svg { display: block; margin: 6pt auto }
        math { display: block; margin: 4pt 0; text-align: left }
        section { display: grid; grid-template-columns: 3fr 2fr; gap: 6mm; align-items: start }`);
    view.document.adoptedStyleSheets = [sheet];
    view.addEventListener('afterprint', () => setTimeout(() => frame.remove()));
    view.print();
}

/** Must be called in answer to an action of the person; "#…" is copied as an address of this page. @param {string} words */
export function clipboardPut(words) {
    const text = words.startsWith('#') ? new URL(words, location.href).href : words;
    /** @param {ClipboardEvent} event */
    const put = (event) => {
        event.clipboardData?.setData('text/plain', text);
        event.preventDefault();
        event.stopImmediatePropagation();
    };
    document.addEventListener('copy', put, { capture: true, once: true });
    const done = document.execCommand('copy');
    document.removeEventListener('copy', put, { capture: true });
    if (!done) navigator.clipboard?.writeText(text).catch(() => {});
}

/** A file's text. What is no UTF-8 comes from a spreadsheet that writes the older code. @param {ArrayBuffer} bytes */
function decoded(bytes) {
    try {
        return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } catch {
        return new TextDecoder('windows-1252').decode(bytes);
    }
}

/** @param {Iterable<File>} files @param {Send} send */
async function read(files, send) {
    for (const file of files) {
        // A folder, or a file that has gone, cannot be read; C++ says so.
        const text = decoded(await file.slice(0, longest).arrayBuffer().catch(() => new ArrayBuffer(0)));
        send(kind.file, file.name, text);
    }
}

/**
 * Opens the browser's file dialogue. The field is made anew each time, so that the same file can be chosen twice.
 * @param {Send} send
 * @param {string} accept
 */
export function openFile(send, accept) {
    const field = document.createElement('input');
    field.type = 'file';
    field.accept = accept;
    field.multiple = true;
    field.hidden = true;
    field.addEventListener('change', () => {
        read(field.files ?? [], send);
        field.remove();
    });
    field.addEventListener('cancel', () => field.remove());
    document.body.append(field);
    field.click();
}

/** Files may be dropped anywhere. @param {Send} send */
export function listenToDrops(send) {
    const carriesFiles = (/** @type {DragEvent} */ event) => event.dataTransfer?.types.includes('Files');
    document.addEventListener('dragover', (event) => {
        if (carriesFiles(event)) event.preventDefault();
    });
    document.addEventListener('drop', (event) => {
        if (!carriesFiles(event)) return;
        event.preventDefault();
        read([...(event.dataTransfer?.files ?? [])], send);
    });
}
