#include <algorithm>
#include <array>

#include "core/lesson/practice_bench.hpp"
#include "core/result/random.hpp"

// Every draw is made, in this order, whether the run needs it or not. Numbers are whole, so that nothing can differ
// between machines.

namespace overwater {

namespace {

class Draws {
public:
    explicit Draws(const PracticeSettings& s) : random_(seed_of(s)) {}

    /// Any whole number from `low` to `high`, both included: the upper 32 bits of a word, scaled.
    int whole(int low, int high) {
        const std::uint64_t span = static_cast<std::uint64_t>(high - low) + 1;
        return low + static_cast<int>(((random_.next()[0] >> 32) * span) >> 32);
    }
    /// From -half to half, small ones likelier.
    int triangle(int half) {
        const int first = whole(0, half);
        const int second = whole(0, half);
        return first - second;
    }

private:
    static std::uint64_t seed_of(const PracticeSettings& s) {
        const int kind = s.version * 3 + static_cast<int>(s.difficulty);
        return (static_cast<std::uint64_t>(kind) * practice_seeds + static_cast<std::uint64_t>(s.seed)) *
                   practice_students +
               static_cast<std::uint64_t>(s.student);
    }
    Random random_;
};

/// Which of the kinds a bench is; each number decides one thing.
struct Picks {
    int tube, stands, mass, barometer, metal, acid, units, start, runs, purity;
};
Picks draw_picks(Draws& d) {
    Picks p{};
    p.tube = d.whole(0, 7);
    p.stands = d.whole(0, 7);
    p.mass = d.whole(0, 7);
    p.barometer = d.whole(0, 7);
    p.metal = d.whole(0, 5);
    p.acid = d.whole(0, 3);
    p.units = d.whole(0, 5);
    p.start = d.whole(0, 3);
    p.runs = d.whole(0, 5);
    p.purity = d.whole(0, 2);
    return p;
}

void set_easy(PracticeBench& b, const Picks& p) {
    b.capacity = p.tube < 4 ? 50 : 100;
    b.pressure_shown = p.barometer < 4 ? PressureShown::aneroid_hectopascal : PressureShown::aneroid_kilopascal;
    b.runs.resize(1);
}

void set_usual(PracticeBench& b, const Picks& p) {
    if (p.tube < 6) b.closed_end = ClosedEnd::largest;
    b.capacity = p.tube == 7 ? 100 : 50;
    b.stands = p.stands < 5   ? LiquidStands::higher_inside
               : p.stands < 7 ? LiquidStands::level
                              : LiquidStands::higher_outside;
    if (p.mass >= 6) b.mass_from = MassFrom::ribbon;
    b.pressure_shown = p.barometer < 3   ? PressureShown::aneroid_hectopascal
                       : p.barometer < 5 ? PressureShown::aneroid_kilopascal
                                         : PressureShown::mercury_column;
    b.runs.resize(p.runs < 4 ? 1 : 2);
}

void set_hard(PracticeBench& b, const Picks& p) {
    b.sample = p.metal < 2 ? Substance::magnesium : p.metal < 4 ? Substance::zinc : Substance::aluminium;
    if (p.acid == 0 && b.sample != Substance::aluminium) b.acid = Acid::sulfuric;
    b.closed_end = ClosedEnd::largest;
    b.capacity = p.tube < 5 ? 50 : 100;
    b.start = p.start < 2;
    b.bore_given = p.start == 2;
    b.stands = b.start || p.stands < 6 ? LiquidStands::higher_inside : LiquidStands::higher_outside;
    if (p.mass < 4) b.mass_from = MassFrom::by_difference;
    constexpr std::array shown{PressureShown::aneroid_inch,       PressureShown::aneroid_inch,
                               PressureShown::mercury_column,     PressureShown::mercury_column,
                               PressureShown::report_inch,        PressureShown::report_hectopascal,
                               PressureShown::report_hectopascal, PressureShown::report_hectopascal};
    b.pressure_shown = shown[static_cast<std::size_t>(p.barometer)];
    if (p.barometer >= 4) b.pressure_kind = PressureKind::altimeter_setting;
    if (p.barometer >= 6) b.pressure_kind = PressureKind::reduced_to_sea_level;
    b.fahrenheit = p.units % 3 == 0;
    b.ruler_in_centimetres = p.units % 2 == 0;
    b.coarse_balance = true;
    b.purity_given = p.purity == 0;
    b.runs.resize(static_cast<std::size_t>(1 + p.runs / 2));
}

/// Room and tube.
void draw_numbers(PracticeBench& b, Draws& d) {
    const int purity = d.whole(960, 995);
    if (b.purity_given) b.purity = purity;
    b.temperature = d.whole(175, 265);
    b.temperature_error = d.triangle(3);
    b.pressure = d.whole(97500, 103200);
    b.pressure_error = d.triangle(80);
    b.height = 10 * d.whole(5, 150);
    b.outdoor = d.whole(2, 28);
    b.end_space = d.whole(150, 300);
    b.end_space_error = d.triangle(8);
    b.bore = d.whole(105, 112) + (b.capacity == 100 ? 38 : 0);
    b.mass_per_metre = d.whole(85, 125);
    b.ribbon_error = d.triangle(60);
    b.acid_strength = d.whole(0, 1) == 0 ? 20 : 30;
    if (b.acid == Acid::sulfuric) b.acid_strength /= 2;
}

/// Liquid in the tube from the mark that the gas reaches to the end of the scale, 0.1 mm: 11 mm a mL of 50 mL, 6 mm a
/// mL of 100 mL (core/bench/scale.hpp).
int length_below(const PracticeBench& b, int share) {
    return (b.capacity == 100 ? 6000 : 5500) * (1000 - share) / 1000;
}

void draw_run(const PracticeBench& b, DrawnRun& run, Draws& d) {
    run.share = d.whole(630, 870);
    const int level = d.whole(0, 1000);
    // At least 32 mm: less, with a decimal, looks like centimetres. The mouth stays under water.
    const int least = 320;
    const bool outside = b.stands == LiquidStands::higher_outside;
    const int most = outside ? 600 : std::min(1800, length_below(b, run.share) * 17 / 20);
    run.level = b.has_column() ? least + (most - least) * level / 1000 : 0;
    run.level_error = d.triangle(8);
    run.dissolved = d.whole(10, 60);
    run.weighing_error = d.triangle(100);
    run.length_error = d.triangle(2);
    run.scale_error = d.triangle(8);
    run.dish = d.whole(120000, 360000);
    run.start_gas = d.whole(50, 250);
    run.start_level = 1500 + 1400 * d.whole(0, 1000) / 1000;
    run.start_level_error = d.triangle(8);
}

/// A mishap with the sizes it is given here: large enough to be told from the scatter, no larger than was seen
/// (core/explain/cause_table.cpp).
struct Row {
    Cause cause;
    int smallest;
    int largest;
    bool one_run;  ///< it happens to one run; else to the whole record
    bool both_ways;
};
constexpr std::array<Row, 11> rows{{
    {Cause::air_bubble, 140, 200, true, false},           // 0.01 mL
    {Cause::gas_lost, 150, 250, true, false},             // 0.01 mL; tubes of 100 mL: 0.02 mL
    {Cause::metal_left, 40, 150, true, false},            // ‰ of the metal
    {Cause::oxide_coat, 30, 50, false, false},            // ‰ of what is weighed
    {Cause::wet_metal, 40, 90, true, false},              // ‰ of the metal
    {Cause::balance_off, 40, 90, true, true},             // ‰ of the metal
    {Cause::gas_warm, 50, 100, true, false},              // 0.1 K
    {Cause::hot_liquid, 60, 140, false, false},           // 0.1 K
    {Cause::levels_not_equal, 1600, 2000, true, false},   // 0.1 mm
    {Cause::end_space_off, 120, 150, false, true},        // 0.01 mL
    {Cause::sea_level_pressure, 300, 1200, false, false}  // m
}};

bool can_happen(const PracticeBench& b, Cause cause) {
    switch (cause) {
    case Cause::air_bubble: return b.capacity == 50 && !b.start;
    case Cause::wet_metal: return b.mass_from != MassFrom::ribbon && b.sample != Substance::zinc;
    case Cause::balance_off: return b.mass_from == MassFrom::weighed && b.sample != Substance::zinc;
    case Cause::levels_not_equal: return !b.has_column();
    case Cause::end_space_off: return b.inverted() && !b.start && b.capacity == 50;
    case Cause::sea_level_pressure:
        return b.pressure_kind == PressureKind::at_the_bench && b.pressure_shown != PressureShown::mercury_column;
    default: return true;
    }
}

DrawnMishap draw_mishap(PracticeBench& b, Draws& d) {
    std::vector<Row> possible;
    for (const Row& row : rows) {
        if (can_happen(b, row.cause)) possible.push_back(row);
    }
    const Row& row = possible[static_cast<std::size_t>(d.whole(0, static_cast<int>(possible.size()) - 1))];
    DrawnMishap mishap;
    mishap.cause = row.cause;
    mishap.size = d.whole(row.smallest, row.largest);
    const int run = d.whole(0, static_cast<int>(b.runs.size()) - 1);
    const int way = d.whole(0, 1);
    if (row.one_run) mishap.run = run;
    mishap.sign = row.both_ways ? (way == 0 ? -1 : 1) : (info(row.cause).raises ? 1 : -1);
    if (row.cause == Cause::levels_not_equal) {
        // So much water hangs in a tube only where the gas leaves it room.
        int& share = b.runs[static_cast<std::size_t>(run)].share;
        share = 630 + share % 40;
    }
    return mishap;
}

}  // namespace

PracticeBench draw_bench(const PracticeSettings& settings) {
    Draws d(settings);
    PracticeBench b;
    const Picks picks = draw_picks(d);
    switch (settings.difficulty) {
    case Difficulty::easy: set_easy(b, picks); break;
    case Difficulty::usual: set_usual(b, picks); break;
    case Difficulty::hard: set_hard(b, picks); break;
    }
    draw_numbers(b, d);
    for (DrawnRun& run : b.runs) draw_run(b, run, d);
    if (settings.mishap) b.mishap = draw_mishap(b, d);
    return b;
}

}  // namespace overwater
