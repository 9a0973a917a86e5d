#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/record/record.hpp"
#include "core/record/stored.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

/// The records kept on this computer, each under a key of its own, and which of them was open last. There is no index:
/// the list is made from the records themselves, once when the page opens and then by each change, so it can never
/// disagree with them. What storage refuses, or what is not to be kept, is held in memory instead.
class Shelf {
public:
    enum class Kept : std::uint8_t {
        nothing_yet,  ///< neither stored nor held: the example as it was made
        kept,
        full,
        denied,
        not_kept,           ///< by the person's wish
        deleted_elsewhere,  ///< by another window
        conflict            ///< another window wrote meanwhile: nothing was written
    };
    struct Card {
        std::string id;
        std::string name;
        std::string saved;
        bool invented = false;
        bool newer = false;
        bool held = false;     ///< in memory only
        std::string result;    ///< words, made when first listed
        bool counted = false;  ///< `result` is there
    };
    struct Loaded {
        Record record;
        bool newer = false;  ///< made by a newer program: to be read, not to be written
    };
    struct Held {
        Record record;
        Kept why = Kept::not_kept;
        std::string as_it_came;  ///< JSON of a newer program's record; else empty
    };
    /// What a deletion took away.
    struct Removed {
        std::string key;
        std::string id;  ///< empty: no record, a text that could not be read
        std::string name;
        std::optional<std::string> text;
        std::optional<Held> held;
        bool was_shown = false;
    };

    /// Reads what is there; texts that are no records are left alone and named.
    void open();
    const std::vector<Card>& cards() const { return cards_; }
    void set_result(const std::string& id, std::string words);
    /// The words of all results are to be made again.
    void forget_results();
    /// Keys of ours whose text could not be read.
    const std::vector<std::string>& damaged() const { return damaged_; }
    int unreadable() const { return static_cast<int>(damaged_.size()); }

    std::optional<Loaded> load(const std::string& id);
    /// Writes at once, before it returns, unless another window has written since this one last looked.
    Kept keep(Record& record);
    /// Keeps the text of a newer program's record letter for letter.
    Kept keep_as_it_came(const Record& record, std::string_view json);
    Kept state_of(const std::string& id) const;
    /// The record's JSON for a file; of a newer program's record what came.
    std::optional<std::string> file_text(const std::string& id);
    Removed remove(const std::string& id);
    Removed remove_damaged(const std::string& key);
    /// Gives back what `remove` took; the id under which it lies now.
    std::string put_back(const Removed& removed);

    // Other windows
    /// Whether `text` is what this window last read or wrote under the record's key.
    bool knows(const std::string& id, std::string_view text) const;
    std::int64_t revision(const std::string& id) const;
    void hold(const Record& record, Kept why, std::string as_it_came = {});
    /// This window's state of the record is no longer that of the key.
    void let_go(const std::string& id);
    /// Reads a record's card again, as another window has changed it.
    void look_again(const std::string& id);

    // This computer
    bool keeping() const { return keeping_; }
    /// Turned off: nothing is written from now on.
    void set_keeping(bool on) { keeping_ = on; }
    /// Writes what is held in memory.
    void write_held();
    bool has_stored(const std::string& id) const;
    /// Removes what lies in storage of a record that goes on in memory.
    void remove_stored(const std::string& id);
    /// Removes every key of ours and forgets everything; nothing is written before the next record is kept.
    void finish();
    /// Another window removed everything.
    void be_quiet() { quiet_ = true; }

    static std::string new_id();
    static std::string key_of(const std::string& id);
    /// The id of a record's key; empty for other keys.
    static std::string id_of(std::string_view key);

    /// A remembered choice of this computer: the page, the theme, the record last open.
    std::string setting(std::string_view name) const;
    void set_setting(std::string_view name, std::string_view value);
    /// Reads what another window wrote; false where this window's own settings are not in storage.
    bool look_at_settings();

private:
    static constexpr std::string_view settings_key = "overwater.settings";

    struct Known {
        std::string id;
        std::int64_t revision = 0;
        std::string text;
    };
    std::optional<Loaded> read(const std::string& id, Known* known) const;
    const Known* known(const std::string& id) const;
    Known& known_of(const std::string& id);
    const Held* held(const std::string& id) const;
    Kept write(const Record& record, std::string text, std::int64_t revision, std::string_view as_it_came);
    void note(const Record& record, bool newer, bool in_memory);
    void read_settings();

    std::vector<Card> cards_;  ///< newest first as the page opens; then each keeps its place
    std::vector<Held> held_;
    std::vector<Known> known_;
    std::vector<std::string> damaged_;
    std::vector<std::pair<std::string, std::string>> settings_;
    bool settings_damaged_ = false;
    bool settings_unwritten_ = false;  ///< changed while nothing was to be written
    bool keeping_ = true;
    bool quiet_ = false;
};

}  // namespace overwater
