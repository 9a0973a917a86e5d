#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/record.hpp"

namespace overwater {

/// One undo over the record, whatever control a change came from. Typing in one field without leaving it and without a
/// pause of a second is one step.
class Undo {
public:
    struct Place {
        Record record;
        std::string key;  ///< the control whose change this step was
    };

    /// Before a change made through `key` at `now_ms`: keeps what was there.
    void before_change(const Record& record, const std::string& key, double now_ms);
    /// Whether the last change went on with the step of the one before.
    bool continuing() const { return continuing_; }
    /// The field was left: the next change is a step of its own.
    void leave() { open_key_.clear(); }
    /// The state before the last step; `current` can be had again by redo.
    std::optional<Place> undo(const Record& current);
    std::optional<Place> redo(const Record& current);
    bool can_undo() const { return !done_.empty(); }
    bool can_redo() const { return !undone_.empty(); }
    void forget();

private:
    std::vector<Place> done_;
    std::vector<Place> undone_;
    std::string open_key_;
    double last_ms_ = 0;
    bool continuing_ = false;
};

}  // namespace overwater
