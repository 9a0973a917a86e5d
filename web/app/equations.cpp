// The page of formulas and equations: what is typed there, how it is kept, and how a step is taken back.

#include <algorithm>

#include "web/app/app.hpp"
#include "web/app/practice_desk.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

constexpr std::string_view prefix = "equations.";
constexpr std::string_view amount_prefix = "equations.amount.";
constexpr std::string_view setting_name = "equations";
constexpr std::size_t most_kept = 8'000;  ///< bytes; an equation has 2000 at the most
constexpr std::size_t most_steps = 200;
constexpr double pause_ms = 1000;
/// Between name and text in the kept line; what is typed has no control characters.
constexpr char separator = '\t';

void put(EquationsDesk::Texts& texts, const std::string& name, std::string text) {
    std::erase_if(texts, [&](const auto& row) { return row.first == name; });
    if (text.empty()) return;
    texts.emplace_back(name, std::move(text));
}

}  // namespace

void App::begin_equations() {
    std::string kept = shelf_.setting(setting_name);
    std::vector<std::string> parts(1);
    for (const char c : kept) {
        if (c == separator) {
            parts.emplace_back();
        } else {
            parts.back() += c;
        }
    }
    for (std::size_t i = 0; i + 1 < parts.size(); i += 2) put(equations_.texts, parts[i], parts[i + 1]);
}

void App::before_equation_step(const std::string& key) {
    const double now = platform::now_ms();
    const bool same = !key.empty() && key == equations_.open_step && now - equations_.last_ms < pause_ms;
    equations_.last_ms = now;
    if (same) return;
    equations_.open_step = key;
    equations_.undone.clear();
    equations_.done.push_back(equations_.texts);
    if (equations_.done.size() > most_steps) equations_.done.erase(equations_.done.begin());
}

void App::keep_equations() {
    platform::wake(2);
    std::string line;
    for (const auto& [name, text] : equations_.texts) {
        if (!line.empty()) line += separator;
        line += name + separator + text;
        std::replace(line.end() - static_cast<std::ptrdiff_t>(text.size()), line.end(), separator, ' ');
    }
    if (line.size() <= most_kept) shelf_.set_setting(setting_name, line);
}

void App::put_equation(const std::string& text, bool another) {
    before_equation_step({});
    if (another) equations_.texts.clear();
    put(equations_.texts, "text", text);
    ++interaction_.write;
    keep_equations();
}

bool App::equation_typed(const std::string& key, const std::string& text) {
    if (!key.starts_with(prefix)) return false;
    before_equation_step(key);
    const auto reactant = [this](std::string_view number) {
        const auto place = whole_number(number, 0, static_cast<int>(equations_.reactants.size()) - 1);
        return place ? equations_.reactants[static_cast<std::size_t>(*place)] : std::string();
    };
    EquationsDesk::Texts& texts = equations_.texts;
    if (key == "equations.text") {
        // Typed over or emptied: amounts were of what stood there before.
        if (text.size() <= 1) texts.clear();
        put(texts, "text", text);
    } else if (key == "equations.per") {
        put(texts, "per", reactant(text));
    } else if (key.starts_with(amount_prefix)) {
        const std::string_view rest = std::string_view(key).substr(amount_prefix.size());
        const std::size_t end = rest.find('.');
        const bool unit = end != std::string_view::npos;
        const std::string of = reactant(rest.substr(0, end));
        if (of.empty()) {
            // The field went away with its equation while this was typed: it must not stay in the field that comes there.
            ++interaction_.write;
            return true;
        }
        // What was typed for other substances is forgotten with the next amount.
        std::erase_if(texts, [this](const auto& row) {
            const std::size_t point = row.first.find('.');
            if (point == std::string::npos) return false;
            const auto& now = equations_.reactants;
            return std::find(now.begin(), now.end(), row.first.substr(point + 1)) == now.end();
        });
        put(texts, (unit ? "unit." : "amount.") + of, text);
        // A unit typed with the number counts before the one chosen: the list has to show it again.
        if (unit) ++interaction_.write;
    }
    keep_equations();
    return true;
}

void App::equation_step(std::vector<EquationsDesk::Texts>& from, std::vector<EquationsDesk::Texts>& to) {
    if (from.empty()) return;
    to.push_back(std::move(equations_.texts));
    equations_.texts = std::move(from.back());
    from.pop_back();
    equations_.open_step.clear();
    ++interaction_.write;
    keep_equations();
}

void App::take_reaction(const std::vector<std::pair<Field, std::string>>& entries) {
    if (refused()) return;
    before_change("equations.take");
    for (const auto& [field, text] : entries) {
        const bool own = belongs_to_run(field);
        Entries& sheet = own ? record_.runs[run_].entries : record_.shared;
        sheet.edit(field).text = text;
        sheet.tidy(field);
        remember(own ? static_cast<int>(run_) : -1, std::string(name_of(field)), text);
    }
    ++interaction_.write;
    after_change("equations.take");
    go(PageName::bench);
}

}  // namespace overwater
