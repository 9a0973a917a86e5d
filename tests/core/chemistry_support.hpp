#pragma once

#include <cctype>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

/// Counting of elements and charges that shares nothing with the product: for canonical ASCII alone, like
/// K4[Fe(CN)6], CuSO4.5H2O, SO4^2- and e^-.

namespace chemistry {

/// Element -> how many; "+" -> the charge.
using Counts = std::map<std::string, long long>;

inline long long number_at(std::string_view text, std::size_t& at) {
    long long number = 0;
    bool any = false;
    while (at < text.size() && std::isdigit(static_cast<unsigned char>(text[at]))) {
        number = number * 10 + (text[at++] - '0');
        any = true;
    }
    return any ? number : 1;
}

inline void add(Counts& sum, const Counts& more, long long times) {
    for (const auto& [name, count] : more) sum[name] += times * count;
}

inline Counts group(std::string_view text, std::size_t& at) {
    Counts counts;
    while (at < text.size()) {
        const char sign = text[at];
        if (sign == '(' || sign == '[') {
            ++at;
            const Counts inner = group(text, at);
            ++at;
            add(counts, inner, number_at(text, at));
        } else if (std::isupper(static_cast<unsigned char>(sign))) {
            std::string symbol(1, text[at++]);
            while (at < text.size() && std::islower(static_cast<unsigned char>(text[at]))) symbol += text[at++];
            counts[symbol] += number_at(text, at);
        } else {
            break;
        }
    }
    return counts;
}

inline Counts count(std::string_view formula) {
    for (const std::string_view state : {"(s)", "(l)", "(g)", "(aq)"}) {
        if (formula.size() > state.size() && formula.substr(formula.size() - state.size()) == state) {
            formula.remove_suffix(state.size());
        }
    }
    Counts all;
    std::size_t at = 0;
    if (formula.substr(0, 1) == "e") at = 1;
    while (at < formula.size() && formula[at] != '^') {
        if (formula[at] == '.') ++at;
        const std::size_t before = at;
        const long long times = number_at(formula, at);
        add(all, group(formula, at), times);
        if (at == before) return {{"unreadable", 1}};
    }
    if (at < formula.size()) {
        ++at;
        const long long size = number_at(formula, at);
        all["+"] = formula[at] == '-' ? -size : size;
    }
    return all;
}

/// The substances of "A + B -> C", as text; `reactants` is how many stand before the arrow.
inline std::vector<std::string> substances(std::string_view equation, std::size_t& reactants) {
    std::vector<std::string> all;
    std::string word;
    const auto end = [&] {
        if (!word.empty() && word != "+" && word != "->") all.push_back(word);
        if (word == "->") reactants = all.size();
        word.clear();
    };
    for (const char sign : equation) {
        if (sign == ' ') {
            end();
        } else {
            word += sign;
        }
    }
    end();
    return all;
}

/// How many independent solutions the equation has, found modulo a large prime: never fewer than there are, and one too
/// many only by an accident of 1 in 10^9.
inline std::size_t solutions(const std::vector<std::string>& all, std::size_t reactants) {
    constexpr long long prime = 1000000007;
    Counts names;
    for (const std::string& one : all) add(names, count(one), 0);
    std::vector<std::vector<long long>> rows;
    for (const auto& [name, zero] : names) {
        std::vector<long long> row;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const Counts counts = count(all[i]);
            const auto found = counts.find(name);
            const long long number = found == counts.end() ? zero : found->second;
            row.push_back(((i < reactants ? number : -number) % prime + prime) % prime);
        }
        rows.push_back(row);
    }
    const auto inverse = [](long long number) {
        long long result = 1;
        for (long long power = prime - 2; power > 0; power /= 2) {
            if (power % 2 == 1) result = result * number % prime;
            number = number * number % prime;
        }
        return result;
    };
    std::size_t rank = 0;
    for (std::size_t column = 0; column < all.size() && rank < rows.size(); ++column) {
        std::size_t found = rank;
        while (found < rows.size() && rows[found][column] == 0) ++found;
        if (found == rows.size()) continue;
        std::swap(rows[rank], rows[found]);
        const long long by = inverse(rows[rank][column]);
        for (std::size_t i = rank + 1; i < rows.size(); ++i) {
            const long long times = rows[i][column] * by % prime;
            for (std::size_t k = 0; k < all.size(); ++k) {
                rows[i][k] = ((rows[i][k] - times * rows[rank][k]) % prime + prime) % prime;
            }
        }
        ++rank;
    }
    return all.size() - rank;
}

}  // namespace chemistry
