#include "core/matter/elements.hpp"

#include <array>

#include "core/matter/weight_table.hpp"

namespace overwater {
namespace {

constexpr std::array<std::string_view, 23> bench_symbols{"H",  "Li", "C",  "N",  "O",  "Na", "Mg", "Al",
                                                         "Si", "S",  "Cl", "K",  "Ca", "Mn", "Fe", "Co",
                                                         "Ni", "Cu", "Zn", "Ag", "Sn", "Ba", "Pb"};

// Copied while compiling, so that a program which needs these alone does not carry the whole table.
constexpr std::array<AtomicWeight, bench_symbols.size()> table = [] {
    std::array<AtomicWeight, bench_symbols.size()> picked{};
    for (std::size_t i = 0; i < picked.size(); ++i) {
        for (const AtomicWeight& row : weight_table::rows) {
            if (row.symbol == bench_symbols[i]) picked[i] = row;
        }
    }
    return picked;
}();

} // namespace

std::optional<AtomicWeight> element(std::string_view symbol) {
    for (const AtomicWeight& row : table) {
        if (row.symbol == symbol) return row;
    }
    return std::nullopt;
}

std::span<const AtomicWeight> elements() { return table; }

} // namespace overwater
