#include "core/lesson/practice.hpp"

#include <string>

#include "core/lesson/practice_bench.hpp"
#include "core/quantity/number_format.hpp"

namespace overwater {

namespace {

/// `steps` of 10^-`decimals`, as text.
std::string text_of(int steps, int decimals) {
    double value = steps;
    for (int i = 0; i < decimals; ++i) value = value / 10;
    return format_fixed(value, decimals, DecimalSign::point);
}

/// A scale with a number every ten lines. `steps` is the position in tenths of a division.
Dial scale(Field field, DialKind kind, UnitId unit, double low, double high, int division, int decimals, int steps) {
    // `division` is in units of the last decimal of a reading but one: 1, 2 or 5 of 10^(1 - decimals).
    double unit_of_position = 1;
    for (int i = 0; i < decimals; ++i) unit_of_position = unit_of_position * 10;
    Dial dial;
    dial.field = field;
    dial.kind = kind;
    dial.unit = unit;
    dial.low = low;
    dial.high = high;
    dial.division = division * 10 / unit_of_position;
    dial.position = steps * division / unit_of_position;
    dial.decimals = decimals;
    return dial;
}

Dial digits(Field field, DialKind kind, UnitId unit, int decimals, int steps) {
    Dial dial = scale(field, kind, unit, 0, 0, 1, decimals, steps);
    dial.division = dial.division / 10;
    return dial;
}

Dial barometer(PressureShown shown, int steps) {
    constexpr Field field = Field::barometer;
    switch (shown) {
    case PressureShown::aneroid_kilopascal:
        return scale(field, DialKind::barometer_dial, UnitId::kilopascal, 94, 106, 1, 2, steps);
    case PressureShown::aneroid_inch: {
        Dial dial = scale(field, DialKind::barometer_dial, UnitId::inch_of_mercury, 28, 31.5, 5, 3, steps);
        dial.number_decimals = 1;
        return dial;
    }
    case PressureShown::mercury_column:
        return scale(field, DialKind::mercury_column, UnitId::millimetre_of_mercury, 700, 800, 1, 1, steps);
    case PressureShown::report_hectopascal:
        return digits(field, DialKind::weather_report, UnitId::hectopascal, 1, steps);
    case PressureShown::report_inch: return digits(field, DialKind::weather_report, UnitId::inch_of_mercury, 2, steps);
    case PressureShown::aneroid_hectopascal: break;
    }
    return scale(field, DialKind::barometer_dial, UnitId::hectopascal, 940, 1060, 1, 1, steps);
}

std::string_view barometer_name(PressureShown shown) {
    switch (shown) {
    case PressureShown::mercury_column: return "mercury_barometer";
    case PressureShown::report_hectopascal:
    case PressureShown::report_inch: return "weather_report";
    default: return "aneroid_barometer";
    }
}

/// Builds what the student gets and, beside it, what a perfect reader makes of it.
class Builder {
public:
    Builder(const PracticeSettings& settings, PracticeRun& out)
        : out_(out), b_(draw_bench(settings)), shown_(shown_on(b_)) {}

    void build() {
        out_.record.runs.assign(b_.runs.size(), Run{});
        out_.truth = out_.record;
        give_metal();
        give_tube();
        room();
        for (std::size_t i = 0; i < b_.runs.size(); ++i) run(i);
        if (b_.mishap) {
            const std::size_t struck = b_.mishap->run < 0 ? 0 : static_cast<std::size_t>(b_.mishap->run);
            out_.mishap = Mishap{b_.mishap->cause, shown_.runs[struck].mishap_size, b_.mishap->sign, b_.mishap->run};
        }
    }

private:
    static Entries& sheet(Record& record, int run) {
        return run < 0 ? record.shared : record.runs[static_cast<std::size_t>(run)].entries;
    }

    /// An entry that nobody has to read.
    void give(Field field, std::string_view text, std::string_view instrument = {}, int run = -1) {
        for (Record* record : {&out_.record, &out_.truth}) {
            Entry& entry = sheet(*record, run).edit(field);
            entry.text = text;
            entry.unit = is_choice(field) ? UnitId::none : info(field).usual_unit;
            entry.instrument = instrument;
        }
    }

    void show(Dial dial, std::string_view instrument, int run = -1) {
        dial.run = run;
        Entry entry;
        entry.instrument = instrument;
        if (out_.settings.difficulty != Difficulty::hard) entry.unit = dial.unit;
        sheet(out_.record, run).edit(dial.field) = entry;
        entry.unit = dial.unit;
        entry.text = perfect_reading(dial);
        sheet(out_.truth, run).edit(dial.field) = entry;
        out_.dials.push_back(dial);
    }

    void give_metal() {
        give(Field::metal, key_of(b_.sample));
        give(Field::acid, key_of(b_.acid));
        give(Field::acid_volume, b_.capacity == 100 ? "15.0" : "10.0", "cylinder_10");
        give(Field::acid_concentration, text_of(b_.acid_strength, 1));
        constexpr std::string_view from[]{"weighed", "by_difference", "ribbon"};
        give(Field::mass_from, from[static_cast<std::size_t>(b_.mass_from)]);
        if (b_.purity_given) give(Field::purity, text_of(b_.purity, 1));
        if (b_.mass_from == MassFrom::ribbon) {
            give(Field::mass_per_metre, text_of(b_.mass_per_metre, 2), "one_metre_weighed");
        }
    }

    void give_tube() {
        give(Field::number_at_closed_end, b_.inverted() ? "largest" : "zero");
        give(Field::tube_capacity, text_of(b_.capacity, 0));
        if (b_.inverted()) give(Field::end_space, text_of(shown_.end_space, 2), "poured_into_cylinder");
        if (b_.bore_given) give(Field::tube_bore, text_of(b_.bore, 1), "caliper");
    }

    void room() {
        const bool f = b_.fahrenheit;
        show(f ? scale(Field::temperature, DialKind::thermometer, UnitId::fahrenheit, 0, 140, 2, 1, shown_.temperature)
               : scale(Field::temperature, DialKind::thermometer, UnitId::celsius, -10, 60, 1, 1, shown_.temperature),
             "thermometer_1");
        show(barometer(b_.pressure_shown, shown_.pressure), barometer_name(b_.pressure_shown));
        constexpr std::string_view kinds[]{"at_the_bench", "altimeter_setting", "reduced_to_sea_level"};
        give(Field::pressure_kind, kinds[static_cast<std::size_t>(b_.pressure_kind)]);
        if (b_.pressure_kind == PressureKind::at_the_bench) return;
        give(Field::height_above_sea_level, text_of(b_.height, 0), "map");
        if (b_.pressure_kind == PressureKind::reduced_to_sea_level) {
            give(Field::outdoor_temperature, text_of(b_.outdoor, 0));
        }
    }

    void run(std::size_t i) {
        const ShownRun& shown = shown_.runs[i];
        const int index = static_cast<int>(i);
        weigh(shown, index);
        if (b_.start) show(tube(Field::start_reading, shown.start_scale), tube_name(), index);
        if (b_.start) show(ruler(Field::start_level_difference, shown.start_level), "ruler", index);
        show(tube(Field::scale_reading, shown.scale), tube_name(), index);
        constexpr std::string_view stands[]{"", "higher_inside", "higher_outside", "level"};
        give(Field::liquid_stands, stands[static_cast<std::size_t>(b_.stands)], {}, index);
        if (b_.has_column()) show(ruler(Field::level_difference, shown.level), "ruler", index);
    }

    void weigh(const ShownRun& shown, int index) {
        if (b_.mass_from == MassFrom::ribbon) {
            show(scale(Field::ribbon_length, DialKind::ruler, UnitId::centimetre, 0, 15, 1, 2, shown.length), "ruler",
                 index);
            return;
        }
        const bool fine = shown.balance_digit == 1;
        const auto display = [&](Field field, int tenths_of_milligram) {
            show(digits(field, DialKind::balance_display, UnitId::gram, fine ? 4 : 3,
                        tenths_of_milligram / shown.balance_digit),
                 fine ? "balance_100ug" : "balance_1mg", index);
        };
        if (b_.mass_from == MassFrom::weighed) {
            display(Field::mass_of_metal, shown.mass);
        } else {
            display(Field::mass_before, shown.mass_before);
            display(Field::mass_after, shown.mass_after);
        }
    }

    Dial tube(Field field, int hundredths) const {
        const int step = b_.scale_step();
        return scale(field, DialKind::tube_scale, UnitId::millilitre, 0, b_.capacity, step, 2, hundredths / step);
    }
    std::string_view tube_name() const {
        const bool large = b_.capacity == 100;
        if (b_.inverted()) return large ? "burette_100_b" : "burette_50_b";
        return large ? "gas_tube_100" : "gas_tube_50";
    }
    Dial ruler(Field field, int tenths) const {
        return b_.ruler_in_centimetres ? scale(field, DialKind::ruler, UnitId::centimetre, 0, 30, 1, 2, tenths)
                                       : scale(field, DialKind::ruler, UnitId::millimetre, 0, 300, 1, 1, tenths);
    }

    PracticeRun& out_;
    PracticeBench b_;
    ShownBench shown_;
};

}  // namespace

PracticeRun practice_run(const PracticeSettings& settings) {
    PracticeRun practice;
    practice.settings = settings;
    practice.record.invented = true;
    practice.record.conventions = conventions_of(settings);
    practice.record.practice_code = code_of(settings);
    practice.record.runs.clear();
    practice.truth = practice.record;
    if (!can_be_coded(settings)) return practice;
    Builder(settings, practice).build();
    for (std::size_t i = 0; i < practice.truth.runs.size(); ++i) {
        practice.expected.push_back(assess(readings_of(practice.truth, i), practice.truth.conventions));
    }
    return practice;
}

const Dial* dial_for(const PracticeRun& practice, std::size_t run, Field field) {
    for (const Dial& dial : practice.dials) {
        if (dial.field == field && (dial.run < 0 || dial.run == static_cast<int>(run))) return &dial;
    }
    return nullptr;
}

std::optional<PracticeSettings> practice_settings_of(const Record& record) {
    return decode_practice(record.practice_code).settings;
}

}  // namespace overwater
