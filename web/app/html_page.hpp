#pragma once

#include <string>
#include <string_view>

namespace overwater {

/// The same text where HTML has text: & < > and quotes are written as references.
std::string html_text(std::string_view words);

/// `cards`: upright, and each card has a heading of its own instead of one for the document.
enum class Paper { portrait, landscape, cards };

/// A document to be printed, without styles or scripts, written from its beginning on.
class HtmlPage {
public:
    /// `language` is a BCP 47 tag; the title is the first heading too.
    HtmlPage(std::string_view language, std::string_view title, Paper paper = Paper::portrait);

    /// An element with a text.
    void element(std::string_view name, std::string_view words);
    /// Markup as it is.
    void add(std::string_view markup) { html_ += markup; }
    std::string finished() const { return html_ + "</body></html>"; }

private:
    std::string html_;
};

}  // namespace overwater
