#pragma once
#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sky/weather.h"

namespace voltwright::files {

/// Great-circle distance in km between two points by the haversine formula on a sphere of mean Earth radius
/// 6371.0088 km. Heights are ignored.
inline double great_circle_km(const sky::Site& a, const sky::Site& b) {
  constexpr double kRadius_km = 6371.0088;
  constexpr double kRad = std::numbers::pi / 180.0;
  const double north = std::sin((b.latitude_deg - a.latitude_deg) * kRad / 2.0);
  const double east = std::sin((b.longitude_deg - a.longitude_deg) * kRad / 2.0);
  const double h =
      north * north + std::cos(a.latitude_deg * kRad) * std::cos(b.latitude_deg * kRad) * east * east;
  return 2.0 * kRadius_km * std::asin(std::sqrt(std::clamp(h, 0.0, 1.0)));
}

}  // namespace voltwright::files
