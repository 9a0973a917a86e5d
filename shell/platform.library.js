// @ts-check
// The functions that web/browser/browser_platform.cpp calls. Each hands over to the shell's object of the same purpose,
// given to the module as `overwater` (host.mjs). Texts come as UTF-8 pointer and length, and go as new memory.

mergeInto(LibraryManager.library, {
    ow_store_get__deps: ['$stringToNewUTF8'],
    ow_store_get: function (/** @type {number} */ key, /** @type {number} */ bytes) {
        var text = Module['overwater'].storeGet(UTF8ToString(key, bytes));
        return text === null ? 0 : stringToNewUTF8(text);
    },
    ow_store_put: function (/** @type {number} */ key, /** @type {number} */ keyBytes, /** @type {number} */ text, /** @type {number} */ textBytes) {
        return Module['overwater'].storePut(UTF8ToString(key, keyBytes), UTF8ToString(text, textBytes));
    },
    ow_store_remove: function (/** @type {number} */ key, /** @type {number} */ bytes) {
        Module['overwater'].storeRemove(UTF8ToString(key, bytes));
    },
    ow_store_list__deps: ['$stringToNewUTF8'],
    ow_store_list: function (/** @type {number} */ prefix, /** @type {number} */ bytes) {
        return stringToNewUTF8(Module['overwater'].storeList(UTF8ToString(prefix, bytes)).join('\n'));
    },
    ow_save_file: function (/** @type {number} */ name, /** @type {number} */ nameBytes, /** @type {number} */ type, /** @type {number} */ typeBytes,
                            /** @type {number} */ text, /** @type {number} */ textBytes) {
        Module['overwater'].saveFile(UTF8ToString(name, nameBytes), UTF8ToString(type, typeBytes), UTF8ToString(text, textBytes));
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
    ow_iso_time__deps: ['$stringToNewUTF8'],
    ow_iso_time: function () { return stringToNewUTF8(Module['overwater'].isoTime()); },
    ow_random: function () { return Module['overwater'].random(); },
    ow_language__deps: ['$stringToNewUTF8'],
    ow_language: function () { return stringToNewUTF8(Module['overwater'].language()); },
    ow_media: function () { return Module['overwater'].media(); },
    ow_fragment__deps: ['$stringToNewUTF8'],
    ow_fragment: function () { return stringToNewUTF8(Module['overwater'].fragment()); },
    ow_forget_fragment: function () { Module['overwater'].forgetFragment(); },
    ow_take_update: function () { Module['overwater'].takeUpdate(); },
    ow_forget_offline: function () { Module['overwater'].forgetOffline(); },
});
