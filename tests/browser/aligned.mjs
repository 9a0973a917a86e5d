// Whether what the canvas draws in a field lies where the real field has its text.
import assert from 'node:assert/strict';
import { canvasPicture, field, still } from './harness.mjs';
import { decode } from './png.mjs';

/** First and last column of dark pixels in the inner part of a rectangle. */
function darkColumns(png, css, ratio) {
    const box = { x: css.x * ratio, y: css.y * ratio, width: css.width * ratio, height: css.height * ratio };
    const edge = 4 * ratio; // inside of the ring of the focus
    const { width, channels, data } = decode(png);
    const columns = [];
    for (let x = Math.ceil(box.x + edge); x < box.x + box.width - edge; ++x) {
        for (let y = Math.ceil(box.y + edge); y < box.y + box.height - edge; ++y) {
            const at = (y * width + x) * channels;
            if (data[at] + data[at + 1] + data[at + 2] < 450) {
                columns.push(x);
                break;
            }
        }
    }
    assert.ok(columns.length > 4, 'no text is seen in the field');
    return [columns[0], columns.at(-1)];
}

/** The text that the canvas draws in a field starts and ends where that of the real field does, to a pixel of the page. */
export async function assertAligned(tab, name, ratio = 1) {
    const el = field(tab, name);
    await el.focus();
    await el.evaluate((field) => { field.style.caretColor = 'transparent'; });
    await still(tab);
    const box = await el.boundingBox();
    const real = darkColumns(await tab.screenshot(), box, ratio);
    await el.blur();
    await still(tab);
    const drawn = darkColumns(await canvasPicture(tab), await el.boundingBox(), ratio);
    for (const side of [0, 1]) {
        assert.ok(Math.abs(real[side] - drawn[side]) <= ratio, `${name}: real ${real}, drawn ${drawn}`);
    }
}
