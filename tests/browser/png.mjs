// Reads the screenshots of the tests: PNG with 8 bits a channel, red-green-blue with or without alpha, not interlaced.
// Format: "Portable Network Graphics (PNG) Specification (Third Edition)", W3C.
import assert from 'node:assert/strict';
import { inflateSync } from 'node:zlib';

const signature = '89504e470d0a1a0a';

/** Paeth predictor, section 9.4 of the specification. */
function paeth(left, up, corner) {
    const guess = left + up - corner;
    const [a, b, c] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
    return a <= b && a <= c ? left : b <= c ? up : corner;
}

/** { width, height, channels, data }: the samples, row by row. */
export function decode(png) {
    assert.equal(png.subarray(0, 8).toString('hex'), signature, 'PNG signature');
    const parts = [];
    let header;
    for (let at = 8; at < png.length;) {
        const size = png.readUInt32BE(at);
        const type = png.toString('latin1', at + 4, at + 8);
        const body = png.subarray(at + 8, at + 8 + size);
        if (type === 'IHDR') header = body;
        if (type === 'IDAT') parts.push(body);
        at += size + 12;
    }
    const [width, height, depth, colour] = [header.readUInt32BE(0), header.readUInt32BE(4), header[8], header[9]];
    assert.ok(depth === 8 && (colour === 2 || colour === 6) && header[12] === 0, 'a kind of PNG that is read here');
    const channels = colour === 6 ? 4 : 3;
    const stride = width * channels;
    const raw = inflateSync(Buffer.concat(parts));
    const data = new Uint8Array(stride * height);
    for (let y = 0; y < height; ++y) {
        const filter = raw[y * (stride + 1)];
        for (let x = 0; x < stride; ++x) {
            const here = y * stride + x;
            const left = x >= channels ? data[here - channels] : 0;
            const up = y > 0 ? data[here - stride] : 0;
            const corner = y > 0 && x >= channels ? data[here - stride - channels] : 0;
            const add = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter];
            data[here] = raw[y * (stride + 1) + 1 + x] + add;
        }
    }
    return { width, height, channels, data };
}

/** How many different colours a picture has. */
export function distinctColours(png) {
    const { channels, data } = decode(png);
    const colours = new Set();
    for (let i = 0; i < data.length; i += channels) colours.add((data[i] << 16) | (data[i + 1] << 8) | data[i + 2]);
    return colours.size;
}

/** The colour at a point, as [red, green, blue]. */
export function colourAt(png, x, y) {
    const { width, channels, data } = decode(png);
    const at = (Math.round(y) * width + Math.round(x)) * channels;
    return [data[at], data[at + 1], data[at + 2]];
}
