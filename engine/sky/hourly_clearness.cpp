#include "engine/sky/hourly_clearness.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace voltwright::sky {

DayHours hourly_clearness(double clearness, const DayHours& sin_height, base::RandomStream& random) {
  const double k = std::clamp(clearness, 0.0, 1.0);
  const double lambda = -0.19 + 1.12 * k + 0.24 * std::exp(-8.0 * k);
  const double eta = 0.32 - 1.6 * (k - 0.5) * (k - 0.5);
  const double kappa = 0.19 + 2.27 * k * k - 2.51 * k * k * k;
  const double spread = 0.14 * std::exp(-20.0 * (k - 0.35) * (k - 0.35));
  const double steepness = 3.0 * (k - 0.45) * (k - 0.45) + 16.0 * std::pow(k, 5);
  const double persistence = 0.38 + 0.06 * std::cos(7.4 * k - 2.5);
  const double fresh = std::sqrt(1.0 - persistence * persistence);
  constexpr double kDarkest = 0.01;  // keeps an hour with sun from having no light at all

  DayHours kt{};
  double y = 0.0;
  bool first = true;
  for (std::size_t hour = 0; hour < kt.size(); ++hour) {
    const double height = sin_height[hour];
    if (!(height > 0.0)) continue;
    const double solar_time_h = static_cast<double>(hour) + 0.5;
    const double clear =
        std::max(2.0 * kDarkest, 0.88 * std::cos(std::numbers::pi * (solar_time_h - 12.0) / 30.0));
    const double mean = lambda + eta * std::exp(-kappa / height);
    const double deviation = spread * std::exp(steepness * (1.0 - height));
    const double before = first ? 0.0 : persistence * y;
    const double innovation = first ? 1.0 : fresh;
    first = false;
    constexpr int kTries = 8;
    double value = -1.0;
    for (int attempt = 0; attempt < kTries && (value < 0.0 || value > clear); ++attempt) {
      y = before + innovation * random.normal();
      value = mean + deviation * y;
    }
    kt[hour] = std::clamp(value, kDarkest, clear);
  }
  return kt;
}

DayHours scale_within_limits(const DayHours& values, const DayHours& limits, double sum) {
  DayHours scaled{};
  std::array<bool, 24> full{};
  double left = std::max(0.0, sum);
  // Each round fixes the hours that reach their limit; the factor only grows, so that none comes free again.
  for (int round = 0; round < 25; ++round) {
    double open = 0.0;
    for (std::size_t h = 0; h < 24; ++h) open += full[h] ? 0.0 : values[h];
    if (!(open > 0.0)) break;
    const double factor = left / open;
    bool changed = false;
    for (std::size_t h = 0; h < 24; ++h) {
      if (full[h]) continue;
      scaled[h] = values[h] * factor;
      if (scaled[h] > limits[h]) {
        scaled[h] = limits[h];
        full[h] = true;
        left -= limits[h];
        changed = true;
      }
    }
    if (!changed) break;
    left = std::max(0.0, left);
  }
  return scaled;
}

}  // namespace voltwright::sky
