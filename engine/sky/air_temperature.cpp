#include "engine/sky/air_temperature.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace voltwright::sky {

double daily_temperature_course(double solar_time_h) {
  const double t = 2.0 * std::numbers::pi * (solar_time_h - 1.0) / 24.0;
  return 0.4632 * std::cos(t - 3.805) + 0.0984 * std::cos(2.0 * t - 0.360) +
         0.0168 * std::cos(3.0 * t - 0.822) + 0.0138 * std::cos(4.0 * t - 3.513);
}

double day_to_day_deviation_K(double daily_range_K, double latitude_deg) {
  constexpr double kSea_K = 2.0;
  constexpr double kInland_K = 6.0;
  if (std::abs(latitude_deg) < 20.0) return kSea_K;
  const double inland = std::clamp((daily_range_K - 5.0) / 9.0, 0.0, 1.0);
  return kSea_K + (kInland_K - kSea_K) * inland;
}

}  // namespace voltwright::sky
