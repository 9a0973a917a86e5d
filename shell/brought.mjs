// @ts-check
// What is not in the script itself. In the page of one file it lies in the page, gzipped and in base64; beside the served
// page it is a file.

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
    const text = atob(holder.textContent ?? '');
    holder.remove();
    const bytes = Uint8Array.from(text, (character) => character.charCodeAt(0));
    return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip')));
}
