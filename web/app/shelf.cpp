#include "web/app/shelf.hpp"

#include <algorithm>

#include "core/quantity/short_sort.hpp"
#include "core/record/json.hpp"
#include "web/app/files_scan.hpp"

namespace overwater {

namespace {

constexpr std::string_view own_prefix = "overwater.";
constexpr std::string_view record_prefix = "overwater.record.";
constexpr std::string_view conventions_prefix = "overwater.conventions.";

template <class Row>
auto row_of(std::vector<Row>& rows, const std::string& id) {
    return std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.id == id; });
}

}  // namespace

std::string Shelf::key_of(const std::string& id) { return std::string(record_prefix) + id; }

std::string Shelf::id_of(std::string_view key) {
    return key.starts_with(record_prefix) ? std::string(key.substr(record_prefix.size())) : std::string();
}

void Shelf::open() {
    cards_.clear();
    damaged_.clear();
    read_settings();
    for (const std::string& key : platform::store_list(own_prefix)) {
        if (const std::string id = id_of(key); !id.empty()) {
            Known known;
            if (const auto loaded = read(id, &known)) {
                note(loaded->record, loaded->newer, false);
            } else {
                damaged_.push_back(key);
            }
        } else if (key.starts_with(conventions_prefix)) {
            const auto text = platform::store_get(key);
            if (text && !stored_to(*text)) damaged_.push_back(key);
        }
    }
    short_sort(cards_.begin(), cards_.end(), [](const Card& a, const Card& b) { return a.saved > b.saved; });
}

std::optional<Shelf::Loaded> Shelf::read(const std::string& id, Known* known) const {
    const auto text = platform::store_get(key_of(id));
    if (!text) return std::nullopt;
    auto stored = stored_to(*text);
    if (!stored) return std::nullopt;
    stored->record.id = id;
    if (stored->record.saved.empty()) stored->record.saved = stored->saved;
    if (known != nullptr) *known = {id, stored->revision, *text};
    Loaded loaded;
    loaded.record = std::move(stored->record);
    loaded.newer = stored->newer;
    return loaded;
}

std::optional<Shelf::Loaded> Shelf::load(const std::string& id) {
    Loaded loaded;
    if (const Held* here = held(id)) {
        loaded.record = here->record;
        loaded.newer = !here->as_it_came.empty();
        return loaded;
    }
    Known known;
    auto read_now = read(id, &known);
    if (read_now) known_of(id) = std::move(known);
    return read_now;
}

Shelf::Kept Shelf::keep(Record& record) {
    record.saved = platform::iso_time();
    const std::int64_t next = revision(record.id) + 1;
    return write(record, stored_from(record, next, record.saved), next, {});
}

Shelf::Kept Shelf::keep_as_it_came(const Record& record, std::string_view json) {
    // Not by way of Record, which knows less than a newer program wrote.
    std::string text = R"({"schema":)" + std::to_string(record_version + 1) + R"(,"app":"","revision":1,"saved":")" +
                       platform::iso_time() + R"(","data":)";
    text.append(json).append("}");
    Record listed = record;
    if (listed.saved.empty()) listed.saved = platform::iso_time();
    return write(listed, std::move(text), 1, json);
}

Shelf::Kept Shelf::write(const Record& record, std::string text, std::int64_t next, std::string_view as_it_came) {
    Kept why = Kept::not_kept;
    if (keeping_) {
        const std::string key = key_of(record.id);
        // Storage is shared with other windows, so what lies there is looked at before each write.
        if (const auto there = platform::store_get(key); there && !knows(record.id, *there)) return Kept::conflict;
        const auto result = platform::store_put(key, text);
        if (result == platform::StoreResult::ok) {
            known_of(record.id) = {record.id, next, std::move(text)};
            std::erase_if(held_, [&](const Held& h) { return h.record.id == record.id; });
            quiet_ = false;
            note(record, !as_it_came.empty(), false);
            return Kept::kept;
        }
        why = result == platform::StoreResult::full ? Kept::full : Kept::denied;
    }
    hold(record, why, std::string(as_it_came));
    return why;
}

void Shelf::hold(const Record& record, Kept why, std::string as_it_came) {
    std::erase_if(held_, [&](const Held& h) { return h.record.id == record.id; });
    const bool newer = !as_it_came.empty();
    Held held;
    held.record = record;
    held.why = why;
    held.as_it_came = std::move(as_it_came);
    held_.push_back(std::move(held));
    if (why == Kept::deleted_elsewhere) std::erase_if(known_, [&](const Known& k) { return k.id == record.id; });
    note(record, newer, true);
}

void Shelf::let_go(const std::string& id) {
    std::erase_if(held_, [&](const Held& h) { return h.record.id == id; });
    std::erase_if(known_, [&](const Known& k) { return k.id == id; });
    look_again(id);
}

void Shelf::look_again(const std::string& id) {
    if (held(id) != nullptr) return;
    const std::string key = key_of(id);
    std::erase(damaged_, key);
    if (const auto loaded = read(id, nullptr)) {
        note(loaded->record, loaded->newer, false);
        return;
    }
    std::erase_if(cards_, [&](const Card& card) { return card.id == id; });
    if (platform::store_get(key)) damaged_.push_back(key);
}

Shelf::Kept Shelf::state_of(const std::string& id) const {
    if (const Held* here = held(id)) return here->why;
    if (has_stored(id)) return Kept::kept;
    return keeping_ ? Kept::nothing_yet : Kept::not_kept;
}

std::optional<std::string> Shelf::file_text(const std::string& id) {
    if (const Held* here = held(id)) {
        return here->as_it_came.empty() ? record_to_json(here->record) : here->as_it_came;
    }
    const auto loaded = read(id, nullptr);
    if (!loaded) return std::nullopt;
    if (!loaded->newer) return record_to_json(loaded->record);
    const auto text = platform::store_get(key_of(id));
    const auto data = text ? member_text(*text, "data") : std::nullopt;
    return data ? std::optional<std::string>(*data) : std::nullopt;
}

Shelf::Removed Shelf::remove(const std::string& id) {
    Removed removed;
    removed.key = key_of(id);
    removed.id = id;
    if (const auto card = row_of(cards_, id); card != cards_.end()) removed.name = card->name;
    removed.text = platform::store_get(removed.key);
    if (const Held* here = held(id)) removed.held = *here;
    if (removed.text) platform::store_remove(removed.key);
    let_go(id);
    return removed;
}

Shelf::Removed Shelf::remove_damaged(const std::string& key) {
    Removed removed;
    removed.key = key;
    removed.text = platform::store_get(key);
    platform::store_remove(key);
    std::erase(damaged_, key);
    if (key == settings_key) settings_damaged_ = false;
    return removed;
}

std::string Shelf::put_back(const Removed& removed) {
    std::string id = removed.id;
    if (id.empty()) {
        if (removed.text) platform::store_put(removed.key, *removed.text);
        open();
        return id;
    }
    // Another window may have kept its own state meanwhile.
    const auto there = platform::store_get(removed.key);
    if (there && there != removed.text) id = new_id();
    if (removed.text && platform::store_put(key_of(id), *removed.text) != platform::StoreResult::ok && !removed.held) {
        if (auto stored = stored_to(*removed.text)) {
            stored->record.id = id;
            const auto data = stored->newer ? member_text(*removed.text, "data") : std::nullopt;
            hold(stored->record, Kept::denied, std::string(data.value_or(std::string_view())));
        }
    }
    if (removed.held) {
        Held back = *removed.held;
        back.record.id = id;
        hold(back.record, back.why, back.as_it_came);
    }
    look_again(id);
    return id;
}

void Shelf::note(const Record& record, bool newer, bool in_memory) {
    Card card;
    card.id = record.id;
    card.name = record.name;
    card.saved = record.saved;
    card.invented = record.invented;
    card.newer = newer;
    card.held = in_memory;
    // A record keeps its place while the page is open: a list that moves while one types in it is hard to follow.
    if (const auto place = row_of(cards_, card.id); place != cards_.end()) {
        *place = std::move(card);
    } else {
        cards_.insert(cards_.begin(), std::move(card));
    }
}

void Shelf::forget_results() {
    for (Card& card : cards_) card.counted = false;
}

void Shelf::set_result(const std::string& id, std::string words) {
    if (const auto card = row_of(cards_, id); card != cards_.end()) {
        card->result = std::move(words);
        card->counted = true;
    }
}

const Shelf::Known* Shelf::known(const std::string& id) const {
    const auto row = std::find_if(known_.begin(), known_.end(), [&](const Known& k) { return k.id == id; });
    return row == known_.end() ? nullptr : &*row;
}

Shelf::Known& Shelf::known_of(const std::string& id) {
    const auto row = row_of(known_, id);
    return row == known_.end() ? known_.emplace_back() : *row;
}

const Shelf::Held* Shelf::held(const std::string& id) const {
    const auto row = std::find_if(held_.begin(), held_.end(), [&](const Held& h) { return h.record.id == id; });
    return row == held_.end() ? nullptr : &*row;
}

bool Shelf::knows(const std::string& id, std::string_view text) const {
    const Known* row = known(id);
    return row != nullptr && row->text == text;
}

std::int64_t Shelf::revision(const std::string& id) const {
    const Known* row = known(id);
    return row == nullptr ? 0 : row->revision;
}

bool Shelf::has_stored(const std::string& id) const { return known(id) != nullptr; }

}  // namespace overwater
