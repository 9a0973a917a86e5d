// platform.hpp in the browser: each function hands over to the one of the same purpose in shell/platform.library.js.
// Texts go as UTF-8 pointer and length; what comes back is a text of its own memory, which is released here.

#include "web/browser/platform.hpp"

#include <emscripten/emscripten.h>

#include <cstddef>
#include <cstdlib>

extern "C" {
char* ow_store_get(const char* key, std::size_t bytes);
int ow_store_put(const char* key, std::size_t key_bytes, const char* text, std::size_t text_bytes);
void ow_store_remove(const char* key, std::size_t bytes);
char* ow_store_list(const char* prefix, std::size_t bytes);
void ow_save_file(const char* name, std::size_t name_bytes, const char* type, std::size_t type_bytes, const char* text,
                  std::size_t text_bytes);
void ow_print_html(const char* html, std::size_t bytes);
void ow_clipboard_put(const char* text, std::size_t bytes);
void ow_patch_mirror(const char* json, std::size_t bytes);
void ow_focus(const char* key, std::size_t bytes, int caret);
void ow_scroll_to(double y);
void ow_wake(int frames);
void ow_start_timer(const char* name, std::size_t bytes, int milliseconds);
char* ow_iso_time();
int ow_random();
char* ow_language();
void ow_bring_text(const char* tag, std::size_t bytes);
void ow_bring_second_part();
int ow_media();
char* ow_fragment();
void ow_forget_fragment();
void ow_take_update();
void ow_forget_offline();
}

namespace overwater::platform {

namespace {

std::string taken(char* text) {
    std::string words = text == nullptr ? "" : text;
    std::free(text);
    return words;
}

}  // namespace

std::optional<std::string> store_get(std::string_view key) {
    char* text = ow_store_get(key.data(), key.size());
    if (text == nullptr) return std::nullopt;
    return taken(text);
}

StoreResult store_put(std::string_view key, std::string_view text) {
    return static_cast<StoreResult>(ow_store_put(key.data(), key.size(), text.data(), text.size()));
}

void store_remove(std::string_view key) { ow_store_remove(key.data(), key.size()); }

std::vector<std::string> store_list(std::string_view prefix) {
    const std::string lines = taken(ow_store_list(prefix.data(), prefix.size()));
    std::vector<std::string> keys;
    for (std::size_t begin = 0; begin < lines.size();) {
        std::size_t end = lines.find('\n', begin);
        if (end == std::string::npos) end = lines.size();
        keys.push_back(lines.substr(begin, end - begin));
        begin = end + 1;
    }
    return keys;
}

void save_file(std::string_view name, std::string_view media_type, std::string_view text) {
    ow_save_file(name.data(), name.size(), media_type.data(), media_type.size(), text.data(), text.size());
}

void print_html(std::string_view html) { ow_print_html(html.data(), html.size()); }

void clipboard_put(std::string_view text) { ow_clipboard_put(text.data(), text.size()); }
void patch_mirror(std::string_view json) { ow_patch_mirror(json.data(), json.size()); }
void focus(std::string_view key, int caret) { ow_focus(key.data(), key.size(), caret); }
void scroll_to(double y) { ow_scroll_to(y); }
void wake(int frames) { ow_wake(frames); }

void start_timer(std::string_view name, int milliseconds) { ow_start_timer(name.data(), name.size(), milliseconds); }

double now_ms() { return emscripten_get_now(); }
std::string iso_time() { return taken(ow_iso_time()); }

std::uint64_t random_bits() {
    const auto high = static_cast<std::uint32_t>(ow_random());
    const auto low = static_cast<std::uint32_t>(ow_random());
    return std::uint64_t{high} << 32U | low;
}

std::string language() { return taken(ow_language()); }
void bring_text(std::string_view tag) { ow_bring_text(tag.data(), tag.size()); }

bool bring_second_part() {
    ow_bring_second_part();
    return false;
}

Media media() {
    // In the order of the questions in shell/media.mjs.
    const auto bits = static_cast<unsigned>(ow_media());
    const auto bit = [bits](unsigned place) { return (bits >> place & 1U) != 0; };
    return {.dark = bit(0),
            .more_contrast = bit(1),
            .forced_colors = bit(2),
            .reduced_motion = bit(3),
            .coarse_pointer = bit(4)};
}

std::string address_fragment() { return taken(ow_fragment()); }
void forget_fragment() { ow_forget_fragment(); }
void take_update() { ow_take_update(); }
void forget_offline() { ow_forget_offline(); }

}  // namespace overwater::platform
