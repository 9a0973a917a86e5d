#include "core/record/json.hpp"

#include <utility>

#include "core/record/record_json.hpp"
#include "core/record/text_guard.hpp"

namespace overwater {

LoadResult record_from_json(std::string_view text) {
    LoadResult result;
    if (auto problem = refuse_text(text)) {
        result.problem = *std::move(problem);
        return result;
    }
    auto json = parsed(without_byte_order_mark(text));
    if (!json) {
        result.problem = Message{"import.not_json"};
        return result;
    }
    return read_record(*std::move(json));
}

std::string record_to_json(const Record& record, JsonLayout layout) {
    std::string text = json_text(record_json(record), layout == JsonLayout::compact ? -1 : 2);
    if (layout == JsonLayout::indented) text += '\n';
    return text;
}

}  // namespace overwater
