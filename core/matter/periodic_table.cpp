#include "core/matter/periodic_table.hpp"

#include <cstddef>

#include "core/matter/weight_table.hpp"

namespace overwater {
namespace {

// Two bytes each: a table of views would be eight times as long.
constexpr std::string_view symbols =
    "H_HeLiBeB_C_N_O_F_NeNaMgAlSiP_S_ClArK_CaScTiV_CrMnFeCoNiCuZnGaGeAsSeBrKr"
    "RbSrY_ZrNbMoTcRuRhPdAgCdInSnSbTeI_XeCsBaLaCePrNdPmSmEuGdTbDyHoErTmYbLu"
    "HfTaW_ReOsIrPtAuHgTlPbBiPoAtRnFrRaAcThPaU_NpPuAmCmBkCfEsFmMdNoLr"
    "RfDbSgBhHsMtDsRgCnNhFlMcLvTsOg";
static_assert(symbols.size() == 2 * last_atomic_number);

}  // namespace

std::string_view element_symbol(int atomic_number) {
    if (atomic_number < 1 || atomic_number > last_atomic_number) return {};
    const std::string_view padded = symbols.substr(2 * static_cast<std::size_t>(atomic_number - 1), 2);
    return padded.substr(0, padded[1] == '_' ? 1 : 2);
}

std::optional<int> atomic_number(std::string_view symbol) {
    // Letter by letter: a likely spelling asks hundreds of times.
    if (symbol.empty() || symbol.size() > 2 || symbol.back() == '_') return std::nullopt;
    const char second = symbol.size() == 2 ? symbol[1] : '_';
    for (int number = 1; number <= last_atomic_number; ++number) {
        const std::size_t at = 2 * static_cast<std::size_t>(number - 1);
        if (symbols[at] == symbol[0] && symbols[at + 1] == second) return number;
    }
    return std::nullopt;
}

std::optional<AtomicWeight> standard_atomic_weight(int atomic_number) {
    const std::string_view symbol = element_symbol(atomic_number);
    for (const AtomicWeight& row : weight_table::rows) {
        if (row.symbol == symbol) return row;
    }
    return std::nullopt;
}

std::span<const AtomicWeight> standard_atomic_weights() { return weight_table::rows; }

}  // namespace overwater
