#pragma once

namespace overwater {

/// What stands in HTML, SVG and MathML for a character that markup uses itself; null for any other.
inline const char* markup_reference(char c) {
    switch (c) {
    case '&': return "&amp;";
    case '<': return "&lt;";
    case '>': return "&gt;";
    case '"': return "&quot;";
    case '\'': return "&#39;";
    default: return nullptr;
    }
}

}  // namespace overwater
