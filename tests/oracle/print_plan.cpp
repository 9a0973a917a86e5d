// Prints plans of random rooms, tubes and metals, for compare_plan.py to work out again.
// Lines: case|by real gas: 0 or 1
//        typed|field|text|unit|instrument     what the teacher put down
//        asked|field|text
//        state|output|value, waiting or not_possible|reason
//        found|name|number in SI units with 17 digits
//        expected|field|text|unit             the sheet as it is expected to be read
// usage: print_plan [COUNT]

#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>

#include "core/lesson/plan.hpp"
#include "core/quantity/number_format.hpp"

using namespace overwater;

namespace {

/// The same draws on every machine.
class Draw {
public:
    explicit Draw(unsigned seed) : words_(seed) {}
    int whole(int low, int high) { return low + static_cast<int>(words_() % static_cast<unsigned>(high - low + 1)); }
    bool one_in(int n) { return whole(1, n) == 1; }
    /// low to high steps of 10^-decimals, as typed.
    std::string number(int low, int high, int decimals) {
        double value = whole(low, high);
        for (int i = 0; i < decimals; ++i) value /= 10;
        return format_fixed(value, decimals, DecimalSign::point);
    }

private:
    std::mt19937 words_;
};

void put(PlanSheet& sheet, Field field, std::string text, UnitId unit = UnitId::none, const char* instrument = "") {
    Entry& entry = sheet.bench.edit(field);
    entry.text = std::move(text);
    entry.unit = unit;
    entry.instrument = instrument;
}

void tube(PlanSheet& sheet, Draw& draw) {
    constexpr int capacities[]{10, 25, 50, 50, 100};
    const int capacity = capacities[draw.whole(0, 4)];
    const bool upside_down = draw.one_in(2);
    put(sheet, Field::tube_capacity, std::to_string(capacity), UnitId::millilitre);
    put(sheet, Field::number_at_closed_end, upside_down ? "largest" : "zero");
    if (upside_down && !draw.one_in(4)) put(sheet, Field::end_space, draw.number(20, 60 + 5 * capacity, 2));
    if (upside_down && draw.one_in(3)) put(sheet, Field::tube_bore, draw.number(95, 240, 1));
    if (draw.one_in(3)) put(sheet, Field::length_of_scale, std::to_string(capacity * draw.whole(5, 14)));
    const int stands = draw.whole(0, 4);
    put(sheet, Field::liquid_stands, stands < 2 ? "level" : stands < 4 ? "higher_inside" : "higher_outside");
    if (stands == 2 || stands == 4) put(sheet, Field::level_difference, std::to_string(draw.whole(5, 180)));
}

void room(PlanSheet& sheet, Draw& draw) {
    put(sheet, Field::temperature, draw.number(100, 400, 1));
    switch (draw.whole(0, 3)) {
    case 0: put(sheet, Field::height_above_sea_level, std::to_string(draw.whole(0, 4500))); break;
    case 1:
        put(sheet, Field::height_above_sea_level, std::to_string(draw.whole(0, 3000)));
        put(sheet, Field::barometer, draw.number(9800, 10400, 1), UnitId::hectopascal);
        put(sheet, Field::pressure_kind, "altimeter_setting");
        break;
    default: put(sheet, Field::barometer, draw.number(6000, 10400, 2), UnitId::kilopascal);
    }
    if (draw.one_in(2)) sheet.edit(PlanField::temperature_within) = draw.number(2, 80, 1);
    if (draw.one_in(3)) sheet.edit(PlanField::pressure_within) = draw.number(2, 20, 0) + " hPa";
}

void metal_and_acid(PlanSheet& sheet, Draw& draw) {
    constexpr const char* metals[]{"magnesium", "magnesium", "magnesium", "zinc",
                                   "aluminium", "iron",      "calcium",   "lithium"};
    const int which = draw.whole(0, 7);
    put(sheet, Field::metal, metals[which]);
    put(sheet, Field::acid, which < 6 && draw.one_in(4) ? "sulfuric" : "hydrochloric");
    if (draw.one_in(3)) put(sheet, Field::purity, draw.number(900, 999, 1));
    if (draw.one_in(2)) put(sheet, Field::mass_per_metre, draw.number(60, 180, 2));
    const int how = draw.whole(0, 3);
    if (how == 0) put(sheet, Field::mass_of_metal, draw.number(50, 1200, 4));
    if (how == 1) sheet.edit(PlanField::share) = draw.number(500, 999, 1);
    if (how == 2) put(sheet, Field::mass_of_metal, "", UnitId::none, "balance_100ug");
    if (how == 3) {
        put(sheet, Field::mass_from, "ribbon");
        if (sheet.bench.at(Field::mass_per_metre).text.empty()) put(sheet, Field::mass_per_metre, "1.02");
        if (draw.one_in(2)) put(sheet, Field::ribbon_length, draw.number(80, 900, 2));
    }
    const int acid = draw.whole(0, 3);
    if (acid != 0) put(sheet, Field::acid_concentration, draw.number(4, 34, 1));
    if (acid == 0 || acid == 1) put(sheet, Field::acid_volume, draw.number(20, 90, 1));
    if (draw.one_in(2)) sheet.edit(PlanField::excess) = draw.number(15, 90, 1);
    if (draw.one_in(2)) sheet.edit(PlanField::consent) = "yes";
}

PlanSheet drawn(Draw& draw) {
    PlanSheet sheet;
    tube(sheet, draw);
    room(sheet, draw);
    metal_and_acid(sheet, draw);
    if (draw.one_in(2)) sheet.edit(PlanField::mouth_space) = draw.number(5, 150, 1);
    sheet.edit(PlanField::groups) = std::to_string(draw.whole(1, 16));
    if (draw.one_in(2)) sheet.edit(PlanField::runs) = std::to_string(draw.whole(1, 6));
    if (draw.one_in(2)) sheet.edit(PlanField::spare) = std::to_string(draw.whole(0, 60));
    if (draw.one_in(3)) {
        sheet.edit(PlanField::least_share) = std::to_string(draw.whole(40, 65));
        sheet.edit(PlanField::most_share) = std::to_string(draw.whole(70, 98));
    }
    if (draw.one_in(5)) sheet.conventions.accepted = Conventions::Accepted::real;
    return sheet;
}

void found(const std::string& name, double value) { std::printf("found|%s|%.17g\n", name.c_str(), value); }

void print_point(const std::string& name, const PlanPoint& point) {
    found(name + ".mass", point.mass);
    found(name + ".ribbon_length", point.ribbon_length);
    found(name + ".share", point.share);
    found(name + ".gas_volume", point.gas_volume);
    found(name + ".scale_reading", point.scale_reading);
    found(name + ".level_difference", point.level_difference);
    found(name + ".pressure_at_bench", point.pressure_at_bench);
    found(name + ".dry_gas_pressure", point.dry_gas_pressure);
    found(name + ".amount_of_gas", point.amount_of_gas);
}

void print_entries(const char* kind, const Entries& entries) {
    for (const auto& [field, entry] : entries.all()) {
        if (entry.text.empty() && entry.instrument.empty()) continue;
        std::printf("%s|%s|%s|%s|%s\n", kind, std::string(name_of(field)).c_str(), entry.text.c_str(),
                    std::string(info(entry.unit).key).c_str(), entry.instrument.c_str());
    }
}

void print_plan(const PlanSheet& sheet) {
    std::printf("case|%d\n", sheet.conventions.accepted == Conventions::Accepted::real ? 1 : 0);
    print_entries("typed", sheet.bench);
    for (std::size_t i = 0; i < plan_field_count; ++i) {
        const auto field = static_cast<PlanField>(i);
        if (!sheet.at(field).empty()) {
            std::printf("asked|%s|%s\n", std::string(name_of(field)).c_str(), sheet.at(field).c_str());
        }
    }
    const Plan plan = plan_run(sheet);
    for (std::size_t i = 0; i < plan_output_count; ++i) {
        const PlanState& state = plan.states[i];
        const char* kinds[]{"value", "waiting", "not_possible", "not_asked"};
        std::printf("state|%s|%s|%s\n", std::string(plan_output_names[i]).c_str(), kinds[static_cast<int>(state.kind)],
                    std::string(state.reason.key).c_str());
    }
    if (plan.has(PlanOutput::mass_window)) {
        print_point("least", plan.at(Fill::least));
        print_point("middle", plan.at(Fill::middle));
        print_point("most", plan.at(Fill::most));
    }
    if (plan.has(PlanOutput::gas)) print_point("chosen", plan.chosen);
    if (plan.has(PlanOutput::overflow)) {
        found("overflow.level", static_cast<double>(plan.overflow.level));
        found("overflow.planned", plan.overflow.planned);
        found("overflow.upper", plan.overflow.upper);
        found("overflow.warm", plan.overflow.warm);
        found("overflow.u", plan.overflow.u);
        found("overflow.chance", plan.overflow.chance);
    }
    if (plan.has(PlanOutput::acid)) {
        found("acid.needed", plan.acid.needed);
        found("acid.volume", plan.acid.volume);
        found("acid.concentration", plan.acid.concentration);
        found("acid.excess", plan.acid.excess);
    }
    if (plan.has(PlanOutput::doubt)) {
        print_entries("expected", plan.expected_sheet);
        found("doubt.value", plan.budget.value);
        found("doubt.u", plan.budget.u);
    }
    if (plan.has(PlanOutput::class_metal)) {
        found("class.pieces", plan.amounts.pieces);
        found("class.mass", plan.amounts.mass);
        found("class.ribbon", plan.amounts.ribbon);
    }
    if (plan.has(PlanOutput::class_acid)) found("class.acid", plan.amounts.acid_volume);
}

}  // namespace

int main(int argc, char** argv) {
    const int count = argc > 1 ? std::atoi(argv[1]) : 1500;
    Draw draw(20261128);
    for (int i = 0; i < count; ++i) print_plan(drawn(draw));
    return 0;
}
