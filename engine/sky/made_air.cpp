#include "engine/sky/made_air.h"

#include <algorithm>
#include <cmath>

#include "engine/sky/air_temperature.h"

namespace voltwright::sky {
namespace {

constexpr std::size_t kHourMinutes = 60;
constexpr std::size_t kNoon = 12;
constexpr double kRangeExponent = 0.5;  // daily range against relative clearness (assumption)
constexpr double kLeastStretch = 0.3;
constexpr double kMostStretch = 1.5;

std::array<double, 25> hourly_course() {
  std::array<double, 25> course{};
  for (std::size_t h = 0; h < course.size(); ++h)
    course[h] = daily_temperature_course(static_cast<double>(h));
  return course;
}

}  // namespace

MadeAir::MadeAir(const Site& site, const MonthlyClimate& climate)
    : site_(site),
      temperature_(climate.temperature_C),
      range_(climate.daily_range_K),
      course_(hourly_course()) {}

void MadeAir::add_day(double part_of_year, double relative_clearness, base::RandomStream random) {
  const double range = std::max(0.0, range_.at(part_of_year));
  const double normal = random.normal();
  constexpr double kRho = kTemperaturePersistence;
  departure_ = days_.empty() ? normal : kRho * departure_ + std::sqrt(1.0 - kRho * kRho) * normal;
  const double stretch =
      std::clamp(std::pow(relative_clearness, kRangeExponent), kLeastStretch, kMostStretch);
  const double normal_C = temperature_.at(part_of_year);
  days_.push_back(
      {normal_C + departure_K(departure_, day_to_day_deviation_K(normal_C, site_)), range * stretch});
}

double MadeAir::at(std::size_t record, std::size_t hour) const {
  const bool morning = hour < kNoon;
  const Day& from = days_[morning ? record - 1 : record];
  const Day& to = days_[morning ? record : record + 1];
  const double part = (static_cast<double>(hour) + (morning ? 12.0 : -12.0)) / 24.0;
  return from.mean_C + (to.mean_C - from.mean_C) * part +
         (from.range_K + (to.range_K - from.range_K) * part) * course_[hour];
}

void MadeAir::write(std::size_t record, std::size_t from, std::size_t count, float* out) const {
  const std::size_t end = from + count;
  for (std::size_t hour = from / kHourMinutes; hour * kHourMinutes < end; ++hour) {
    const double now = at(record, hour);
    const double slope = (at(record, hour + 1) - now) / static_cast<double>(kHourMinutes);
    const auto base = static_cast<float>(now + 0.5 * slope);
    const auto step = static_cast<float>(slope);
    const std::size_t first = std::max(from, hour * kHourMinutes);
    const std::size_t last = std::min(end, (hour + 1) * kHourMinutes);
    for (std::size_t m = first; m < last; ++m) {
      out[m - from] = base + step * static_cast<float>(static_cast<int>(m - hour * kHourMinutes));
    }
  }
}

}  // namespace voltwright::sky
