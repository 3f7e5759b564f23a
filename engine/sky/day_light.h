#pragma once
// The light of one solar day above the air and under a clear sky, minute by minute and hour by hour.
#include <array>
#include <cstddef>

#include "engine/sky/clear_sky.h"
#include "engine/sky/hourly_clearness.h"

namespace voltwright::sky {

constexpr std::size_t kDayMinutes = 1440;

/// Pointers to the 1440 minutes of one solar day, from its midnight.
struct DaySun {
  const float* cos_zenith = nullptr;
  const float* extraterrestrial = nullptr;  // W/m2 on a plane facing the sun
};

/// Hourly means of one solar day.
struct DayMeans {
  DayHours above{};       // extraterrestrial on the horizontal, W/m2
  DayHours sin_height{};  // of the sun while it is up
  DayHours clear{};       // clear sky on the horizontal, W/m2
  double above_sum = 0.0;
  double clear_sum = 0.0;
};

/// Clear sky of the days of one place by the model of Ineichen and Perez.
class DayLight {
 public:
  explicit DayLight(double elevation_m);

  /// Means of a day whose clear sky holds at least `wanted_clearness` of the light above the air: where the
  /// turbidity leaves less, it is lowered in steps of 0.25, not below 1.5. Turbidities are rounded to 0.02,
  /// so that neighbouring days share a table.
  DayMeans of(const DaySun& sun, double linke_turbidity, double wanted_clearness);

  /// The 1440 minutes of the clear sky of the last day asked for, W/m2.
  const float* minutes() const { return clear_.data(); }

 private:
  void fill_clear_sky(const DaySun& sun, double turbidity, DayMeans& means);

  ClearSkyTable table_;
  double table_turbidity_ = 0.0;
  std::array<float, kDayMinutes> clear_{};
};

}  // namespace voltwright::sky
