#include "web/panels/table.hpp"

namespace overwater {

Element table_cell(const char* name, const std::string& words, const char* scope) {
    Element element = Element::named(name);
    if (scope != nullptr) element.with("scope", scope);
    element.add(Element::text_node(words));
    return element;
}

Element table_of(const std::string& caption, const std::vector<std::string>& columns) {
    Element table = Element::named("table");
    table.add(table_cell("caption", caption));
    Element head = Element::named("tr");
    for (const std::string& column : columns) head.add(table_cell("th", column, "col"));
    Element part = Element::named("thead");
    part.add(std::move(head));
    table.add(std::move(part));
    return table;
}

Element table_row(const std::string& name, const std::vector<std::string>& cells) {
    Element row = Element::named("tr");
    row.add(table_cell("th", name, "row"));
    for (const std::string& words : cells) row.add(table_cell("td", words));
    return row;
}

}  // namespace overwater
