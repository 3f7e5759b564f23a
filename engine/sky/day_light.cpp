#include "engine/sky/day_light.h"

#include <algorithm>
#include <cmath>

namespace voltwright::sky {
namespace {

constexpr std::size_t kHourMinutes = 60;
constexpr double kLowestTurbidity = 1.5;
constexpr double kTurbidityStep = 0.25;
constexpr double kTablesPerTurbidity = 50.0;

DayMeans light_above(const DaySun& sun) {
  DayMeans means;
  for (std::size_t hour = 0; hour < means.above.size(); ++hour) {
    float height = 0.0F;
    int up = 0;
    for (std::size_t i = 0; i < kHourMinutes; ++i) {
      const float c = sun.cos_zenith[hour * kHourMinutes + i];
      height += std::max(0.0F, c);
      up += c > 0.0F ? 1 : 0;
    }
    if (up == 0) continue;
    means.sin_height[hour] = static_cast<double>(height) / up;
    means.above[hour] = static_cast<double>(height) / static_cast<double>(kHourMinutes) *
                        static_cast<double>(sun.extraterrestrial[hour * kHourMinutes]);
    means.above_sum += means.above[hour];
  }
  return means;
}

}  // namespace

DayLight::DayLight(double elevation_m) : table_(AirMassTable(), elevation_m) {}

void DayLight::fill_clear_sky(const DaySun& sun, double turbidity, DayMeans& means) {
  if (turbidity != table_turbidity_) {
    table_.set_turbidity(turbidity);
    table_turbidity_ = turbidity;
  }
  means.clear_sum = 0.0;
  for (std::size_t hour = 0; hour < means.clear.size(); ++hour) {
    means.clear[hour] = 0.0;
    float* const clear = clear_.data() + hour * kHourMinutes;
    if (!(means.above[hour] > 0.0)) {
      std::fill_n(clear, kHourMinutes, 0.0F);
      continue;
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < kHourMinutes; ++i) {
      const std::size_t m = hour * kHourMinutes + i;
      clear[i] = sun.extraterrestrial[m] * table_.fraction(sun.cos_zenith[m]);
      sum += static_cast<double>(clear[i]);
    }
    means.clear[hour] = sum / static_cast<double>(kHourMinutes);
    means.clear_sum += means.clear[hour];
  }
}

DayMeans DayLight::of(const DaySun& sun, double linke_turbidity, double wanted_clearness) {
  DayMeans means = light_above(sun);
  double turbidity =
      std::max(kLowestTurbidity, std::round(kTablesPerTurbidity * linke_turbidity) / kTablesPerTurbidity);
  fill_clear_sky(sun, turbidity, means);
  while (means.clear_sum < wanted_clearness * means.above_sum && turbidity > kLowestTurbidity) {
    turbidity = std::max(kLowestTurbidity, turbidity - kTurbidityStep);
    fill_clear_sky(sun, turbidity, means);
  }
  return means;
}

}  // namespace voltwright::sky
