#pragma once
// A mark of its own for each chemistry, told apart without colour.
#include <string_view>

#include "files/report/axis.h"

namespace voltwright::files::report {

/// Draws the mark of the chemistry around (x, y), about 2 * size wide; an unknown id gets a circle with a
/// point.
void draw_chemistry_mark(Drawing& drawing, std::string_view chemistry, double x, double y, double size,
                         std::string_view css_class);

}  // namespace voltwright::files::report
