#include "core/quantity/catalogue.hpp"

#include <algorithm>

namespace overwater {
namespace {

constexpr char between_forms = '\t';

std::vector<std::string_view> parts_of(std::string_view text) {
    std::vector<std::string_view> parts;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        parts.push_back(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
    return parts;
}

} // namespace

Catalogue::Catalogue(std::string_view keys, std::string_view sentences)
    : keys_(parts_of(keys)), sentences_(parts_of(sentences)) {}

std::size_t Catalogue::place_of(std::string_view key) const {
    const auto place = std::lower_bound(keys_.begin(), keys_.end(), key);
    if (place == keys_.end() || *place != key) return keys_.size();
    return static_cast<std::size_t>(place - keys_.begin());
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
