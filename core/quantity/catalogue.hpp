#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace overwater {

/// The sentences of one language by their keys. They come as two texts, the keys and the sentences in the same order, a
/// line each, fewer than 65,535; a sentence with plural forms is `one` and `other` with a tab between. (As a
/// table of pointers they are 4 kB more to load.)
class Catalogue {
public:
    /// Of nothing.
    Catalogue() = default;
    /// Both texts outlive the catalogue and end with the end of a line. There may be more sentences than keys.
    Catalogue(std::string_view keys, std::string_view sentences);

    /// Once: further keys, and sentences behind those that are there already. Without keys nothing is added.
    void add(std::string_view keys, std::string_view sentences);

    /// Whether there is a sentence for each key; else it may be asked for none.
    bool whole() const { return keys_.size() <= sentences_.size(); }

    bool knows(std::string_view key) const { return place_of(key) < keys_.size(); }
    /// The sentence of a key; its form for one thing if `one` and it has one. Without data for a key that is not there.
    std::string_view sentence(std::string_view key, bool one) const;

private:
    std::size_t place_of(std::string_view key) const;
    void find_places();

    std::vector<std::string_view> keys_;
    bool added_ = false;
    /// For each key its place + 1 where its hash, or the next free room behind, is; 0: free. A frame asks some hundred times.
    std::vector<std::uint16_t> rooms_;
    std::vector<std::string_view> sentences_;
};

} // namespace overwater
