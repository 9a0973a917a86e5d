// What has to hold for whatever comes, tried with much that comes by chance. That a record comes back from its JSON as it
// was stands in record_json.cpp, the same of formulas in formula_hostile.cpp.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "core/lesson/marking.hpp"
#include "core/lesson/practice.hpp"
#include "core/matter/balance.hpp"
#include "tests/core/chemistry_support.hpp"
#include "tests/core/marking_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// Substances that react with each other in many ways, as the test's own counting reads them.
const std::vector<std::vector<const char*>> families{
    {"H2", "O2", "H2O", "H2O2", "O3", "C", "CO", "CO2", "CH4", "C2H6O", "C6H12O6"},
    {"Mg", "HCl", "Cl2", "MgCl2", "H2", "MgO", "H2O", "MgCl2.6H2O"},
    {"MnO4^-", "Fe^2+", "Fe^3+", "Mn^2+", "H^+", "OH^-", "H2O", "O2", "e^-"}};

/// Some of a family, each once, at least one on either side of the arrow.
std::string by_chance(std::mt19937& random) {
    std::vector<const char*> order = families[random() % families.size()];
    std::shuffle(order.begin(), order.end(), random);
    order.resize(2 + random() % 5);
    const std::size_t left = 1 + random() % (order.size() - 1);
    std::string text = order[0];
    for (std::size_t i = 1; i < order.size(); ++i) text += (i == left ? " -> " : " + ") + std::string(order[i]);
    return text;
}

/// A sheet as a student writes it who goes on with all digits of the calculator and puts down `figures` of them. Of the
/// numbers themselves `tests/oracle` has independent computations.
class FilledSheet {
public:
    FilledSheet(const PracticeRun& practice, int figures, bool vapour_forgotten)
        : figures_(figures), record_(practice.truth) {
        double sum = 0;
        double accepted = 0;
        for (const Assessment& run : practice.expected) {
            // Without the vapour the gas seems to have more pressure; all that follows is more by the same factor.
            const double dry = run.outcome[Output::dry_gas_pressure];
            const double more = vapour_forgotten ? 1 + run.outcome[Output::water_vapour_pressure] / dry : 1;
            const double found = run.outcome[Output::molar_volume_standard];
            more_.push_back(more);
            sum += found * more;
            accepted = found / (1 + run.outcome[Output::percent_error]);
        }
        const double mean = sum / static_cast<double>(practice.expected.size());
        for (const SheetStep& step : sheet_steps(record_)) {
            std::string text;
            if (step.mean) {
                text = written(mean * 1e3, "L/mol");
            } else if (step.output == Output::percent_error) {
                // To a hundredth, or a sheet with fewer figures to its tenth.
                char digits[32];
                std::snprintf(digits, sizeof digits, "%.*f %%", figures > 3 ? 2 : 1, 100 * (mean / accepted - 1));
                text = digits;
            } else {
                const auto run = static_cast<std::size_t>(step.run);
                text = of_run(step.output, practice.expected[run], more_[run]);
            }
            answer(answers_of(record_, step), step_name(step), text.c_str());
        }
    }
    const Record& record() const { return record_; }

private:
    std::string written(double value, const char* unit) const {
        char text[64];
        // %g would drop the noughts at the end, which are figures too.
        const int decimals = figures_ - 1 - static_cast<int>(std::floor(std::log10(value)));
        std::snprintf(text, sizeof text, "%.*f %s", std::max(decimals, 0), value, unit);
        return text;
    }
    /// In a unit that classes use.
    std::string of_run(Output output, const Assessment& run, double more) const {
        const double value = run.outcome[output];
        switch (output) {
        case Output::gas_volume: return written(value * 1e6, "mL");
        case Output::water_vapour_pressure: return written(value / 133.322387415, "mmHg");
        case Output::dry_gas_pressure: return written(value * more / 1e3, "kPa");
        case Output::amount_of_metal:
        case Output::amount_of_gas: return written(value * 1e3, "mmol");
        case Output::volume_at_standard: return written(value * more * 1e6, "mL");
        case Output::molar_volume_standard: return written(value * more * 1e3, "L/mol");
        default: return {};
        }
    }

    int figures_;
    Record record_;
    std::vector<double> more_;
};

PracticeRun some_practice(int number) {
    PracticeSettings settings;
    settings.seed = number * 41 % practice_seeds;
    settings.student = number * 13 % practice_students;
    settings.difficulty = static_cast<Difficulty>(number % 3);
    settings.standard = static_cast<StandardConditions>(number % 5);
    settings.vapour = static_cast<PracticeVapour>(number / 3 % 3);
    return practice_run(settings);
}

}  // namespace

TEST_CASE("a quantity comes back through every unit of its measure") {
    std::mt19937 random(20261130);
    std::uniform_real_distribution<double> power(-9, 9);
    for (std::size_t i = 1; i < unit_count; ++i) {
        const auto one = static_cast<UnitId>(i);
        INFO(std::string(info(one).key));
        for (const UnitId other : units_of(info(one).measure)) {
            INFO(std::string(info(other).key));
            for (int n = 0; n < 50; ++n) {
                const double value = (n % 2 == 0 ? 1 : -1) * std::pow(10, power(random));
                const double there = from_base(to_base(value, one), other);
                const double back = from_base(to_base(there, other), one);
                // Kelvin and degrees Fahrenheit are shifted by some hundreds: what is small beside them loses digits.
                const double shift = info(one).measure == Measure::temperature ? 1000 : 0;
                CHECK(std::fabs(back - value) <= 1e-14 * (std::fabs(value) + shift));
            }
        }
    }
}

TEST_CASE("whatever is called balanced has as many atoms and charges on both sides") {
    std::mt19937 random(20261130);
    int balanced = 0;
    for (int n = 0; n < 20000; ++n) {
        const std::string text = by_chance(random);
        CAPTURE(text);
        std::size_t reactants = 0;
        const std::vector<std::string> all = chemistry::substances(text, reactants);
        const EquationReading reading = parse_equation(text);
        REQUIRE(reading.problem.none());
        const Balance found = balance(reading.equation);
        if (found.problem != BalanceProblem::none) {
            CHECK(found.coefficients.empty());
            continue;
        }
        ++balanced;
        REQUIRE(found.coefficients.size() == all.size());
        chemistry::Counts sum;
        for (std::size_t i = 0; i < all.size(); ++i) {
            CHECK(found.coefficients[i] >= 1);
            chemistry::add(sum, chemistry::count(all[i]),
                           i < reactants ? found.coefficients[i] : -found.coefficients[i]);
        }
        for (const auto& row : sum) CHECK_MESSAGE(row.second == 0, row.first);
        CHECK(chemistry::solutions(all, reactants) == 1);
    }
    CHECK(balanced > 100);
}

TEST_CASE("a right sheet is marked full, whatever the practice run and however many figures were put down") {
    for (int number = 0; number < 100; ++number) {
        const PracticeRun practice = some_practice(number);
        CAPTURE(practice.record.practice_code);
        for (const int figures : {3, 4, 5, 7}) {
            CAPTURE(figures);
            const MarkedSheet sheet = mark_sheet(FilledSheet(practice, figures, false).record());
            for (const MarkedStep& marked : sheet.steps) {
                CAPTURE(std::string(step_name(marked.step)));
                CHECK(marked.judgement == Judgement::right);
                CHECK_FALSE(marked.does_not_follow);
                CHECK_FALSE(marked.unit_missing);
                // Two decimals of a percent error are what Working shows.
                if (marked.step.output == Output::percent_error && !marked.step.mean) CHECK(marked.figures_off == 0);
            }
            CHECK(sheet.points == sheet.most_points);
            CHECK(sheet.most_points == static_cast<double>(sheet.steps.size()));
        }
    }
}

TEST_CASE("who forgets the vapour and goes on with all digits loses one step a run") {
    for (int number = 0; number < 100; ++number) {
        const PracticeRun practice = some_practice(number);
        CAPTURE(practice.record.practice_code);
        for (const int figures : {3, 4, 5, 7}) {
            CAPTURE(figures);
            const MarkedSheet sheet = mark_sheet(FilledSheet(practice, figures, true).record());
            for (const MarkedStep& marked : sheet.steps) {
                CAPTURE(std::string(step_name(marked.step)));
                CHECK((marked.judgement == Judgement::not_right) == (marked.step.output == Output::dry_gas_pressure));
            }
            CHECK(sheet.points == sheet.most_points - static_cast<double>(practice.expected.size()));
        }
    }
}
