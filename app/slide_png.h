#pragma once
// Slides as pictures of dots.
#include <string>

#include "engine/base/result.h"
#include "files/png.h"

namespace voltwright::app {

/// A slide, 16 to 9, as PNG of 1920 by 1080 dots.
inline base::Result<std::string> slide_png(const std::string& svg) {
  constexpr int kWidth_px = 1920;
  constexpr int kHeight_px = 1080;
  return files::png_of_svg(svg, kWidth_px, kHeight_px);
}

}  // namespace voltwright::app
