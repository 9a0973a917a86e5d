// @ts-check
// The content-security policies: nothing may be fetched from anywhere else, and nothing but our own code may run.
// 'wasm-unsafe-eval' lets WebAssembly be compiled; it does not allow eval.

/** For the page of several files. */
export const servedPolicy = [
    "default-src 'none'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
].join('; ');

/**
 * For the page of one file: only the scripts and styles with these hashes ('sha256-...').
 * @param {string[]} scripts
 * @param {string[]} styles
 */
export const oneFilePolicy = (scripts, styles) =>
    [
        "default-src 'none'",
        `script-src ${scripts.map((hash) => `'${hash}'`).join(' ')} 'wasm-unsafe-eval'`,
        `style-src ${styles.map((hash) => `'${hash}'`).join(' ')}`,
        'img-src data: blob:',
        'font-src data:',
        "base-uri 'none'",
        "form-action 'none'",
    ].join('; ');
