#include "web/panels/equations_mass.hpp"

#include "core/matter/periodic_table.hpp"
#include "core/quantity/number_format.hpp"
#include "web/app/app.hpp"
#include "web/panels/equations_words.hpp"
#include "web/panels/ruled_table.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr Type large{Face::semibold, 24, Ink::text};

}  // namespace

float draw_formula_mass(App& app, Ui& ui, const Rect& area, const ChemicalFormula& formula, const FormulaMass& mass) {
    const Conventions& conventions = app.record().conventions;
    const double value = from_base(mass.value.si(), UnitId::gram_per_mole);
    const std::string name = app.say("equations.molar_mass");
    float y = area.y;
    const std::string words =
        mass_words(app, value, from_base(mass.plus_minus.si(), UnitId::gram_per_mole), mass.decimals);
    ui.text("equations.mass.name", {area.x, y, area.w, 0}, name, small);
    ui.output("equations.mass", {area.x, y + 19, area.w, 34}, app.language().with_unit(words, UnitId::gram_per_mole), name,
              large);
    y += 56;
    if (conventions.molar_mass_digits != Conventions::MolarMassDigits::abridged) {
        constexpr int decimals[] = {4, 2, 1, 0};
        const std::string number =
            format_fixed(from_base(class_molar_mass(conventions, formula), UnitId::gram_per_mole),
                         decimals[static_cast<std::size_t>(conventions.molar_mass_digits)], conventions.decimal_sign,
                         conventions.rounding);
        y += ui.text("equations.rounded", {area.x, y, area.w, 0},
                     app.say(Message{"equations.rounded"}.text(
                         "value", app.language().with_unit(number, UnitId::gram_per_mole)))) +
             6;
    }
    std::vector<std::vector<std::string>> rows{{app.say("equations.element"), app.say("equations.count"),
                                                app.say("equations.weight"), app.say("equations.share")}};
    for (const ElementCount& one : formula.atoms) {
        const AtomicWeight weight = *standard_atomic_weight(one.atomic_number);
        const double share = mass_fraction(formula, one.atomic_number).value_or(0);
        rows.push_back({std::string(weight.symbol), format_fixed(one.count, 0, conventions.decimal_sign),
                   mass_words(app, weight.value, weight.plus_minus, weight.decimals),
                   app.language().with_unit(format_fixed(from_base(share, UnitId::percent), 2, conventions.decimal_sign,
                                                         conventions.rounding),
                                            UnitId::percent)});
    }
    y += draw_ruled_table(ui, "equations.elements", {area.x, y, area.w, 0}, name, rows) + 6;
    y += ui.text("equations.bounds", {area.x, y, area.w, 0}, app.say("equations.bounds"), small);
    return y - area.y;
}

}  // namespace overwater
