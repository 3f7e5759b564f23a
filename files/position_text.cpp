#include "files/position_text.h"

#include <fmt/format.h>

#include <cmath>

namespace voltwright::files {

std::string position_text(const sky::Site& site, std::string_view between) {
  return fmt::format("{:.2f}° {}{}{:.2f}° {}", std::abs(site.latitude_deg),
                     site.latitude_deg < 0.0 ? 'S' : 'N', between, std::abs(site.longitude_deg),
                     site.longitude_deg < 0.0 ? 'W' : 'E');
}

}  // namespace voltwright::files
