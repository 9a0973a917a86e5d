#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include "core/quantity/catalogue.hpp"
#include "core/quantity/message.hpp"
#include "generated/text_en.hpp"

/// What holds for a parser whatever it is given. Each `holds_for_NAME(bytes)` hands the bytes to one parser and returns
/// the first promise that is broken, in words; an empty text if all are kept. The fuzz targets look for bytes that break
/// one, the tests of the core replay what is kept in corpus/.

namespace overwater::fuzz {

/// A promise kept.
inline constexpr std::string_view kept{};

/// Whether the English catalogue has a sentence for `key`.
inline bool is_said(std::string_view key) {
    static const Catalogue catalogue = [] {
        Catalogue whole(text_keys, text_en);
        whole.add(second_part_keys, second_part_en);
        return whole;
    }();
    return catalogue.knows(key);
}
inline bool is_said(const Message& message) { return is_said(message.key); }

/// Takes choices and pieces of text off the front of what the fuzzer gives.
struct Bytes {
    std::string_view left;

    /// A number from 0 to `count` - 1; 0 where nothing is left. Small letters count from 0, so that seeds can be read.
    unsigned choice(unsigned count) {
        if (left.empty()) return 0;
        const auto byte = static_cast<unsigned char>(left.front());
        left.remove_prefix(1);
        return (byte + 256U - 'a') % 256U % count;
    }
    /// Up to the next end of a line, which is taken and not given.
    std::string_view line() {
        const std::size_t end = std::min(left.find('\n'), left.size());
        const std::string_view out = left.substr(0, end);
        left.remove_prefix(std::min(end + 1, left.size()));
        return out;
    }
};

}  // namespace overwater::fuzz
