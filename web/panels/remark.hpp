#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

/// A sentence below the field it belongs to; a loud one on warning paper. Returns the height it took.
float draw_remark(Ui& ui, const Rect& area, const TextView& key, const TextView& words, bool loud, float size = 14);

}  // namespace overwater
