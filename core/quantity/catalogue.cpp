#include "core/quantity/catalogue.hpp"

#include <algorithm>

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

} // namespace

Catalogue::Catalogue(std::string_view keys, std::string_view sentences) {
    take_apart(keys, keys_);
    take_apart(sentences, sentences_);
    first_ = keys_.size();
}

void Catalogue::add(std::string_view keys, std::string_view sentences) {
    if (keys_.size() > first_) return;
    take_apart(keys, keys_);
    take_apart(sentences, sentences_);
}

std::size_t Catalogue::place_of(std::string_view key) const {
    const auto middle = keys_.begin() + static_cast<std::ptrdiff_t>(first_);
    auto place = std::lower_bound(keys_.begin(), middle, key);
    if (place == middle || *place != key) place = std::lower_bound(middle, keys_.end(), key);
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
