// @ts-check
// The texts of languages other than English, each brought when it is spoken for the first time.

import { kind } from './bridge.mjs';
import { brought } from './brought.mjs';
import { keepBrought } from './offline.mjs';

// The page does not wait longer for words: it begins in English.
const patience = 3000;

/** @param {string} tag */
async function packed(tag) {
    try {
        const file = `text/${tag}.txt`;
        const text = await (await brought(file, file)).text();
        keepBrought(file);
        return text;
    } catch {
        return '';
    }
}

/** @param {Send} send */
export function createTexts(send) {
    /** @type {Promise<unknown>} */
    let last = Promise.resolve();
    return {
        /** Hands the text of a language to C++, or none where it cannot be had. @param {string} tag */
        bringText(tag) {
            last = packed(tag).then((text) => send(kind.text, tag, text));
        },
        /** When what was asked for is here. */
        here: () => Promise.race([last, new Promise((ready) => setTimeout(ready, patience))]),
    };
}
