#pragma once

#include <string>
#include <string_view>

#include "core/quantity/text_view.hpp"

namespace overwater {

/// Writes JSON piece by piece; commas come by themselves. Only what the mirror needs: nlohmann/json stays with the
/// records, whose form has to be read too.
class JsonText {
public:
    JsonText& object() { return begin('{'); }
    JsonText& array() { return begin('['); }
    JsonText& close_object() { return end('}'); }
    JsonText& close_array() { return end(']'); }
    JsonText& key(const TextView& name);
    JsonText& text(const TextView& value);
    JsonText& number(double value);
    JsonText& truth(bool value);
    JsonText& null();
    const std::string& str() const { return out_; }

private:
    JsonText& begin(char bracket);
    JsonText& end(char bracket);
    void separate();
    void quote(std::string_view value);
    std::string out_;
    bool need_comma_ = false;
};

}  // namespace overwater
