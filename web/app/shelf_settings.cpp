// What belongs to this computer rather than to a record: its settings, whether anything is kept, and leaving it clean.

#include <algorithm>
#include <array>

#include "web/app/shelf.hpp"

namespace overwater {

namespace {

constexpr std::size_t longest_settings = 100'000;

/// The settings in a text of lines `name=value`; nothing where it holds anything else.
std::optional<std::vector<std::pair<std::string, std::string>>> settings_in(std::string_view text) {
    std::vector<std::pair<std::string, std::string>> settings;
    if (text.size() > longest_settings) return std::nullopt;
    while (!text.empty()) {
        const std::string_view line = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(text.size(), line.size() + 1));
        const std::size_t equals = line.find('=');
        if (equals == std::string_view::npos || equals == 0) return std::nullopt;
        const auto sign_of_name = [](char c) { return (c >= 'a' && c <= 'z') || c == '_'; };
        if (!std::all_of(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(equals), sign_of_name)) {
            return std::nullopt;
        }
        settings.emplace_back(line.substr(0, equals), line.substr(equals + 1));
    }
    return settings;
}

}  // namespace

void Shelf::read_settings() {
    const auto text = platform::store_get(settings_key);
    if (!text) return;
    auto settings = settings_in(*text);
    settings_damaged_ = !settings;
    if (settings) {
        settings_ = std::move(*settings);
    } else if (std::find(damaged_.begin(), damaged_.end(), settings_key) == damaged_.end()) {
        damaged_.emplace_back(settings_key);
    }
}

std::string Shelf::setting(std::string_view name) const {
    for (const auto& [key, value] : settings_) {
        if (key == name) return value;
    }
    return {};
}

void Shelf::set_setting(std::string_view name, std::string_view value) {
    const bool writes = keeping_ && !quiet_ && !settings_damaged_;
    if (setting(name) == value && !(writes && settings_unwritten_)) return;
    // Another window may have changed another setting.
    if (writes && !settings_unwritten_) read_settings();
    std::erase_if(settings_, [&](const auto& row) { return row.first == name; });
    settings_.emplace_back(name, value);
    settings_unwritten_ = !writes;
    if (!writes || settings_damaged_) return;
    std::string text;
    for (const auto& [key, kept] : settings_) text += key + '=' + kept + '\n';
    platform::store_put(settings_key, text);
}

bool Shelf::look_at_settings() {
    if (settings_unwritten_ || quiet_) return false;
    read_settings();
    return true;
}

void Shelf::write_held() {
    for (const Held& held : std::vector<Held>(held_)) {
        Record record = held.record;
        const auto again = [&] {
            return held.as_it_came.empty() ? keep(record) : keep_as_it_came(record, held.as_it_came);
        };
        if (again() == Kept::conflict) {
            let_go(record.id);
            record.id = new_id();
            again();
        }
    }
}

void Shelf::remove_stored(const std::string& id) {
    platform::store_remove(key_of(id));
    std::erase_if(known_, [&](const Known& k) { return k.id == id; });
}

void Shelf::finish() {
    // Other pages may share this storage: only what begins with our name is ours.
    for (const std::string& key : platform::store_list("overwater.")) platform::store_remove(key);
    const bool keeping = keeping_;
    *this = Shelf();
    keeping_ = keeping;
    quiet_ = true;
}

std::string Shelf::new_id() {
    constexpr std::string_view letters = "abcdefghijkmnpqrstuvwxyz23456789";
    std::uint64_t bits = platform::random_bits();
    std::string id;
    for (int i = 0; i < 12; ++i) {
        id += letters[bits % letters.size()];
        bits /= letters.size();
    }
    return id;
}

}  // namespace overwater
