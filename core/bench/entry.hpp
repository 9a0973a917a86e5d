#pragma once

#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/bench/field.hpp"
#include "core/quantity/unit_table.hpp"

namespace overwater {

/// One thing a person put down. The text as typed is the reading; value, unit, figures and resolution are derived from
/// it (readings.hpp) and never stored. For a choice the text is the name of what was chosen, or empty.
struct Entry {
    std::string text;
    UnitId unit = UnitId::none;  ///< the unit chosen beside the field; none: the field's usual unit
    std::string instrument;      ///< name of the instrument chosen; empty: assumed
    std::string plus_minus;      ///< half-width as typed; empty: from the instrument
    std::string shape;           ///< "rectangular", "triangular", "normal" or empty: from the instrument
    std::vector<std::string> repeats;  ///< further readings of the same thing, as typed
    std::string kept;            ///< members of a newer record that this program does not know, as JSON text

    bool blank() const {
        return text.empty() && unit == UnitId::none && instrument.empty() && plus_minus.empty() && shape.empty() &&
               repeats.empty() && kept.empty();
    }
    friend bool operator==(const Entry&, const Entry&) = default;
};

/// The entries of one sheet of paper: those of a run, or those shared by all runs.
class Entries {
public:
    /// The entry of `field`; a blank one where nothing was put down.
    const Entry& at(Field field) const;
    /// The entry of `field`, to be changed.
    Entry& edit(Field field);
    /// Forgets an entry that has become blank, so that equal sheets compare equal.
    void tidy(Field field);
    const std::vector<std::pair<Field, Entry>>& all() const { return entries_; }
    /// Entries of a newer record whose field this program does not know, as JSON text of an object, or empty.
    const std::string& kept() const { return kept_; }
    void keep(std::string json) { kept_ = std::move(json); }
    friend bool operator==(const Entries&, const Entries&) = default;

private:
    std::vector<std::pair<Field, Entry>> entries_;
    std::string kept_;
};

/// What a field measures, the unit taken where none was chosen, and whether it may be below zero.
struct FieldInfo {
    Measure measure;
    UnitId usual_unit;
    bool shared;  ///< by all runs of a record, unless a run has one of its own
};

const FieldInfo& info(Field field);

/// The names that a choice may take, in the order they are offered; empty for a typed field.
const std::vector<std::string_view>& choices_of(Field field);

}  // namespace overwater
