#include "core/bench/meniscus.hpp"

#include <array>

namespace overwater {

namespace {

struct Row {
    double millimetres;
    double millilitres;
};
constexpr std::array<Row, 6> rows{{{9.5, 0.076}, {11, 0.107}, {13, 0.155}, {15, 0.209}, {18, 0.30}, {25, 0.51}}};

}  // namespace

std::optional<double> meniscus_ring(double bore) {
    const double millimetres = bore * 1e3;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const Row& low = rows[i - 1];
        const Row& high = rows[i];
        if (millimetres < low.millimetres || millimetres > high.millimetres) continue;
        const double share = (millimetres - low.millimetres) / (high.millimetres - low.millimetres);
        return (low.millilitres + share * (high.millilitres - low.millilitres)) * 1e-6;
    }
    return std::nullopt;
}

double most_of_meniscus(double capacity) {
    constexpr double small_tube = 75e-6;
    return capacity > small_tube ? 0.45e-6 : 0.25e-6;
}

}  // namespace overwater
