#include <algorithm>
#include <cmath>

#include "core/bench/meniscus.hpp"
#include "core/quantity/short_sort.hpp"
#include "core/result/budget.hpp"

namespace overwater {

namespace {

constexpr double least_gain = 0.05;  ///< of the expanded uncertainty
constexpr std::size_t most_offered = 3;

// What measuring the end space by pouring leaves (method.md, section 6), in m³.
constexpr double end_space_poured = 0.10e-6;
// A ring that is worked out from the bore (doubt.cpp), for the usual 13 mm: 0.155 mL, a fifth of it doubtful.
constexpr double ring_by_bore = 0.2 * 0.155e-6;
// Magnesium ribbon of about 1 g/m: one metre weighed, pieces cut to half a millimetre (standards.md, section 10).
constexpr double ribbon_mass_per_metre = 1e-3;    // kg/m
constexpr double ribbon_weighed = 1e-3;           // kg, one metre
constexpr double ribbon_cut = 0.5e-3;             // m
constexpr double fills = 0.9;                     ///< of the tube, at the most

bool is_mass(Input input) {
    return input == Input::mass_of_metal || input == Input::mass_before || input == Input::mass_after;
}
/// What counts for less when there is more metal and more gas.
bool shrinks_with_gas(Input input) {
    return is_mass(input) || input == Input::scale_reading || input == Input::end_space ||
           input == Input::meniscus_ring || input == Input::starting_bubble || input == Input::start_reading;
}

class Finder {
public:
    Finder(const Assessment& assessment, const Budget& budget) : all_(assessment), budget_(budget) {}

    std::vector<Improvement> find() {
        for (const BudgetRow& row : budget_.rows) {
            if (row.share < 0.03) break;
            consider(row);
        }
        more_metal();
        short_sort(found_.begin(), found_.end(),
                         [](const Improvement& a, const Improvement& b) { return a.expanded < b.expanded; });
        if (found_.size() > most_offered) found_.resize(most_offered);
        return std::move(found_);
    }

private:
    double without(const BudgetRow& row) const {
        return std::max(0.0, budget_.u * budget_.u - row.contribution * row.contribution);
    }

    /// Offers what leaves the standard uncertainty `u` of this row's input.
    void offer(const BudgetRow& row, Improvement::Way way, double u, const Instrument* better = nullptr) {
        const double then = std::fabs(row.sensitivity) * u;
        add({row.doubt.input, row.doubt.kind, way, better, row.share,
             budget_.k * std::sqrt(without(row) + then * then)});
    }

    void add(const Improvement& improvement) {
        if (improvement.expanded <= (1 - least_gain) * budget_.expanded) found_.push_back(improvement);
    }

    void consider(const BudgetRow& row) {
        using Way = Improvement::Way;
        switch (row.doubt.kind) {
            case DoubtKind::reading: reading(row); break;
            case DoubtKind::class_limit: finer(row, true); break;
            case DoubtKind::meniscus:
                if (!all_.measured.setup.ring_known) {
                    offer(row, Way::measure_it, standard_uncertainty(Shape::rectangular, -ring_by_bore, ring_by_bore));
                }
                break;
            case DoubtKind::not_measured:
                if (row.doubt.input == Input::end_space) {
                    offer(row, Way::measure_it,
                          standard_uncertainty(Shape::rectangular, -end_space_poured, end_space_poured));
                }
                break;
            case DoubtKind::scatter: offer(row, Way::read_again, row.doubt.u / 2); break;
            default: break;
        }
    }

    void reading(const BudgetRow& row) {
        if (finer(row, false)) {
            if (is_mass(row.doubt.input)) by_length(row);
            return;
        }
        if (is_mass(row.doubt.input) && by_length(row)) return;
        offer(row, Improvement::Way::read_again, row.doubt.u / 2);
    }

    /// The next better instrument for this field, of the same vessel.
    bool finer(const BudgetRow& row, bool by_limit) {
        const Field field = field_of(row.doubt.input);
        // Another barometer measures nothing in a closed flask, and a burette is no syringe.
        const Apparatus vessel = all_.measured.setup.apparatus;
        const bool pressure = field == Field::barometer || field == Field::pressure_after;
        const bool scale = field == Field::scale_reading || field == Field::start_reading;
        if ((pressure && vessel == Apparatus::pressure_sensor) || (scale && vessel == Apparatus::gas_syringe)) return false;
        const Instrument* best = nullptr;
        const auto size = [by_limit](const Instrument& i) { return by_limit ? i.limit : i.reading; };
        for (const Instrument& other : instruments_for(field)) {
            const bool fits = other.capacity == 0 || std::fabs(other.capacity - capacity()) < 0.01 * other.capacity;
            if (!fits || !(size(other) > 0) || size(other) > 0.7 * row.doubt.high) continue;
            // One step better is what a school may have; the best there is may cost a fortune.
            if (best == nullptr || size(other) > size(*best)) best = &other;
        }
        if (best == nullptr) return false;
        const Shape shape = by_limit ? best->limit_shape : best->reading_shape;
        offer(row, Improvement::Way::finer_instrument, standard_uncertainty(shape, -size(*best), size(*best)), best);
        return true;
    }

    double capacity() const { return all_.readings[Field::tube_capacity].base; }

    /// A metre of ribbon weighed once turns a coarse balance into a fine one.
    bool by_length(const BudgetRow& row) {
        if (all_.readings.sample != Substance::magnesium || all_.measured.setup.mass_from != MassFrom::weighed) return false;
        const double mass = all_.measured[Input::mass_of_metal];
        const double by_weighing = row.doubt.u / ribbon_weighed;
        const double by_cutting = ribbon_cut / std::sqrt(3.0) / (mass / ribbon_mass_per_metre);
        offer(row, Improvement::Way::ribbon_by_length, mass * std::hypot(by_weighing, by_cutting));
        return true;
    }

    /// Twice the gas halves what a balance and a scale leave in doubt.
    void more_metal() {
        const auto volume = all_.value(Output::gas_volume);
        if (!volume || !all_.readings[Field::tube_capacity].there) return;
        const double times = fills * capacity() / *volume;
        if (times < 1.25) return;
        double variance = 0;
        double share = 0;
        for (const BudgetRow& row : budget_.rows) {
            const bool shrinks = shrinks_with_gas(row.doubt.input);
            const double then = shrinks ? row.contribution / times : row.contribution;
            variance += then * then;
            if (shrinks) share += row.share;
        }
        add({Input::mass_of_metal, DoubtKind::reading, Improvement::Way::more_metal, nullptr, share,
             budget_.k * std::sqrt(variance)});
    }

    const Assessment& all_;
    const Budget& budget_;
    std::vector<Improvement> found_;
};

}  // namespace

std::vector<Improvement> improvements(const Assessment& assessment, const Budget& budget) {
    return Finder(assessment, budget).find();
}

}  // namespace overwater
