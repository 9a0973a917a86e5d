#include "web/app/record_link.hpp"

#include "core/record/json.hpp"
#include "web/app/fragment.hpp"

namespace overwater {

namespace {

constexpr std::string_view name = "record=";

}  // namespace

std::string record_fragment(const Record& record) {
    return fragment_of(name, record_to_json(record, JsonLayout::compact));
}

std::optional<std::string> record_text_in(std::string_view fragment) { return text_in_fragment(name, fragment); }

}  // namespace overwater
