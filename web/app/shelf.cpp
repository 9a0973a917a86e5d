#include "web/app/shelf.hpp"

#include <algorithm>
#include <array>

#include "core/record/stored.hpp"

namespace overwater {

namespace {

constexpr std::string_view record_prefix = "overwater.record.";
constexpr std::string_view settings_key = "overwater.settings";

std::string key_of_record(const std::string& id) { return std::string(record_prefix) + id; }

}  // namespace

void Shelf::open() {
    cards_.clear();
    settings_.clear();
    unreadable_ = 0;
    if (const auto text = platform::store_get(settings_key)) {
        std::string_view rest = *text;
        while (!rest.empty()) {
            const std::string_view line = rest.substr(0, rest.find('\n'));
            rest.remove_prefix(std::min(rest.size(), line.size() + 1));
            const std::size_t equals = line.find('=');
            if (equals == std::string_view::npos) continue;
            settings_.emplace_back(line.substr(0, equals), line.substr(equals + 1));
        }
    }
    for (const std::string& key : platform::store_list(record_prefix)) {
        const std::string id = key.substr(record_prefix.size());
        if (const auto record = load(id)) {
            note(*record);
        } else {
            ++unreadable_;
        }
    }
    std::stable_sort(cards_.begin(), cards_.end(), [](const Card& a, const Card& b) { return a.saved > b.saved; });
}

std::optional<Record> Shelf::load(const std::string& id) {
    const auto text = platform::store_get(key_of_record(id));
    if (!text) return std::nullopt;
    auto stored = stored_to(*text);
    if (!stored) return std::nullopt;
    stored->record.id = id;
    std::erase_if(revisions_, [&](const auto& row) { return row.first == id; });
    revisions_.emplace_back(id, stored->revision);
    return std::move(stored->record);
}

platform::StoreResult Shelf::keep(Record& record) {
    record.saved = platform::iso_time();
    auto row = std::find_if(revisions_.begin(), revisions_.end(), [&](const auto& r) { return r.first == record.id; });
    if (row == revisions_.end()) row = revisions_.insert(revisions_.end(), {record.id, 0});
    const auto result =
        platform::store_put(key_of_record(record.id), stored_from(record, row->second + 1, record.saved));
    if (result != platform::StoreResult::ok) return result;
    ++row->second;
    note(record);
    return result;
}

void Shelf::note(const Record& record) {
    Card card{record.id, record.name, record.saved, record.invented};
    // A record keeps its place while the page is open: a list that moves while one types in it is hard to follow.
    const auto place = std::find_if(cards_.begin(), cards_.end(), [&](const Card& c) { return c.id == record.id; });
    if (place != cards_.end()) {
        *place = std::move(card);
    } else {
        cards_.insert(cards_.begin(), std::move(card));
    }
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

std::string Shelf::setting(std::string_view name) const {
    for (const auto& [key, value] : settings_) {
        if (key == name) return value;
    }
    return {};
}

void Shelf::set_setting(std::string_view name, std::string_view value) {
    if (setting(name) == value) return;
    std::erase_if(settings_, [&](const auto& row) { return row.first == name; });
    settings_.emplace_back(name, value);
    std::string text;
    for (const auto& [key, kept] : settings_) text += key + '=' + kept + '\n';
    platform::store_put(settings_key, text);
}

}  // namespace overwater
