// @ts-check
// What is not in the script itself. In the page of one file it lies in the page, gzipped and written in 85 letters (packed
// by written() in pack.mjs); beside the served page it is a file.

/**
 * Five letters are four bytes; the first character is how many of the last bytes do not count. A quarter more than the bytes,
 * where base64 takes a third.
 * @param {string} text
 */
function read(text) {
    const view = new DataView(new ArrayBuffer(((text.length - 1) / 5) * 4));
    for (let at = 0; at < view.byteLength; at += 4) {
        let word = 0;
        for (let i = 0; i < 5; ++i) {
            const code = text.charCodeAt(1 + (at / 4) * 5 + i);
            word = word * 85 + code - (code > 60 ? 41 : 40);
        }
        view.setUint32(at, word);
    }
    return new Uint8Array(view.buffer, 0, view.byteLength - Number(text[0]));
}

/**
 * @param {string} id of the element that holds it
 * @param {string} file
 * @param {string} [integrity] what only the right file has ('sha256-...')
 */
export async function brought(id, file, integrity) {
    const holder = document.getElementById(id);
    if (holder === null) {
        // Never an older one than the page: the browser asks whether its copy still holds.
        const response = await fetch(file, { cache: 'no-cache', integrity });
        if (!response.ok) throw new Error(`${file}: ${response.status}`);
        return response;
    }
    const bytes = read(holder.textContent ?? '');
    holder.remove();
    return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip')));
}
