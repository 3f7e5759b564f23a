#pragma once
// Slides as pictures of dots.
#include <string>

#include "engine/base/result.h"

namespace voltwright::app {

/// A slide, 16 to 9, as PNG of 1920 by 1080 dots; a problem if the system's librsvg is not there.
base::Result<std::string> slide_png(const std::string& svg);

}  // namespace voltwright::app
