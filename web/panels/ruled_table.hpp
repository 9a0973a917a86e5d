#pragma once

#include <string>
#include <vector>

#include "web/ui/ui.hpp"

namespace overwater {

/// A table drawn row by row with rules between them, and its native twin. The first column begins at the left, the others end
/// at the right of theirs.
class RuledTable {
public:
    RuledTable(Ui& ui, const Rect& area, const std::string& caption, const std::vector<std::string>& columns);
    /// As many cells as there are columns.
    void row(const std::vector<std::string>& cells);
    /// Returns the height taken.
    float end(const TextView& key);

private:
    void line(const std::vector<std::string>& cells, const Type& first, const Type& others);

    Ui& ui_;
    Rect area_;
    float y_;
    Element table_;
    Element body_ = Element::named("tbody");
};

}  // namespace overwater
