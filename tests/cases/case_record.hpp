#pragma once

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <initializer_list>
#include <string>
#include <string_view>

#include "core/matter/constants.hpp"
#include "core/record/json.hpp"
#include "core/result/assess.hpp"

/// Published runs as records, and what to hold them to. Where they come from and what each came to is in cases.md.

namespace overwater::cases {

/// A number as it is printed in a source: found values agree with it when they round to it.
struct Printed {
    const char* text;

    double value() const { return std::strtod(text, nullptr); }
    /// Half of what the last digit printed stands for.
    double half() const {
        const std::string_view all = text;
        const std::size_t power = all.find('e');
        const std::string_view digits = all.substr(0, power);
        const std::size_t point = digits.find('.');
        const auto decimals = point == std::string_view::npos ? 0.0 : static_cast<double>(digits.size() - point - 1);
        const double exponent = power == std::string_view::npos ? 0.0 : std::strtod(text + power + 1, nullptr);
        return 0.5 * std::pow(10.0, exponent - decimals);
    }
    friend bool operator==(double found, const Printed& printed) {
        return std::fabs(found - printed.value()) <= printed.half() * (1 + 1e-9);
    }
};

inline Printed printed(const char* text) { return {text}; }

struct Typed {
    Field field;
    const char* text;
};

/// A record made of what a source gives, as typed. Each assessment goes by way of the record's text, as a file would.
class CaseRecord {
public:
    CaseRecord(const char* source, const Conventions& conventions, std::initializer_list<Typed> shared,
               std::initializer_list<std::initializer_list<Typed>> runs = {{}}) {
        record_.name = source;
        record_.conventions = conventions;
        put(record_.shared, shared);
        record_.runs.clear();
        for (const auto& run : runs) {
            record_.runs.emplace_back();
            put(record_.runs.back().entries, run);
        }
    }

    /// The same with other readings, of all runs.
    CaseRecord with(std::initializer_list<Typed> changes) const {
        CaseRecord changed = *this;
        put(changed.record_.shared, changes);
        return changed;
    }
    /// The same where each run has the reading for itself.
    CaseRecord with_each(std::initializer_list<Typed> changes) const {
        CaseRecord changed = *this;
        for (Run& run : changed.record_.runs) put(run.entries, changes);
        return changed;
    }
    CaseRecord by(const Conventions& conventions) const {
        CaseRecord changed = *this;
        changed.record_.conventions = conventions;
        return changed;
    }
    const Conventions& conventions() const { return record_.conventions; }
    std::size_t runs() const { return record_.runs.size(); }

    Assessment run(std::size_t index = 0) const {
        const LoadResult loaded = record_from_json(record_to_json(record_));
        REQUIRE(loaded.record.has_value());
        REQUIRE(*loaded.record == record_);
        const auto entry_of = [&](Field field) -> const Entry& { return entry_for(*loaded.record, index, field); };
        return assess(read_all(entry_of), loaded.record->conventions);
    }

private:
    static void put(Entries& entries, std::initializer_list<Typed> list) {
        for (const auto& [field, text] : list) {
            entries.edit(field).text = text;
            entries.tidy(field);
        }
    }
    Record record_;
};

/// The value of an output in `unit`; NaN, which agrees with nothing, where there is none.
inline double value(const Assessment& run, Output output, UnitId unit) {
    return run.has(output) ? from_base(run.outcome[output], unit) : std::nan("");
}
inline double in_mmhg(const Assessment& run, Output output) {
    return value(run, output, UnitId::millimetre_of_mercury);
}
inline double in_kilopascal(const Assessment& run, Output output) { return value(run, output, UnitId::kilopascal); }
inline double in_millilitre(const Assessment& run, Output output) { return value(run, output, UnitId::millilitre); }
inline double in_mole(const Assessment& run, Output output) { return value(run, output, UnitId::mole); }
inline double litre_per_mole_of(const Assessment& run, Output output) {
    return value(run, output, UnitId::litre_per_mole);
}
inline double percent_error(const Assessment& run) { return value(run, Output::percent_error, UnitId::percent); }

/// The gas constant found, in J/(mol K) and in L atm/(mol K).
inline double gas_constant_found(const Assessment& run) {
    return value(run, Output::gas_constant, UnitId::joule_per_mole_kelvin);
}
inline double gas_constant_litre_atmosphere(const Assessment& run) { return gas_constant_found(run) / 101.325; }

/// Volume of the dry gas at standard conditions, mL.
inline double standard_millilitre(const Assessment& run) {
    return 1e3 * litre_per_mole_of(run, Output::molar_volume_standard) * in_mole(run, Output::amount_of_gas);
}
/// What p V = n R T makes of the gas, with the gas constant itself; mol.
inline double amount_by_gas_law(const Assessment& run) {
    return in_mole(run, Output::amount_of_gas) * gas_constant_found(run) / gas_constant.si();
}
/// Molar mass of the metal that goes with this amount, g/mol.
inline double molar_mass_by_gas_law(const Assessment& run) {
    return 1e3 * run.measured[Input::molar_mass] * gas_constant.si() / gas_constant_found(run);
}

inline bool says(const Assessment& run, Field field, std::string_view key) {
    for (const Check& check : run.checks) {
        if (check.field == field && check.message.key == key) return true;
    }
    return false;
}

/// The conventions most of the sources share: 0 °C and 1 atm, vapour by formula, ideal gas.
inline Conventions at_one_atmosphere() {
    Conventions conventions;
    conventions.standard = StandardConditions::zero_celsius_1_atmosphere;
    return conventions;
}
/// The same with a vapour pressure that the source looked up, against a typed accepted value.
inline Conventions with_own_vapour() {
    Conventions conventions = at_one_atmosphere();
    conventions.vapour = Conventions::Vapour::own_value;
    conventions.accepted = Conventions::Accepted::typed;
    return conventions;
}
/// V/n as collected, against a typed accepted value.
inline Conventions as_collected() {
    Conventions conventions;
    conventions.conversion = Conventions::Conversion::none;
    conventions.accepted = Conventions::Accepted::typed;
    return conventions;
}

/// What was computed from a source's readings without any code of the product, with the digits printed there.
struct Recomputed {
    const char* amount;             ///< of metal and of gas, mol
    const char* vapour;             ///< mmHg
    const char* column;             ///< mmHg
    const char* dry_mmhg;           ///< mmHg
    const char* dry_kilopascal;     ///< kPa
    const char* standard_volume;    ///< mL at 0 °C, 1 atm
    const char* molar_volume;       ///< L/mol at 0 °C, 1 atm
    const char* percent_error;      ///< from 22.414
    const char* at_100_kilopascal;  ///< L/mol at 0 °C, 100 kPa
    const char* amount_by_gas_law;  ///< mol
    const char* gas_constant;       ///< L atm/(mol K)
    const char* molar_mass;         ///< g/mol
};

/// Holds one run to it. Vapour and molar mass are by the record's conventions, all else by 0 °C and 1 atm, ideal;
/// the error is from 22.414 L/mol (the ideal gas's 22.41397 would make 0.6775 % of a printed 0.677 %).
inline void check_recomputed(const CaseRecord& record, const Recomputed& expected) {
    Conventions conventions = record.conventions();
    conventions.standard = StandardConditions::zero_celsius_1_atmosphere;
    conventions.conversion = Conventions::Conversion::standard_conditions;
    conventions.accepted = Conventions::Accepted::typed;
    const Assessment run = record.by(conventions).with({{Field::accepted_value, "22.414 L/mol"}}).run();
    CHECK(in_mole(run, Output::amount_of_metal) == printed(expected.amount));
    CHECK(in_mole(run, Output::amount_of_gas) == printed(expected.amount));
    CHECK(in_mmhg(run, Output::water_vapour_pressure) == printed(expected.vapour));
    CHECK(in_mmhg(run, Output::column_pressure) == printed(expected.column));
    CHECK(in_mmhg(run, Output::dry_gas_pressure) == printed(expected.dry_mmhg));
    CHECK(in_kilopascal(run, Output::dry_gas_pressure) == printed(expected.dry_kilopascal));
    CHECK(standard_millilitre(run) == printed(expected.standard_volume));
    CHECK(litre_per_mole_of(run, Output::molar_volume_standard) == printed(expected.molar_volume));
    CHECK(percent_error(run) == printed(expected.percent_error));
    CHECK(amount_by_gas_law(run) == printed(expected.amount_by_gas_law));
    CHECK(gas_constant_litre_atmosphere(run) == printed(expected.gas_constant));
    CHECK(molar_mass_by_gas_law(run) == printed(expected.molar_mass));
    conventions.standard = StandardConditions::zero_celsius_100_kilopascal;
    CHECK(litre_per_mole_of(record.by(conventions).run(), Output::molar_volume_standard) ==
          printed(expected.at_100_kilopascal));
}

}  // namespace overwater::cases

namespace doctest {

template <>
struct StringMaker<overwater::cases::Printed> {
    static String convert(const overwater::cases::Printed& printed) { return printed.text; }
};

}  // namespace doctest
