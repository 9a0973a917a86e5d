#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace overwater {

/// The sentences of one language by their keys. They come as two texts, the keys in the order of their bytes and the
/// sentences in the same order, a line each; a sentence with plural forms is `one` and `other` with a tab between. (As a
/// table of pointers they are 4 kB more to load.)
class Catalogue {
public:
    /// Of nothing.
    Catalogue() = default;
    /// Both texts outlive the catalogue and end with the end of a line. There may be more sentences than keys.
    Catalogue(std::string_view keys, std::string_view sentences);

    /// Once: further keys, in the order of their bytes too, and sentences behind those that are there already.
    void add(std::string_view keys, std::string_view sentences);

    /// Whether there is a sentence for each key; else it may be asked for none.
    bool whole() const { return keys_.size() <= sentences_.size(); }

    bool knows(std::string_view key) const { return place_of(key) < keys_.size(); }
    /// The sentence of a key; its form for one thing if `one` and it has one. Without data for a key that is not there.
    std::string_view sentence(std::string_view key, bool one) const;

private:
    std::size_t place_of(std::string_view key) const;

    std::size_t first_ = 0;  ///< how many keys there were before others were added
    std::vector<std::string_view> keys_;
    std::vector<std::string_view> sentences_;
};

} // namespace overwater
