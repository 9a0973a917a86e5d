// Names that come from outside the modules of the shell.

// For the linker's library file.
declare const mergeInto: (library: object, functions: object) => void;
declare const LibraryManager: { library: object };
declare const UTF8ToString: (pointer: number, bytes?: number) => string;
declare const HEAPU8: Uint8Array;
declare const HEAPF32: Float32Array;
declare const newText: (text: string) => number;
declare const _malloc: (bytes: number) => number;
declare const Module: { overwater: any };

/** Made by the linker from the C++ (overwater.js). */
declare function createOverwater(options: object): Promise<any>;
/** What only the second part made with this program has; from shell/pack.mjs. */
declare const secondPart: string;
/** Frames drawn since the start, for tests. */
declare var overwaterFrames: number;
/** Mean milliseconds of a frame from NewFrame to Render, over `n` frames without painting. */
declare var overwaterBench: (n: number) => number;

/** Hands an event to C++: Event of web/browser/event.hpp. True when the browser's own action must not follow. */
type Send = (kind: number, key?: string, text?: string, a?: number, b?: number, c?: number) => boolean;

/** Name, attributes, children: texts or trees. */
type Tree = [string, Record<string, string>, ...any[]];

/** A node of a patch, members as in web/ui/mirror.md. */
interface MirrorNode {
    k: string;
    p?: string;
    t: string;
    a?: Record<string, string>;
    c?: string;
    x?: string;
    v?: string;
    w?: number;
    on?: boolean;
    b?: number[] | null;
    o?: [string, string][];
    m?: Tree | Tree[];
}

/** What the mirror knows of an element. */
interface Held {
    el: any;
    /** As last applied. */
    node: MirrorNode;
    /** A live region of index.html, which stays where it is. */
    lent: boolean;
    /** Changed by the person since C++ last spoke of it. */
    typed: boolean;
}
