#include "files/weather/day_hours.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

#include "engine/sky/air_temperature.h"
#include "engine/sky/clear_sky.h"
#include "engine/sky/sun.h"
#include "files/weather/layout.h"

namespace voltwright::files {

void add_hours_of_day(const WeatherRecord& day, double range_K, const sky::Site& site, double zone_h,
                      std::vector<WeatherRecord>& hours) {
  constexpr std::size_t kHours = 24;
  constexpr double kMost_W_m2 = 1500.0;
  const double midnight_utc_s = static_cast<double>(stamp_of(day)) - 3600.0 * zone_h;
  std::array<double, kHours> clear{};
  for (std::size_t h = 0; h < kHours; ++h) {
    for (const double part : {0.125, 0.375, 0.625, 0.875}) {
      const double at_s = midnight_utc_s + 3600.0 * (static_cast<double>(h) + part);
      const double zenith = sky::sun_position(at_s, site).zenith_deg * std::numbers::pi / 180.0;
      clear.at(h) += 0.25 * sky::haurwitz_W_m2(std::max(0.0, std::cos(zenith)));
    }
  }
  const double sum = std::accumulate(clear.begin(), clear.end(), 0.0);
  const auto& global = day.value.at(static_cast<std::size_t>(WeatherColumn::kGhi));
  const auto& mean_C = day.value.at(static_cast<std::size_t>(WeatherColumn::kTemperature));
  for (std::size_t h = 0; h < kHours; ++h) {
    WeatherRecord hour = day;
    hour.stamp_s = static_cast<std::int64_t>(h) * 3600;
    if (global) {
      // In polar night a trace of light has no shape; it is spread evenly.
      const double share = sum > 1.0 ? clear.at(h) / sum : 1.0 / static_cast<double>(kHours);
      hour.value.at(static_cast<std::size_t>(WeatherColumn::kGhi)) =
          std::min(kMost_W_m2, *global * static_cast<double>(kHours) * share);
    }
    if (mean_C) {
      double solar_h = static_cast<double>(h) + 0.5 - zone_h + site.longitude_deg / 15.0;
      solar_h -= 24.0 * std::floor(solar_h / 24.0);
      hour.value.at(static_cast<std::size_t>(WeatherColumn::kTemperature)) =
          *mean_C + range_K * sky::daily_temperature_course(solar_h);
    }
    hours.push_back(hour);
  }
}

}  // namespace voltwright::files
