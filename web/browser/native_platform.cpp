#include "web/browser/native_platform.hpp"

#include <algorithm>
#include <utility>

namespace overwater {

NativeWorld& native_world() {
    static NativeWorld world;
    return world;
}

std::vector<std::string> native_advance(double milliseconds) {
    NativeWorld& world = native_world();
    world.now_ms += milliseconds;
    std::vector<std::pair<double, std::string>> due;
    for (const auto& [name, time] : world.timers) {
        if (time <= world.now_ms) due.emplace_back(time, name);
    }
    std::sort(due.begin(), due.end());
    std::vector<std::string> names;
    for (auto& [time, name] : due) {
        world.timers.erase(name);
        names.push_back(std::move(name));
    }
    return names;
}

namespace platform {

std::optional<std::string> store_get(std::string_view key) {
    const NativeWorld& world = native_world();
    const auto found = world.store.find(key);
    if (world.reading_denied || found == world.store.end()) return std::nullopt;
    return found->second;
}

StoreResult store_put(std::string_view key, std::string_view text) {
    NativeWorld& world = native_world();
    if (world.put_result == StoreResult::ok) world.store.insert_or_assign(std::string(key), std::string(text));
    return world.put_result;
}

void store_remove(std::string_view key) { native_world().store.erase(std::string(key)); }

std::vector<std::string> store_list(std::string_view prefix) {
    const NativeWorld& world = native_world();
    std::vector<std::string> keys;
    if (world.reading_denied) return keys;
    for (const auto& [key, text] : world.store) {
        if (key.starts_with(prefix)) keys.push_back(key);
    }
    return keys;
}

void save_file(std::string_view name, std::string_view media_type, std::string_view text) {
    SavedFile file;
    file.name = name;
    file.media_type = media_type;
    file.text = text;
    native_world().files.push_back(std::move(file));
}

void print_html(std::string_view html) { native_world().printed.emplace_back(html); }
void clipboard_put(std::string_view text) { native_world().clipboard.emplace_back(text); }
void patch_mirror(std::string_view json) { native_world().patches.emplace_back(json); }

void focus(std::string_view key, int caret) {
    native_world().focused = key;
    native_world().caret = caret;
}

void scroll_to(double y) { native_world().scroll = y; }

void wake(int frames) {
    int& wanted = native_world().frames_wanted;
    wanted = std::max(wanted, frames);
}

void start_timer(std::string_view name, int milliseconds) {
    NativeWorld& world = native_world();
    world.timers.insert_or_assign(std::string(name), world.now_ms + milliseconds);
}

double now_ms() { return native_world().now_ms; }
std::string iso_time() { return native_world().iso_time; }

std::uint64_t random_bits() {
    // splitmix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014): the same
    // numbers in every run of a test.
    std::uint64_t bits = native_world().random += 0x9e3779b97f4a7c15U;
    bits = (bits ^ bits >> 30U) * 0xbf58476d1ce4e5b9U;
    bits = (bits ^ bits >> 27U) * 0x94d049bb133111ebU;
    return bits ^ bits >> 31U;
}

std::string language() { return native_world().language; }
void bring_text(std::string_view tag) { native_world().texts_wanted.emplace_back(tag); }
bool bring_second_part() { return native_world().second_part_there; }
Media media() { return native_world().media; }
std::string address_fragment() { return native_world().fragment; }
void forget_fragment() { native_world().fragment.clear(); }
void take_update() { ++native_world().updates_taken; }
void forget_offline() { ++native_world().offline_forgotten; }

}  // namespace platform

}  // namespace overwater
