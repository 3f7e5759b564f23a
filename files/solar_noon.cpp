#include "files/solar_noon.h"

#include <cstddef>

namespace voltwright::files {

double solar_noon_offset_h(const std::vector<double>& ghi_local, double longitude_deg, double zone_h) {
  const double noon_h = 12.0 - (longitude_deg - 15.0 * zone_h) / 15.0;
  double weighted = 0.0;
  double sum = 0.0;
  for (std::size_t i = 0; i < ghi_local.size(); ++i) {
    weighted += ghi_local[i] * (static_cast<double>(i % 24) + 0.5);
    sum += ghi_local[i];
  }
  return sum > 0.0 ? weighted / sum - noon_h : 0.0;
}

}  // namespace voltwright::files
