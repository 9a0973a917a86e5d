// @ts-check
// Paints what Dear ImGui drew: one list of triangles with a texture of letters, by WebGL.

import { kind } from './bridge.mjs';

const vertexShader = `attribute vec2 p, t; attribute vec4 c; uniform vec2 s; varying vec2 u; varying vec4 v;
void main() { u = t; v = c; gl_Position = vec4(p.x * s.x - 1.0, 1.0 - p.y * s.y, 0, 1); }`;
const fragmentShader = `precision mediump float; varying vec2 u; varying vec4 v; uniform sampler2D x;
void main() { gl_FragColor = v * texture2D(x, u); }`;

// ImDrawVert: place, place in the texture, colour.
const vertexBytes = 20;
// Numbers of a command (page_painter.cpp): left, top, right, bottom in device pixels, texture, first index, count.
const commandNumbers = 7;

/**
 * @param {HTMLCanvasElement} canvas
 * @param {Send} send told where the context is lost or restored
 */
export function createPainter(canvas, send) {
    /** @type {WebGLRenderingContext | null} */
    let gl = null;
    /** @type {Map<number, WebGLTexture | null>} */
    const textures = new Map();
    /** @type {WebGLUniformLocation | null} */
    let scale = null;

    /** @param {WebGLRenderingContext} on */
    function prepare(on) {
        textures.clear();
        const program = /** @type {WebGLProgram} */ (on.createProgram());
        for (const [type, source] of /** @type {[number, string][]} */ ([[on.VERTEX_SHADER, vertexShader], [on.FRAGMENT_SHADER, fragmentShader]])) {
            const shader = /** @type {WebGLShader} */ (on.createShader(type));
            on.shaderSource(shader, source);
            on.compileShader(shader);
            on.attachShader(program, shader);
        }
        ['p', 't', 'c'].forEach((name, place) => on.bindAttribLocation(program, place, name));
        on.linkProgram(program);
        on.useProgram(program);
        scale = on.getUniformLocation(program, 's');
        on.bindBuffer(on.ARRAY_BUFFER, on.createBuffer());
        on.bindBuffer(on.ELEMENT_ARRAY_BUFFER, on.createBuffer());
        [0, 1, 2].forEach((place) => on.enableVertexAttribArray(place));
        on.vertexAttribPointer(0, 2, on.FLOAT, false, vertexBytes, 0);
        on.vertexAttribPointer(1, 2, on.FLOAT, false, vertexBytes, 8);
        on.vertexAttribPointer(2, 4, on.UNSIGNED_BYTE, true, vertexBytes, 16);
        on.enable(on.BLEND);
        on.blendFuncSeparate(on.SRC_ALPHA, on.ONE_MINUS_SRC_ALPHA, on.ONE, on.ONE_MINUS_SRC_ALPHA);
    }

    return {
        /** Whether the browser gives a context. */
        start() {
            gl = canvas.getContext('webgl', { alpha: false, depth: false, antialias: false, powerPreference: 'low-power' });
            if (!gl) return false;
            const on = gl;
            prepare(on);
            canvas.addEventListener('webglcontextlost', (event) => {
                event.preventDefault(); // we want it back
                send(kind.contextLost);
            });
            canvas.addEventListener('webglcontextrestored', () => {
                prepare(on);
                send(kind.contextRestored);
            });
            return true;
        },

        /** Makes a texture, or fills it anew. @param {number} id @param {number} width @param {number} height @param {Uint8Array} pixels */
        texture(id, width, height, pixels) {
            if (!gl) return;
            if (!textures.has(id)) textures.set(id, gl.createTexture());
            gl.bindTexture(gl.TEXTURE_2D, textures.get(id) ?? null);
            for (const name of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER]) gl.texParameteri(gl.TEXTURE_2D, name, gl.LINEAR);
            for (const name of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T]) gl.texParameteri(gl.TEXTURE_2D, name, gl.CLAMP_TO_EDGE);
            gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA, width, height, 0, gl.RGBA, gl.UNSIGNED_BYTE, pixels);
        },

        /** @param {number} id */
        dropTexture(id) {
            gl?.deleteTexture(textures.get(id) ?? null);
            textures.delete(id);
        },

        /**
         * @param {Float32Array} page width and height in CSS pixels, red, green and blue of what lies behind
         * @param {Uint8Array} vertices
         * @param {Uint8Array} indices of 16 bits
         * @param {Float32Array} commands
         */
        paint(page, vertices, indices, commands) {
            if (!gl) return;
            const { width, height } = canvas;
            gl.viewport(0, 0, width, height);
            gl.disable(gl.SCISSOR_TEST);
            gl.clearColor(page[2], page[3], page[4], 1);
            gl.clear(gl.COLOR_BUFFER_BIT);
            gl.enable(gl.SCISSOR_TEST);
            gl.uniform2f(scale, 2 / page[0], 2 / page[1]);
            gl.bufferData(gl.ARRAY_BUFFER, vertices, gl.STREAM_DRAW);
            gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, indices, gl.STREAM_DRAW);
            for (let at = 0; at < commands.length; at += commandNumbers) {
                const [left, top, right, bottom, texture, first, count] = commands.subarray(at, at + commandNumbers);
                if (right <= left || bottom <= top) continue;
                gl.scissor(left, height - bottom, right - left, bottom - top);
                gl.bindTexture(gl.TEXTURE_2D, textures.get(texture) ?? null);
                gl.drawElements(gl.TRIANGLES, count, gl.UNSIGNED_SHORT, first * 2);
            }
        },
    };
}
