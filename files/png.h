#pragma once
// A picture as PNG.
#include <string>
#include <string_view>

#include "engine/base/result.h"

namespace voltwright::files {

/// Rasterises an SVG text, `width_px` by `height_px`, and gives the bytes of a PNG. The system's librsvg and
/// cairo are loaded when this is first called, so that everything else works without them; a problem if they
/// are not there, or if the text is no SVG. Sizes from 1 to 8192.
base::Result<std::string> png_of_svg(std::string_view svg, int width_px, int height_px);

}  // namespace voltwright::files
