#include "app/slide_png.h"

#include "files/png.h"

namespace voltwright::app {

base::Result<std::string> slide_png(const std::string& svg) {
  constexpr int kWidth_px = 1920;
  constexpr int kHeight_px = 1080;
  return files::png_of_svg(svg, kWidth_px, kHeight_px);
}

}  // namespace voltwright::app
