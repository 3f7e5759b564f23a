#include "engine/advise/between_seasons.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>

#include "engine/ageing/schiffer.h"

namespace voltwright::advise {

namespace {

constexpr double kSecondsPerHour = 3600.0;
constexpr std::int64_t kDay_s = 86400;
constexpr std::size_t kMonths = 12;

std::size_t month_of(std::int64_t utc_s) {
  const std::chrono::sys_days day{
      std::chrono::floor<std::chrono::days>(std::chrono::sys_seconds{std::chrono::seconds{utc_s}})};
  return static_cast<unsigned>(std::chrono::year_month_day{day}.month()) - 1U;
}

/// Monthly mean temperatures where the journey ends; months that a weather file lacks take its mean.
std::array<double, kMonths> monthly_C(const season::LegSky& sky) {
  if (!sky.typical_year) return sky.end_climate ? sky.end_climate->temperature_C : sky.climate.temperature_C;
  std::array<double, kMonths> sum{}, hours{}, mean{};
  double all_C = 0.0;
  const sky::HourlyWeather& weather = *sky.typical_year;
  for (std::size_t i = 0; i < weather.temperature_C.size(); ++i) {
    const std::size_t month = month_of(weather.start_utc_s + static_cast<std::int64_t>(i) *
                                                                 static_cast<std::int64_t>(kSecondsPerHour));
    sum[month] += weather.temperature_C[i];
    hours[month] += 1.0;
    all_C += weather.temperature_C[i] / static_cast<double>(weather.temperature_C.size());
  }
  for (std::size_t m = 0; m < kMonths; ++m) mean[m] = hours[m] > 0.0 ? sum[m] / hours[m] : all_C;
  return mean;
}

double season_hours(const Plan& plan) {
  if (plan.legs.empty()) return 0.0;
  return static_cast<double>(plan.legs.back().end_utc_s - plan.legs.front().start_utc_s) / kSecondsPerHour;
}

/// Hours of the year left over, by month.
std::array<double, kMonths> hours_left(const Plan& plan) {
  std::array<double, kMonths> hours{};
  const double left_h = ageing::kHoursOfYear - season_hours(plan);
  if (plan.legs.empty() || left_h <= 0.0) return hours;
  const std::int64_t from = plan.legs.back().end_utc_s;
  const auto days =
      static_cast<std::int64_t>(std::ceil(left_h * kSecondsPerHour / static_cast<double>(kDay_s)));
  const double each_h = left_h / static_cast<double>(days);
  for (std::int64_t d = 0; d < days; ++d) hours[month_of(from + d * kDay_s)] += each_h;
  return hours;
}

}  // namespace

double seasons_per_year(const Plan& plan) {
  const double hours = season_hours(plan);
  return hours > ageing::kHoursOfYear ? ageing::kHoursOfYear / hours : 1.0;
}

ageing::Exposure rest_of_year(const Plan& plan, std::span<const season::LegSky> skies,
                              const cell::Chemistry& chemistry, double soc) {
  ageing::Exposure rest;
  if (skies.empty()) return rest;
  const std::array<double, kMonths> mean_C = monthly_C(skies.back());
  const std::array<double, kMonths> hours = hours_left(plan);
  for (std::size_t m = 0; m < kMonths; ++m) {
    if (hours[m] <= 0.0) continue;
    rest.hours += hours[m];
    rest.dwell.push_back({mean_C[m], soc, hours[m]});
    if (!chemistry.plate_wear) continue;
    const cell::GridCorrosion& grid = chemistry.plate_wear->corrosion;
    const double potential_V = ageing::corrosion_potential_V(grid, soc, 0.0);
    const double speed = ageing::corrosion_speed(grid, potential_V, mean_C[m]);
    rest.plates.hours += hours[m];
    if (potential_V < grid.knee_V) {
      // As the recorder of plates sums it below the knee.
      const double root = std::cbrt(speed);
      rest.plates.slow_corrosion += 0.6 * speed * root * root * hours[m];
    } else {
      rest.plates.fast_corrosion += speed * hours[m];
    }
  }
  return rest;
}

}  // namespace voltwright::advise
