// Prints what core/quantity and core/matter compute, for compare_matter.py to check against independent libraries.
// Lines: kind,argument,value[,...]; numbers with 17 digits.

#include <cstdint>
#include <cstdio>
#include <string>

#include "core/matter/constants.hpp"
#include "core/matter/elements.hpp"
#include "core/matter/mercury.hpp"
#include "core/matter/water.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/number_text.hpp"
#include "core/quantity/unit_table.hpp"

using namespace overwater;

namespace {

void print_water() {
    for (int tenth = 0; tenth <= 1000; ++tenth) {
        const double celsius = tenth / 10.0;
        const auto temperature = Temperature<>::celsius(celsius);
        std::printf("vapour_pressure,%.17g,%.17g\n", celsius, water_vapour_pressure(temperature).si());
        if (water_density_range.contains(celsius)) {
            std::printf("water_density,%.17g,%.17g\n", celsius, water_density(temperature).si());
        }
        std::printf("mercury_density,%.17g,%.17g\n", celsius, mercury_density(temperature).si());
    }
}

void print_elements() {
    for (const AtomicWeight& row : elements()) {
        std::printf("atomic_weight,%s,%.17g,%.17g\n", std::string(row.symbol).c_str(), row.value, row.plus_minus);
    }
}

void print_units_and_constants() {
    for (std::size_t i = 1; i < unit_count; ++i) {
        const UnitInfo& row = info(static_cast<UnitId>(i));
        std::printf("unit,%s,%.17g\n", std::string(row.key).c_str(), to_base(1.0, row.id));
    }
    std::printf("constant,gas_constant,%.17g\n", gas_constant.si());
    std::printf("constant,standard_gravity,%.17g\n", standard_gravity.si());
    std::printf("constant,standard_atmosphere,%.17g\n", standard_atmosphere.si());
    std::printf("constant,standard_state_pressure,%.17g\n", standard_state_pressure.si());
    std::printf("constant,avogadro_constant,%.17g\n", avogadro_constant);
    std::printf("constant,boltzmann_constant,%.17g\n", boltzmann_constant);
}

/// Decimal texts of up to 15 digits, many of them ties, read and rounded both ways.
void print_numbers() {
    std::uint64_t state = 88172645463325252u; // xorshift64
    const auto next = [&state] {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        return state;
    };
    for (int i = 0; i < 20000; ++i) {
        const int digits = 1 + static_cast<int>(next() % 15);
        std::string text = next() % 2 == 0 ? "-" : "";
        for (int d = 0; d < digits; ++d) text += static_cast<char>('0' + next() % 10);
        if (next() % 2 == 0) text.back() = '5';
        const int exponent = static_cast<int>(next() % 60) - 30;
        const int place = exponent + static_cast<int>(next() % 4);
        text += 'e' + std::to_string(exponent);
        const double value = parse_number(text, Measure::number).value;
        std::printf("number,%s,%.17g,%d,%.17g,%.17g\n", text.c_str(), value, place,
                    round_to_place(value, place, Rounding::half_up),
                    round_to_place(value, place, Rounding::half_to_even));
    }
}

} // namespace

int main() {
    print_water();
    print_elements();
    print_units_and_constants();
    print_numbers();
    return 0;
}
