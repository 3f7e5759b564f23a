#include "files/weather/solar_noon.h"

#include <cmath>

#include "engine/sky/extraterrestrial.h"

namespace voltwright::files {

double solar_noon_offset_h(const std::vector<double>& ghi_utc, double phase_h, double longitude_deg,
                           std::size_t first_hour, std::size_t hours) {
  constexpr double kDay_h = 24.0;
  constexpr double kDegreesPerHour = 15.0;
  const std::size_t n = ghi_utc.size();
  const bool whole = hours >= n;
  double weighted = 0.0;
  double sum = 0.0;
  for (std::size_t k = 0; k < hours && k < n; ++k) {
    const std::size_t i = (first_hour + k) % n;
    const double since_h = phase_h + static_cast<double>(i) + 0.5;
    double solar_h = since_h + longitude_deg / kDegreesPerHour;
    if (!whole) solar_h += sky::equation_of_time_min(1.0 + since_h / kDay_h) / 60.0;
    solar_h -= kDay_h * std::floor(solar_h / kDay_h);
    weighted += ghi_utc[i] * solar_h;
    sum += ghi_utc[i];
  }
  return sum > 0.0 ? weighted / sum - kDay_h / 2.0 : 0.0;
}

}  // namespace voltwright::files
