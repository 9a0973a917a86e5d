#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/bench/scale.hpp"
#include "core/result/assess.hpp"

namespace overwater {

/// Looks over a run that is computed already, and puts sentences below its readings: questions a careful teacher would
/// ask. Adds notes and doubts to `assessment.checks`, never a refusal; every value stays as it is.
void add_sense_checks(Assessment& assessment);

/// What the checks of one run read, and where they put their sentences.
class Remarks {
public:
    explicit Remarks(Assessment& all) : all_(all) {}

    const Assessment& run() const { return all_; }
    const Setup& setup() const { return all_.measured.setup; }
    const Readings& readings() const { return all_.readings; }
    const Reading& reading(Field field) const { return all_.readings[field]; }
    /// A number was typed and nothing refuses it.
    bool usable(Field field) const;
    /// A number was typed, whatever else is said about it.
    bool typed(Field field) const { return reading(field).there; }
    double base(Field field) const { return reading(field).base; }
    /// One of the sentences was said already.
    bool said(std::string_view key) const;

    void note(Field field, Message message) { add(field, Check::Weight::note, std::move(message)); }
    void doubt(Field field, Message message) { add(field, Check::Weight::doubt, std::move(message)); }

private:
    void add(Field field, Check::Weight weight, Message message) {
        all_.checks.push_back({field, weight, std::move(message)});
    }
    Assessment& all_;
};

/// A message with `{reading}` as it was typed: its own unit and its own decimals.
Message as_typed(std::string_view key, const Reading& reading);
/// Decimals that show a reading as it was typed.
int decimals_of(const Reading& reading);

/// Whether a number is in a span, both ends included.
constexpr bool within(double value, double lowest, double highest) { return value >= lowest && value <= highest; }

/// The other units of its measure in which the number typed would lie from `lowest` to `highest` (in the base of the
/// measure), in the order of the list of units.
std::vector<UnitId> units_that_fit(const Reading& reading, double lowest, double highest);
/// Their signs, one after the other: "hPa, mbar".
std::string signs_of(const std::vector<UnitId>& units);

/// Length of scale from the mark to the last mark before the mouth, in m.
double length_below(double mark, const Remarks& remarks, const ScaleLength& scale);

/// The reading in which a wrong mass would stand.
Field field_of_mass(const Setup& setup);

// One idea a file: check_<name>.cpp.
void check_vessel(Remarks& remarks);
void check_scale(Remarks& remarks);
void check_end_space(Remarks& remarks);
void check_start(Remarks& remarks);
void check_level(Remarks& remarks);
void check_temperature(Remarks& remarks);
void check_pressure(Remarks& remarks);
void check_vapour(Remarks& remarks);
void check_metal(Remarks& remarks);
void check_digits(Remarks& remarks);
void check_mass(Remarks& remarks);
void check_acid(Remarks& remarks);
void check_result(Remarks& remarks);
void check_doubt(Remarks& remarks);

}  // namespace overwater
