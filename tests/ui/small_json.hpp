#pragma once

#include <cstdlib>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// JSON read back by tests, independently of the program's own writer and of the library that reads records.
namespace overwater::test {

struct Json {
    enum class Kind { null, truth, number, text, list, object };
    Kind kind = Kind::null;
    double number = 0;  ///< truth: 0 or 1
    std::string text;
    std::vector<Json> items;
    std::vector<std::pair<std::string, Json>> members;
    std::string_view raw;  ///< the text it was read from, which has to outlive it

    Json();
    const Json* find(std::string_view name) const;
    const Json& at(std::string_view name) const;
};

// Outside of the class, where it is complete: clang 14 wants that of what stands in a vector of pairs.
inline Json::Json() = default;
inline const Json* Json::find(std::string_view name) const {
    for (const auto& [key, value] : members) {
        if (key == name) return &value;
    }
    return nullptr;
}
inline const Json& Json::at(std::string_view name) const {
    static const Json nothing;
    const Json* found = find(name);
    return found != nullptr ? *found : nothing;
}

class JsonReader {
public:
    /// False where the text is not one JSON value; `\u` escapes of the basic plane only.
    static bool read(std::string_view source, Json& out) {
        JsonReader reader(source);
        const bool good = reader.value(out);
        reader.space();
        return good && reader.at_ == source.size();
    }

private:
    explicit JsonReader(std::string_view source) : source_(source) {}

    void space() {
        while (at_ < source_.size() && std::string_view(" \n\r\t").find(source_[at_]) != std::string_view::npos) ++at_;
    }
    bool take(char c) {
        space();
        if (at_ >= source_.size() || source_[at_] != c) return false;
        ++at_;
        return true;
    }
    bool word(std::string_view letters) {
        if (source_.substr(at_, letters.size()) != letters) return false;
        at_ += letters.size();
        return true;
    }
    bool value(Json& out) {
        space();
        const std::size_t begin = at_;
        const bool good = at_ < source_.size() && any(out);
        out.raw = source_.substr(begin, at_ - begin);
        return good;
    }
    bool any(Json& out) {
        switch (source_[at_]) {
        case '"': out.kind = Json::Kind::text; return text(out.text);
        case '[': out.kind = Json::Kind::list; return list(out);
        case '{': out.kind = Json::Kind::object; return object(out);
        case 'n': return word("null");
        case 't':
            out.kind = Json::Kind::truth;
            out.number = 1;
            return word("true");
        case 'f': out.kind = Json::Kind::truth; return word("false");
        default: break;
        }
        out.kind = Json::Kind::number;
        const std::string digits(source_.substr(at_, 40));
        char* end = nullptr;
        out.number = std::strtod(digits.c_str(), &end);
        at_ += static_cast<std::size_t>(end - digits.c_str());
        return end != digits.c_str();
    }
    bool list(Json& out) {
        ++at_;
        if (take(']')) return true;
        do {
            if (!value(out.items.emplace_back())) return false;
        } while (take(','));
        return take(']');
    }
    bool object(Json& out) {
        ++at_;
        if (take('}')) return true;
        do {
            space();
            auto& [name, member] = out.members.emplace_back();
            if (at_ >= source_.size() || source_[at_] != '"' || !text(name) || !take(':') || !value(member)) {
                return false;
            }
        } while (take(','));
        return take('}');
    }
    bool text(std::string& out) {
        ++at_;
        while (at_ < source_.size() && source_[at_] != '"') {
            const char c = source_[at_++];
            if (static_cast<unsigned char>(c) < 0x20) return false;
            if (c != '\\') {
                out += c;
            } else if (!escaped(out)) {
                return false;
            }
        }
        return at_++ < source_.size();
    }
    bool escaped(std::string& out) {
        if (at_ >= source_.size()) return false;
        const char c = source_[at_++];
        constexpr std::string_view from = "\"\\/bfnrt";
        constexpr std::string_view to = "\"\\/\b\f\n\r\t";
        if (const std::size_t place = from.find(c); place != std::string_view::npos) {
            out += to[place];
            return true;
        }
        if (c != 'u' || at_ + 4 > source_.size()) return false;
        const auto code = std::strtoul(std::string(source_.substr(at_, 4)).c_str(), nullptr, 16);
        at_ += 4;
        if (code < 0x80) {
            out += static_cast<char>(code);
        } else if (code < 0x800) {
            out += static_cast<char>(0xc0 | (code >> 6));
            out += static_cast<char>(0x80 | (code & 0x3f));
        } else {
            out += static_cast<char>(0xe0 | (code >> 12));
            out += static_cast<char>(0x80 | ((code >> 6) & 0x3f));
            out += static_cast<char>(0x80 | (code & 0x3f));
        }
        return true;
    }

    std::string_view source_;
    std::size_t at_ = 0;
};

}  // namespace overwater::test
