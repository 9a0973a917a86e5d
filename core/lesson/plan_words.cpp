#include "core/lesson/plan.hpp"
#include "core/quantity/units.hpp"
#include "core/result/doubt.hpp"

/// What is said about a plan.

namespace overwater {

namespace {

/// Dry gas this thin is that of a high place: 950 m of the standard atmosphere, less the vapour of a warm room.
constexpr double thin_air = 87 * kilopascal.factor;

/// A chance below this is not told as a number.
constexpr double hardly = 0.001;

class Words {
public:
    explicit Words(const Plan& plan) : plan_(plan) {}

    std::vector<Message> all() {
        window();
        room();
        gas();
        overflow();
        acid();
        doubt();
        classes();
        return std::move(said_);
    }

private:
    void say(Message message) { said_.push_back(std::move(message)); }

    void window() {
        if (!plan_.has(PlanOutput::mass_window)) return;
        const PlanPoint& least = plan_.at(Fill::least);
        const PlanPoint& most = plan_.at(Fill::most);
        say(Message{"plan.window"}
                .figures("least", least.mass, UnitId::gram, 3)
                .figures("most", most.mass, UnitId::gram, 3)
                .quantity("from", least.share, UnitId::percent, 0)
                .quantity("to", most.share, UnitId::percent, 0)
                .figures("middle", plan_.at(Fill::middle).mass, UnitId::gram, 3));
        if (!plan_.has(PlanOutput::ribbon_window)) return;
        say(Message{"plan.ribbon"}
                .quantity("least", least.ribbon_length, UnitId::centimetre, 1)
                .quantity("most", most.ribbon_length, UnitId::centimetre, 1)
                .quantity("middle", plan_.at(Fill::middle).ribbon_length, UnitId::centimetre, 1));
    }

    void room() {
        const bool window = plan_.has(PlanOutput::mass_window);
        if (!window && !plan_.has(PlanOutput::gas)) return;
        const PlanPoint& any = window ? plan_.at(Fill::middle) : plan_.chosen;
        if (plan_.standard_atmosphere) {
            say(Message{"plan.standard_atmosphere"}.quantity("pressure", any.pressure_at_bench, UnitId::kilopascal, 1));
        }
        if (any.dry_gas_pressure < thin_air) say(Message{"plan.thin_air"});
    }

    void gas() {
        if (!plan_.has(PlanOutput::gas)) return;
        const PlanPoint& chosen = plan_.chosen;
        say(Message{"plan.gas"}
                .figures("mass", chosen.mass, UnitId::gram, 3)
                .quantity("volume", chosen.gas_volume, UnitId::millilitre, 1)
                .quantity("pressure", chosen.dry_gas_pressure, UnitId::kilopascal, 1));
        if (!plan_.has(PlanOutput::scale_reading)) return;
        say(Message{"plan.reading"}
                .quantity("reading", chosen.scale_reading, UnitId::millilitre, 1)
                .quantity("share", chosen.share, UnitId::percent, 0));
        if (plan_.liquid_hangs) {
            say(Message{"plan.hangs"}.quantity("level", chosen.level_difference, UnitId::millimetre, 0));
        }
        if (chosen.share < plan_.asked.least_share) say(Message{"plan.little"});
        if (plan_.overflow.level == Overflow::Level::fits && chosen.share > plan_.asked.most_share) {
            say(Message{"plan.much"});
        }
    }

    void overflow() {
        if (!plan_.has(PlanOutput::overflow)) return;
        using Level = Overflow::Level;
        const Overflow& risk = plan_.overflow;
        const bool may = risk.level == Level::may_pass_scale || risk.level == Level::may_leave;
        if (may && risk.chance < hardly) {
            say(Message{"plan.overflow.hardly"}.quantity("upper", risk.upper, UnitId::millilitre, 1));
            return;
        }
        switch (risk.level) {
        case Level::fits:
            say(Message{"plan.overflow.fits"}
                    .quantity("upper", risk.upper, UnitId::millilitre, 1)
                    .quantity("holds", risk.holds, UnitId::millilitre, 0));
            break;
        case Level::warm: say(Message{"plan.overflow.warm"}.quantity("warm", risk.warm, UnitId::millilitre, 1)); break;
        case Level::may_pass_scale:
            say(Message{"plan.overflow.may_pass"}
                    .quantity("upper", risk.upper, UnitId::millilitre, 1)
                    .figures("chance", risk.chance, UnitId::percent, 1));
            break;
        case Level::may_leave:
            say(Message{"plan.overflow.may_leave"}
                    .quantity("upper", risk.upper, UnitId::millilitre, 1)
                    .figures("chance", risk.chance_leaves, UnitId::percent, 1));
            break;
        case Level::passes_scale: say(Message{"plan.overflow.passes"}); break;
        case Level::leaves: say(Message{"plan.overflow.leaves"}); break;
        }
    }

    void acid() {
        if (plan_.state(PlanOutput::acid).kind == OutputState::Kind::waiting && plan_.acid.needs_consent) {
            say(Message{"plan.acid.consent"});
        }
        if (!plan_.has(PlanOutput::acid)) return;
        const PlanAcid& acid = plan_.acid;
        say(Message{"plan.acid.amount"}
                .figures("volume", acid.volume, UnitId::millilitre, 3)
                .figures("strength", acid.concentration, UnitId::mole_per_litre, 2)
                .figures("times", acid.excess, UnitId::none, 2));
        if (acid.slow) say(Message{"plan.acid.slow"});
        if (acid.brisk) say(Message{"plan.acid.brisk"});
    }

    void doubt() {
        if (!plan_.has(PlanOutput::doubt)) return;
        const Budget& budget = plan_.budget;
        const UnitId unit = unit_of(budget.output);
        const int decimals = decimals_of_half_width(from_base(budget.expanded, unit));
        say(Message{"plan.doubt"}
                .quantity("value", budget.value, unit, decimals)
                .quantity("doubt", budget.expanded, unit, decimals)
                .figures("share", budget.expanded / budget.value, UnitId::percent, 2));
        if (plan_.improvements.empty()) say(Message{"plan.no_improvement"});
    }

    void classes() {
        const ClassAmounts& all = plan_.amounts;
        if (plan_.has(PlanOutput::class_metal)) {
            say(Message{"plan.class.metal"}
                    .count("pieces", all.pieces)
                    .figures("each", plan_.chosen.mass, UnitId::gram, 3)
                    .figures("mass", all.mass, UnitId::gram, 3));
            if (all.ribbon > 0) say(Message{"plan.class.ribbon"}.figures("length", all.ribbon, UnitId::centimetre, 3));
        }
        if (plan_.has(PlanOutput::class_acid)) {
            say(Message{"plan.class.acid"}.figures("volume", all.acid_volume, UnitId::millilitre, 3));
        }
    }

    const Plan& plan_;
    std::vector<Message> said_;
};

}  // namespace

std::vector<Message> words_of(const Plan& plan) { return Words(plan).all(); }

}  // namespace overwater
