#include "engine/sky/air_temperature.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace voltwright::sky {
namespace {

/// Whether a place lies in North America east of the Rocky Mountains, with a soft western border, 0 to 1.
double northern_inland_share(const Site& site) {
  if (site.latitude_deg < 28.0 || site.longitude_deg > -65.0) return 0.0;
  return std::clamp((site.longitude_deg + 110.0) / 6.0, 0.0, 1.0);
}

}  // namespace

double daily_temperature_course(double solar_time_h) {
  const double t = 2.0 * std::numbers::pi * (solar_time_h - 1.0) / 24.0;
  return 0.4632 * std::cos(t - 3.805) + 0.0984 * std::cos(2.0 * t - 0.360) +
         0.0168 * std::cos(3.0 * t - 0.822) + 0.0138 * std::cos(4.0 * t - 3.513);
}

double day_to_day_deviation_K(double monthly_mean_C, const Site& site) {
  constexpr double kTropics_K = 0.2;
  constexpr double kPerDegree_K = 0.054;
  constexpr double kWidestLatitude_deg = 45.0;
  constexpr double kFrost = 0.30;  // per kelvin below 5 degC at 60 deg
  constexpr double kFrostBegins_C = 5.0;
  constexpr double kFrostEnds_K = 20.0;
  constexpr double kCoolInland_K = 4.3;
  constexpr double kLeast_K = 0.8;
  const double latitude = std::min(70.0, std::abs(site.latitude_deg));
  const double base = kTropics_K + kPerDegree_K * std::min(kWidestLatitude_deg, latitude);
  const double polar = std::pow(latitude / 60.0, 3);
  const double frost = kFrost * polar * std::clamp(kFrostBegins_C - monthly_mean_C, 0.0, kFrostEnds_K);
  const double cool =
      kCoolInland_K * northern_inland_share(site) * std::clamp((20.0 - monthly_mean_C) / 14.0, 0.0, 1.0);
  return std::max(kLeast_K, base + std::max(frost, cool));
}

double departure_K(double normal, double deviation_K) {
  // The variance of tanh(k z) is share^2 for k = share (1 - share^2)^-0.975; fitted, within 1 % up to a half.
  constexpr double kMostShare = 0.5;
  constexpr double kExponent = -0.975;
  const double share = std::min(deviation_K / kFurthestDeparture_K, kMostShare);
  const double slope = share * std::pow(1.0 - share * share, kExponent);
  return kFurthestDeparture_K * std::tanh(slope * normal);
}

}  // namespace voltwright::sky
