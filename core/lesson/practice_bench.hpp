#pragma once

#include <optional>
#include <vector>

#include "core/bench/tube.hpp"
#include "core/explain/gap.hpp"
#include "core/lesson/practice_code.hpp"
#include "core/matter/reaction.hpp"

/// What stands on the bench of a practice run, all of it whole numbers from the generator, and what the instruments
/// then show. Rules of generator version 1; practice.md says when they may change (never).

namespace overwater {

/// How the pressure of the air is told.
enum class PressureShown : std::uint8_t {
    aneroid_hectopascal,
    aneroid_kilopascal,
    aneroid_inch,
    mercury_column,      ///< mmHg
    report_hectopascal,  ///< a weather report, with the height of the bench
    report_inch
};

/// What differs from run to run. Errors are those of the instruments, within their limits.
struct DrawnRun {
    int share = 0;           ///< ‰ of the scale that the gas is to fill
    int level = 0;           ///< true level difference, 0.1 mm
    int level_error = 0;     ///< shown less true, 0.1 mm
    int dissolved = 0;       ///< of the hydrogen, 0.01 %
    int weighing_error = 0;  ///< true less shown, hundredths of the balance's last digit
    int length_error = 0;    ///< ribbon, true less shown, 0.1 mm
    int scale_error = 0;     ///< shown less true, 0.01 mL (tubes of 100 mL: 0.02 mL)
    int dish = 0;            ///< mass of the empty dish, 0.1 mg
    int start_gas = 0;       ///< on the scale, 0.01 mL (tubes of 100 mL: 0.02 mL)
    int start_level = 0;     ///< true level difference at the start, 0.1 mm
    int start_level_error = 0;
};

/// Something that went wrong unseen, as drawn.
struct DrawnMishap {
    Cause cause = Cause::count;
    int size = 0;  ///< in the unit that its row in practice_draw.cpp names
    int sign = 1;  ///< +1 raises the result
    int run = -1;  ///< -1: all runs
};

struct PracticeBench {
    Substance sample = Substance::magnesium;
    Acid acid = Acid::hydrochloric;
    int acid_strength = 0;  ///< 0.1 mol/L
    int capacity = 50;      ///< mL; 50 or 100
    ClosedEnd closed_end = ClosedEnd::zero;
    LiquidStands stands = LiquidStands::level;
    MassFrom mass_from = MassFrom::weighed;
    PressureKind pressure_kind = PressureKind::at_the_bench;
    PressureShown pressure_shown = PressureShown::aneroid_hectopascal;
    bool fahrenheit = false;
    bool ruler_in_centimetres = false;
    bool coarse_balance = false;  ///< 1 mg from 80 mg on; else 0.1 mg
    bool start = false;           ///< gas there at the start, read on the scale
    bool bore_given = false;
    bool purity_given = false;
    int purity = 1000;          ///< 0.1 %
    int temperature = 0;        ///< of the gas, 0.1 °C
    int temperature_error = 0;  ///< shown less true, 0.1 °C
    int pressure = 0;           ///< at the bench, or as reported for sea level, Pa
    int pressure_error = 0;     ///< Pa: shown less true; of a report: true less what follows from it
    int height = 0;             ///< m above sea level
    int outdoor = 0;            ///< °C
    int end_space = 0;          ///< true, 0.01 mL
    int end_space_error = 0;    ///< given less true, 0.01 mL
    int bore = 0;               ///< 0.1 mm
    int mass_per_metre = 0;     ///< given, 0.01 g/m
    int ribbon_error = 0;       ///< true over given less 1, 0.01 %
    std::vector<DrawnRun> runs;
    std::optional<DrawnMishap> mishap;

    bool has_column() const { return stands != LiquidStands::level; }
    bool inverted() const { return closed_end == ClosedEnd::largest; }
    /// Hundredths of a millilitre in a tenth of a division of the tube.
    int scale_step() const { return capacity == 100 ? 2 : 1; }
};

/// Draws everything, in an order that never changes.
PracticeBench draw_bench(const PracticeSettings& settings);

/// What the instruments of one run show, in steps of a tenth of a division.
struct ShownRun {
    int scale = 0;           ///< 0.01 mL, a multiple of the tube's step
    int start_scale = 0;     ///< 0.01 mL
    int level = 0;           ///< 0.1 mm
    int start_level = 0;     ///< 0.1 mm
    int length = 0;          ///< of ribbon, 0.1 mm
    int balance_digit = 1;   ///< 0.1 mg: 1 or 10
    int mass = 0;            ///< 0.1 mg
    int mass_before = 0;     ///< 0.1 mg
    int mass_after = 0;      ///< 0.1 mg
    double mishap_size = 0;  ///< base unit
};
struct ShownBench {
    int temperature = 0;  ///< 0.1 °C, or 0.2 °F
    int pressure = 0;     ///< 0.1 hPa, 0.01 kPa, 0.1 mmHg, 0.005 inHg; a report's: 0.1 hPa, 0.01 inHg
    int end_space = 0;    ///< given, 0.01 mL
    std::vector<ShownRun> runs;
};
ShownBench shown_on(const PracticeBench& bench);

}  // namespace overwater
