#include "core/explain/conversion.hpp"

#include <algorithm>
#include <cmath>

#include "core/explain/figures.hpp"
#include "core/explain/symbols.hpp"
#include "core/result/outcome.hpp"

namespace overwater {

namespace {

using Kind = Formula::Kind;

constexpr int factor_figures = 7;

bool is_power_of_ten(double ratio) {
    const double power = std::log10(ratio);
    return std::fabs(power - std::round(power)) < 1e-12;
}

double ratio_of(UnitId from, UnitId to) { return info(from).factor / info(to).factor; }

Formula unit_leaf(UnitId unit) { return Formula::leaf(Kind::unit, std::string(info(unit).symbol)); }
Formula number_leaf(const std::string& number) { return Formula::leaf(Kind::number, number); }
Formula sign(const char* text) { return Formula::leaf(Kind::operation, text); }
Formula fraction(Formula above, Formula below) {
    return Formula::of(Kind::fraction, {std::move(above), std::move(below)});
}

void put(Formula& row, const Written& written) {
    row.children.push_back(number_leaf(written.number));
    row.children.push_back(unit_leaf(written.unit));
}

/// A factor without zeros at its end: 25.4, 3.386389.
std::string factor_text(double factor, const Conventions& conventions) {
    return without_end_zeros(format_significant(factor, factor_figures, conventions.decimal_sign),
                             conventions.decimal_sign);
}

/// How the number is turned into the one in the other unit; an empty row where only the decimal sign moves.
Formula reckoning(const Written& from, const Written& to, const Conventions& conventions) {
    Formula row = Formula::of(Kind::row, {});
    Formula number = number_leaf(from.number);
    const auto decimal = [&](double value, int decimals) {
        return number_leaf(format_fixed(value, decimals, conventions.decimal_sign));
    };
    if (from.unit == UnitId::fahrenheit) {
        row.children.push_back(
            fraction(Formula::of(Kind::row, {number, sign("−"), number_leaf("32")}), decimal(1.8, 1)));
        return row;
    }
    if (from.unit == UnitId::kelvin) {
        row.children = {number, sign("−"), decimal(celsius_zero_in_kelvin, 2)};
        return row;
    }
    if (only_moves_the_point(from.unit, to.unit)) return row;
    // By the number that defines the unit: 133.3224 Pa are a millimetre of mercury, whichever way one goes.
    if (is_power_of_ten(info(from.unit).factor)) {
        row.children.push_back(
            fraction(number, number_leaf(factor_text(1 / ratio_of(from.unit, to.unit), conventions))));
        return row;
    }
    row.children = {number, sign("×"), number_leaf(factor_text(ratio_of(from.unit, to.unit), conventions))};
    return row;
}

}  // namespace

UnitId unit_in_formulas(Measure measure, UnitId pressure_unit, const Conventions& conventions) {
    const Conventions::VolumeUnit by = conventions.volume_unit;
    switch (measure) {
        case Measure::mass: return UnitId::gram;
        case Measure::length: return UnitId::metre;
        case Measure::volume: return named_unit(UnitId::millilitre, by);
        case Measure::pressure: return pressure_unit;
        case Measure::temperature: return UnitId::celsius;
        case Measure::density: return UnitId::kilogram_per_cubic_metre;
        case Measure::amount: return UnitId::millimole;
        case Measure::molar_mass: return UnitId::gram_per_mole;
        case Measure::molar_volume: return named_unit(UnitId::litre_per_mole, by);
        case Measure::concentration: return named_unit(UnitId::mole_per_litre, by);
        case Measure::linear_density: return UnitId::gram_per_metre;
        case Measure::molar_entropy: return UnitId::joule_per_mole_kelvin;
        case Measure::fraction: return UnitId::percent;
        case Measure::number: break;
    }
    return UnitId::none;
}

bool only_moves_the_point(UnitId from, UnitId to) {
    return info(from).offset == info(to).offset && is_power_of_ten(ratio_of(from, to));
}

int decimals_in(const Reading& reading, UnitId unit) {
    if (info(reading.unit).measure == info(unit).measure && only_moves_the_point(reading.unit, unit)) {
        const int moved = static_cast<int>(std::lround(std::log10(ratio_of(reading.unit, unit))));
        return std::clamp(-(reading.last_place + moved), 0, 12);
    }
    const double resolution = std::pow(10.0, reading.last_place) * info(reading.unit).factor;
    return decimals_for(from_base(reading.base, unit), figures_of({false, resolution}, reading.base) + 1);
}

Formula conversion_line(const Written& from, const Written& to, const Conventions& conventions) {
    Formula row = Formula::of(Kind::row, {});
    put(row, from);
    row.children.push_back(sign("="));
    const Formula way = reckoning(from, to, conventions);
    if (!way.children.empty()) {
        row.children.insert(row.children.end(), way.children.begin(), way.children.end());
        row.children.push_back(unit_leaf(to.unit));
        row.children.push_back(sign("="));
    }
    put(row, to);
    return row;
}

Formula water_weighed_line(const Written& mass, double density, const Written& volume, const Conventions& conventions) {
    Formula above = Formula::of(Kind::row, {});
    put(above, mass);
    Formula below = Formula::of(Kind::row, {});
    const double grams_per_millilitre = from_base(density, UnitId::gram_per_millilitre);
    below.children.push_back(number_leaf(format_fixed(grams_per_millilitre, 4, conventions.decimal_sign)));
    const bool cubic = conventions.volume_unit == Conventions::VolumeUnit::cm3;
    below.children.push_back(Formula::leaf(Kind::unit, cubic ? "g/cm³" : "g/mL"));
    Formula row = Formula::of(Kind::row, {fraction(std::move(above), std::move(below)), sign("=")});
    put(row, volume);
    return row;
}

}  // namespace overwater
