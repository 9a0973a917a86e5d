#include "core/matter/likely_spelling.hpp"

#include <vector>

#include "core/matter/periodic_table.hpp"

namespace overwater {
namespace {

bool is_letter(char sign) { return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z'); }
char capital(char letter) { return letter >= 'a' ? static_cast<char>(letter - 'a' + 'A') : letter; }
char small(char letter) { return letter < 'a' ? static_cast<char>(letter - 'A' + 'a') : letter; }

std::string as_symbol(std::string_view letters) {
    std::string symbol(1, capital(letters[0]));
    if (letters.size() == 2) symbol += small(letters[1]);
    return symbol;
}

constexpr int impossible = 1000000;

/// Small for the elements that formulas at school are made of (common practice, no source); chosen so that two of them
/// are likelier than one that is rare: CO than Co.
int unlikeliness(const std::string& symbol) {
    constexpr std::string_view usual = "H_C_N_O_F_NaMgAlSiP_S_ClK_CaCrMnFeNiCuZnBrAgSnI_BaPbLi";
    const std::optional<int> number = atomic_number(symbol);
    if (!number) return impossible;
    for (std::size_t i = 0; i < usual.size(); i += 2) {
        if (usual.substr(i, usual[i + 1] == '_' ? 1 : 2) == symbol) return 2;
    }
    if (symbol == "Co") return 5;
    return standard_atomic_weight(*number) ? 6 : 20;
}

}  // namespace

void add_likely_spelling(std::string_view text, FormulaProblem& problem) {
    std::size_t begin = problem.at;
    std::size_t end = problem.at;
    while (begin > 0 && is_letter(text[begin - 1])) --begin;
    while (end < text.size() && is_letter(text[end])) ++end;
    const std::string_view run = text.substr(begin, end - begin);
    if (run.empty() || run.size() > longest_formula_text) return;

    // The best way for each end of the run, from the last letter to the first.
    std::vector<int> best(run.size() + 1, impossible);
    std::vector<std::size_t> taken(run.size(), 1);
    best[run.size()] = 0;
    for (std::size_t i = run.size(); i-- > 0;) {
        for (std::size_t letters = 1; letters <= 2 && i + letters <= run.size(); ++letters) {
            const int all = unlikeliness(as_symbol(run.substr(i, letters))) + best[i + letters];
            if (all >= best[i]) continue;
            best[i] = all;
            taken[i] = letters;
        }
    }
    if (best[0] >= impossible) return;
    for (std::size_t i = 0; i < run.size(); i += taken[i]) problem.likely += as_symbol(run.substr(i, taken[i]));
    problem.likely_at = begin;
    problem.likely_length = run.size();
}

}  // namespace overwater
