#pragma once

#include <cctype>
#include <string>

#include "web/ui/node.hpp"

namespace overwater::test {

/// Whether the words of a node say "nan" or "inf" where a number belongs.
inline bool says_no_number(const Node& node) {
    std::string words = node.name;
    if (node.role == Role::output) words += ' ' + node.value;
    std::string word;
    for (const char c : words + ' ') {
        // Letters beyond ASCII are of the word: "inférieure".
        if (static_cast<unsigned char>(c) >= 0x80 || std::isalpha(static_cast<unsigned char>(c)) != 0) {
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        } else {
            if (word == "nan" || word == "inf") return true;
            word.clear();
        }
    }
    return false;
}

}  // namespace overwater::test
