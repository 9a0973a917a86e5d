#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/record.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

/// The records kept on this computer, each under a key of its own, and which of them was open last.
class Shelf {
public:
    struct Card {
        std::string id;
        std::string name;
        std::string saved;
        bool invented = false;
    };

    /// Reads what is there; texts that are no records are left alone and counted.
    void open();
    const std::vector<Card>& cards() const { return cards_; }
    int unreadable() const { return unreadable_; }
    std::optional<Record> load(const std::string& id);
    /// Writes at once, before it returns.
    platform::StoreResult keep(Record& record);
    static std::string new_id();

    /// A remembered choice of this computer: the page, the theme, the record last open.
    std::string setting(std::string_view name) const;
    void set_setting(std::string_view name, std::string_view value);

private:
    void note(const Record& record);
    std::vector<Card> cards_;  ///< newest first
    std::vector<std::pair<std::string, std::string>> settings_;
    std::vector<std::pair<std::string, long long>> revisions_;
    int unreadable_ = 0;
};

}  // namespace overwater
