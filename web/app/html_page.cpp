#include "web/app/html_page.hpp"

#include "web/draw/markup_reference.hpp"

namespace overwater {

std::string html_text(std::string_view words) {
    std::string out;
    for (const char c : words) {
        if (const char* reference = markup_reference(c)) {
            out += reference;
        } else {
            out += c;
        }
    }
    return out;
}

HtmlPage::HtmlPage(std::string_view language, std::string_view title, Paper paper)
    : html_("<!DOCTYPE html><html lang=\"" + html_text(language) + "\"><head><meta charset=\"utf-8\"><title>" +
            html_text(title) + "</title></head><body class=\"" + (paper == Paper::landscape ? "landscape" : "portrait") + "\">") {
    if (paper != Paper::cards) element("h1", title);
}

void HtmlPage::element(std::string_view name, std::string_view words) {
    html_ += '<';
    html_ += name;
    html_ += '>';
    html_ += html_text(words);
    html_ += "</";
    html_ += name;
    html_ += '>';
}

}  // namespace overwater
