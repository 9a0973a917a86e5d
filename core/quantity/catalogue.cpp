#include "core/quantity/catalogue.hpp"

namespace overwater {
namespace {

constexpr char between_forms = '\t';

void take_apart(std::string_view text, std::vector<std::string_view>& parts) {
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        parts.push_back(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
}

/// FNV-1a, 32 bits (offset and prime from memory; any hash would do).
std::size_t hash_of(std::string_view key) {
    std::uint32_t hash = 0x811c9dc5;
    for (const char letter : key) hash = (hash ^ static_cast<unsigned char>(letter)) * 0x01000193;
    return hash;
}

} // namespace

Catalogue::Catalogue(std::string_view keys, std::string_view sentences) {
    take_apart(keys, keys_);
    take_apart(sentences, sentences_);
    find_places();
}

void Catalogue::add(std::string_view keys, std::string_view sentences) {
    if (added_ || keys.empty()) return;
    added_ = true;
    take_apart(keys, keys_);
    take_apart(sentences, sentences_);
    find_places();
}

void Catalogue::find_places() {
    std::size_t size = 16;
    while (size < 2 * keys_.size()) size *= 2;
    rooms_.assign(size, 0);
    for (std::size_t i = 0; i < keys_.size(); ++i) {
        std::size_t room = hash_of(keys_[i]) & (size - 1);
        while (rooms_[room] != 0) room = (room + 1) & (size - 1);
        rooms_[room] = static_cast<std::uint16_t>(i + 1);
    }
}

std::size_t Catalogue::place_of(std::string_view key) const {
    if (keys_.empty()) return 0;
    const std::size_t mask = rooms_.size() - 1;
    for (std::size_t room = hash_of(key) & mask; rooms_[room] != 0; room = (room + 1) & mask) {
        const std::size_t place = rooms_[room] - std::size_t{1};
        if (keys_[place] == key) return place;
    }
    return keys_.size();
}

std::string_view Catalogue::sentence(std::string_view key, bool one) const {
    const std::size_t place = place_of(key);
    if (place == keys_.size()) return {};
    const std::string_view text = sentences_[place];
    const std::size_t cut = text.find(between_forms);
    if (cut == std::string_view::npos) return text;
    return one ? text.substr(0, cut) : text.substr(cut + 1);
}

} // namespace overwater
