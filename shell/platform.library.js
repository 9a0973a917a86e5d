// @ts-check
// The functions that web/browser/browser_platform.cpp calls. Each hands over to the shell's object of the same purpose,
// given to the module as `overwater` (host.mjs). Texts come as UTF-8 pointer and length, and go as new memory.

mergeInto(LibraryManager.library, {
    $newText__deps: ['malloc'],
    $newText: function (/** @type {string} */ text) {
        var bytes = new TextEncoder().encode(text);
        var at = _malloc(bytes.length + 1);
        HEAPU8.set(bytes, at);
        HEAPU8[at + bytes.length] = 0;
        return at;
    },
    ow_store_get__deps: ['$newText'],
    ow_store_get: function (/** @type {number} */ key, /** @type {number} */ bytes) {
        var text = Module['overwater'].storeGet(UTF8ToString(key, bytes));
        return text === null ? 0 : newText(text);
    },
    ow_store_put: function (/** @type {number} */ key, /** @type {number} */ keyBytes, /** @type {number} */ text, /** @type {number} */ textBytes) {
        return Module['overwater'].storePut(UTF8ToString(key, keyBytes), UTF8ToString(text, textBytes));
    },
    ow_store_remove: function (/** @type {number} */ key, /** @type {number} */ bytes) {
        Module['overwater'].storeRemove(UTF8ToString(key, bytes));
    },
    ow_store_list__deps: ['$newText'],
    ow_store_list: function (/** @type {number} */ prefix, /** @type {number} */ bytes) {
        return newText(Module['overwater'].storeList(UTF8ToString(prefix, bytes)).join('\n'));
    },
    ow_save_file: function (/** @type {number} */ name, /** @type {number} */ nameBytes, /** @type {number} */ type, /** @type {number} */ typeBytes,
                            /** @type {number} */ text, /** @type {number} */ textBytes) {
        // A decoder would take the byte-order mark away that spreadsheets need.
        Module['overwater'].saveFile(UTF8ToString(name, nameBytes), UTF8ToString(type, typeBytes), HEAPU8.slice(text, text + textBytes));
    },
    ow_print_html: function (/** @type {number} */ html, /** @type {number} */ bytes) {
        Module['overwater'].printHtml(UTF8ToString(html, bytes));
    },
    ow_clipboard_put: function (/** @type {number} */ text, /** @type {number} */ bytes) {
        Module['overwater'].clipboardPut(UTF8ToString(text, bytes));
    },
    ow_patch_mirror: function (/** @type {number} */ json, /** @type {number} */ bytes) {
        Module['overwater'].patchMirror(UTF8ToString(json, bytes));
    },
    ow_focus: function (/** @type {number} */ key, /** @type {number} */ bytes, /** @type {number} */ caret) {
        Module['overwater'].focus(UTF8ToString(key, bytes), caret);
    },
    ow_scroll_to: function (/** @type {number} */ y) { Module['overwater'].scrollTo(y); },
    ow_wake: function (/** @type {number} */ frames) { Module['overwater'].wake(frames); },
    ow_start_timer: function (/** @type {number} */ name, /** @type {number} */ bytes, /** @type {number} */ milliseconds) {
        Module['overwater'].startTimer(UTF8ToString(name, bytes), milliseconds);
    },
    ow_iso_time__deps: ['$newText'],
    ow_iso_time: function () { return newText(Module['overwater'].isoTime()); },
    ow_random: function () { return Module['overwater'].random(); },
    ow_language__deps: ['$newText'],
    ow_language: function () { return newText(Module['overwater'].language()); },
    ow_bring_text: function (/** @type {number} */ tag, /** @type {number} */ bytes) {
        Module['overwater'].bringText(UTF8ToString(tag, bytes));
    },
    ow_bring_second_part: function () { Module['overwater'].bringSecondPart(); },
    ow_media: function () { return Module['overwater'].media(); },
    ow_fragment__deps: ['$newText'],
    ow_fragment: function () { return newText(Module['overwater'].fragment()); },
    ow_forget_fragment: function () { Module['overwater'].forgetFragment(); },
    ow_paint_start: function () { return Module['overwater'].painter.start() ? 1 : 0; },
    ow_paint_texture: function (/** @type {number} */ id, /** @type {number} */ width, /** @type {number} */ height, /** @type {number} */ pixels) {
        Module['overwater'].painter.texture(id, width, height, HEAPU8.subarray(pixels, pixels + 4 * width * height));
    },
    ow_paint_drop_texture: function (/** @type {number} */ id) { Module['overwater'].painter.dropTexture(id); },
    ow_paint: function (/** @type {number} */ page, /** @type {number} */ vertices, /** @type {number} */ vertexBytes,
                        /** @type {number} */ indices, /** @type {number} */ indexBytes, /** @type {number} */ commands, /** @type {number} */ numbers) {
        Module['overwater'].painter.paint(HEAPF32.subarray(page >> 2, (page >> 2) + 5), HEAPU8.subarray(vertices, vertices + vertexBytes),
            HEAPU8.subarray(indices, indices + indexBytes), HEAPF32.subarray(commands >> 2, (commands >> 2) + numbers));
    },
    ow_take_update: function () { Module['overwater'].takeUpdate(); },
    ow_forget_offline: function () { Module['overwater'].forgetOffline(); },
});
