#include "files/weather/closure.h"

#include <algorithm>
#include <cstddef>

#include "engine/sky/split.h"
#include "engine/sky/sun.h"

namespace voltwright::files {

namespace {
constexpr std::size_t kHours = 8760;
constexpr std::size_t kMinutes = 60;
constexpr double kLargestDirect_W_m2 = 1361.1;
}  // namespace

std::vector<double> mean_cosine(const sky::Site& site, std::int64_t start_utc_s) {
  const sky::SunMinutes sun = sky::sun_minutes(site, start_utc_s, kHours * kMinutes);
  std::vector<double> mean(kHours, 0.0);
  for (std::size_t i = 0; i < kHours; ++i) {
    for (std::size_t m = 0; m < kMinutes; ++m) {
      mean[i] += std::max(0.0, static_cast<double>(sun.cos_zenith[i * kMinutes + m])) / 60.0;
    }
  }
  return mean;
}

void close_radiation(sky::HourlyWeather& weather) {
  auto& ghi = weather.ghi_W_m2;
  auto& dni = weather.dni_W_m2;
  auto& dhi = weather.dhi_W_m2;
  const int missing = (ghi.empty() ? 1 : 0) + (dni.empty() ? 1 : 0) + (dhi.empty() ? 1 : 0);
  if (missing != 1) return;
  const std::vector<double> cosine = mean_cosine(weather.site, weather.start_utc_s);
  std::vector<double> made(kHours, 0.0);
  for (std::size_t i = 0; i < kHours; ++i) {
    if (ghi.empty()) {
      made[i] = dhi[i] + dni[i] * cosine[i];
    } else if (dhi.empty()) {
      made[i] = std::clamp(ghi[i] - dni[i] * cosine[i], 0.0, ghi[i]);
    } else if (cosine[i] > sky::kLowestCosForBeam) {
      made[i] = std::clamp((ghi[i] - dhi[i]) / cosine[i], 0.0, kLargestDirect_W_m2);
    }
  }
  (ghi.empty() ? ghi : (dni.empty() ? dni : dhi)) = std::move(made);
}

}  // namespace voltwright::files
