#include "core/lesson/text_table.hpp"

#include <algorithm>

#include "core/record/text_guard.hpp"

namespace overwater {

namespace {

/// Takes a text apart cell by cell.
class TableReader {
public:
    explicit TableReader(std::string_view text) : text_(without_byte_order_mark(text)) {}

    TextTable read() {
        table_.separator = separator();
        std::size_t line = 1;
        std::vector<std::string> row;
        std::size_t begun = 1;
        while (at_ < text_.size()) {
            const std::size_t before = at_;
            row.push_back(cell());
            line_breaks(before, line);
            if (at_ < text_.size() && text_[at_] == table_.separator) {
                ++at_;
                if (at_ < text_.size()) continue;
                row.emplace_back();
            }
            if (at_ < text_.size()) {
                const std::size_t end = at_;
                at_ += text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n' ? 2 : 1;
                line_breaks(end, line);
            }
            const bool holds = std::any_of(row.begin(), row.end(), [](const std::string& c) { return !c.empty(); });
            if (holds) {
                table_.rows.push_back(std::move(row));
                table_.lines.push_back(begun);
            }
            row.clear();
            begun = line;
        }
        return std::move(table_);
    }

private:
    char separator() const {
        bool quoted = false;
        bool semicolon = false;
        bool begun = false;
        bool cell_begins = true;  // elsewhere a quote is a sign like another, such as that of inches
        for (const char c : text_) {
            if (c == '"' && (quoted || cell_begins)) quoted = !quoted;
            if (quoted) continue;
            if (c == '\t') return c;
            semicolon = semicolon || c == ';';
            const bool end = c == '\n' || c == '\r';
            cell_begins = c == ';' || c == ',' || end || (cell_begins && (c == ' ' || c == '"'));
            if (end && begun) break;
            begun = begun || !end;
        }
        return semicolon ? ';' : ',';
    }

    void line_breaks(std::size_t from, std::size_t& line) const {
        for (std::size_t i = from; i < at_; ++i) {
            const bool pair = text_[i] == '\r' && i + 1 < text_.size() && text_[i + 1] == '\n';
            if (text_[i] == '\n' || (text_[i] == '\r' && !pair)) ++line;
        }
    }

    bool at_cell_end() const {
        return at_ >= text_.size() || text_[at_] == table_.separator || text_[at_] == '\n' || text_[at_] == '\r';
    }

    /// Moves behind the cell. Spaces around it do not count, nor those before a quote.
    std::string cell() {
        std::size_t quote = at_;
        while (quote < text_.size() && text_[quote] == ' ') ++quote;
        std::string out;
        if (quote < text_.size() && text_[quote] == '"') {
            at_ = quote + 1;
            while (at_ < text_.size()) {
                if (text_[at_] == '"') {
                    if (at_ + 1 >= text_.size() || text_[at_ + 1] != '"') break;
                    ++at_;
                }
                out += text_[at_++];
            }
            table_.open_quote = table_.open_quote || at_ >= text_.size();
            if (at_ < text_.size()) ++at_;
        }
        while (!at_cell_end()) out += text_[at_++];
        while (!out.empty() && out.back() == ' ') out.pop_back();
        out.erase(0, std::min(out.find_first_not_of(' '), out.size()));
        return out;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    TextTable table_;
};

}  // namespace

TextTable read_table(std::string_view text) { return TableReader(text).read(); }

std::string delimited(const std::vector<std::vector<std::string>>& rows, char separator) {
    std::string out = "\xef\xbb\xbf";
    // Who reads it finds the separator in the header line: none that would be taken before it may stand there open. With
    // one column there is none to find.
    const std::string_view taken_before = separator == '\t' ? "" : separator == ';' ? "\t" : "\t;";
    const bool one_column = !rows.empty() && rows.front().size() < 2;
    for (const auto& row : rows) {
        const std::string_view misleading = one_column ? ",;\t" : &row == &rows.front() ? taken_before : "";
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i > 0) out += separator;
            std::string cell = row[i];
            // Spreadsheets know the hyphen alone as a minus sign.
            constexpr std::string_view minus = "\u2212";
            if (cell.starts_with(minus)) cell.replace(0, minus.size(), "-");
            // A spreadsheet would take it for a formula and carry it out; a number with its sign is none.
            const bool signed_number = cell.size() > 1 && (cell[0] == '+' || cell[0] == '-') &&
                                       cell.find_first_not_of(".,0123456789", 1) == std::string::npos;
            const bool formula =
                !cell.empty() && !signed_number && std::string_view("=+-@\t\r").find(cell[0]) != std::string_view::npos;
            const bool quotes = formula || cell.find_first_of("\"\r\n") != std::string::npos ||
                                cell.find(separator) != std::string::npos ||
                                cell.find_first_of(misleading) != std::string::npos;
            if (!quotes) {
                out += cell;
                continue;
            }
            out += formula ? "\"'" : "\"";
            for (const char c : cell) {
                if (c == '"') out += c;
                out += c;
            }
            out += '"';
        }
        out += "\r\n";
    }
    return out;
}

}  // namespace overwater
