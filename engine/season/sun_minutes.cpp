#include "engine/season/sun_minutes.h"

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <vector>

#include "engine/sky/calendar.h"
#include "engine/sky/coupled_module.h"

namespace voltwright::season {

namespace {

constexpr std::int64_t kMinute_s = 60;
/// Shares of a controller's output limit at the usual voltage: below the first no voltage of the bus reaches
/// the limit, from the second on every one exceeds it (assumption: a bus lies within a fifth of the usual).
constexpr double kNearLimit = 0.8;
constexpr double kFarOver = 1.25;

/// A controller that lowers the voltage needs this much above the battery (assumption, typical).
constexpr double kAboveBattery_V = 1.0;

unsigned month_of(std::int64_t utc_s) {
  using namespace std::chrono;
  const std::int64_t day = sky::floor_divide(utc_s, sky::kSecondsPerDay);
  return static_cast<unsigned>(year_month_day{sys_days{days{day}}}.month());
}

double soiled(const supply::SolarArray& array, std::int64_t utc_s) {
  const std::vector<double>& months = array.soiling_by_month;
  return months.size() == 12 ? months[month_of(utc_s) - 1] : array.soiling;
}

/// Part of its peak power that an array gives a controller that can only lower the voltage: 1 while the peak
/// lies above the battery by that margin, else that of the curve at the lowest voltage that will do.
double voltage_share(const supply::SolarArray& array, const sky::CoupledModule& module, double absorbed_W_m2,
                     double module_C, double near_V) {
  const double least_V = (near_V + kAboveBattery_V) / array.in_series;
  const sky::CurvePoint point = module.at(absorbed_W_m2, module_C, least_V);
  const double peak_W = module.peak_W(absorbed_W_m2, module_C);
  const bool before_peak = point.current_A + least_V * point.slope_A_V >= 0.0 && point.current_A > 0.0;
  if (before_peak || peak_W <= 0.0) return 1.0;
  return std::min(1.0, point.current_A * least_V / peak_W);
}

void add_tracked(double power_W, double limit_A, double near_V, Minute& minute) {
  const double share = power_W / (limit_A * near_V);
  if (share < kNearLimit) {
    minute.solar_W += power_W;
    return;
  }
  LimitedSun& sun = minute.limited_sun[share < kFarOver ? 0 : 1];
  sun.power_W += static_cast<float>(power_W);
  sun.limit_A += static_cast<float>(limit_A);
}

void add_coupled(const supply::SolarArray& array, const sky::CoupledModule& module, double absorbed_W_m2,
                 double module_C, double near_V, Minute& minute) {
  const sky::CurvePoint point = module.at(absorbed_W_m2, module_C, near_V / array.in_series);
  const double limit_A = units::as_amperes(array.output_limit);
  const double current_A = point.current_A * array.in_parallel;
  const double given_A = std::min(current_A, limit_A);
  if (given_A <= 0.0) return;
  minute.solar_A += given_A;
  minute.coupled_at_V = static_cast<float>(near_V);
  minute.coupled_limit_A += static_cast<float>(limit_A);
  minute.coupled_over_A += static_cast<float>(current_A - given_A);
  if (current_A <= limit_A) {
    minute.coupled_A_per_V += static_cast<float>(point.slope_A_V * array.in_parallel / array.in_series);
  }
  minute.coupled_peak_W +=
      static_cast<float>(module.peak_W(absorbed_W_m2, module_C) * array.in_series * array.in_parallel);
}

}  // namespace

void add_sun(const supply::SolarArray& array, const sky::PlaneMinutes& plane, std::int64_t start_utc_s,
             double near_V, std::span<Minute> minutes) {
  const std::size_t count = std::min({minutes.size(), plane.absorbed_W_m2.size(), plane.module_C.size()});
  const bool tracked = array.controller == supply::ControllerKind::kMppt;
  const double limit_A = units::as_amperes(array.output_limit);
  std::vector<float> power_W;
  if (tracked) power_W = sky::array_power_W(plane, array.module, array.in_series * array.in_parallel);
  const sky::CoupledModule module(array.module);
  constexpr std::size_t kDay = 1440;
  for (std::size_t from = 0; from < count; from += kDay) {
    const std::int64_t day_utc_s = start_utc_s + kMinute_s * static_cast<std::int64_t>(from);
    const double kept = (1.0 - soiled(array, day_utc_s)) * (1.0 - array.other_losses);
    for (std::size_t i = from; i < std::min(count, from + kDay); ++i) {
      const auto absorbed_W_m2 = static_cast<double>(plane.absorbed_W_m2[i]);
      if (absorbed_W_m2 <= 0.0) continue;
      if (tracked) {
        const double share =
            voltage_share(array, module, absorbed_W_m2, static_cast<double>(plane.module_C[i]), near_V);
        const double after_W = static_cast<double>(power_W[i]) * share * kept * array.controller_efficiency;
        if (after_W > 0.0) add_tracked(after_W, limit_A, near_V, minutes[i]);
      } else {
        add_coupled(array, module, absorbed_W_m2 * kept, static_cast<double>(plane.module_C[i]), near_V,
                    minutes[i]);
      }
    }
  }
}

}  // namespace voltwright::season
