#include "files/daylight.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace voltwright::files {

namespace {

constexpr double kSolarConstant_kW_m2 = 1.3611;

struct Day {
  double length_h = 0.0;
  double horizontal_kWh_m2 = 0.0;
};

Day day_of(double latitude_rad, int day_of_year) {
  const double b = 2.0 * std::numbers::pi * (day_of_year - 1) / 365.0;
  const double distance_factor = 1.00011 + 0.034221 * std::cos(b) + 0.00128 * std::sin(b) +
                                 0.000719 * std::cos(2.0 * b) + 0.000077 * std::sin(2.0 * b);
  const double declination = 0.006918 - 0.399912 * std::cos(b) + 0.070257 * std::sin(b) -
                             0.006758 * std::cos(2.0 * b) + 0.000907 * std::sin(2.0 * b) -
                             0.002697 * std::cos(3.0 * b) + 0.00148 * std::sin(3.0 * b);
  const double cosine = std::clamp(-std::tan(latitude_rad) * std::tan(declination), -1.0, 1.0);
  const double sunset = std::acos(cosine);
  const double integral = std::cos(latitude_rad) * std::cos(declination) * std::sin(sunset) +
                          sunset * std::sin(latitude_rad) * std::sin(declination);
  Day day;
  day.length_h = 24.0 * sunset / std::numbers::pi;
  day.horizontal_kWh_m2 =
      std::max(0.0, 24.0 / std::numbers::pi * kSolarConstant_kW_m2 * distance_factor * integral);
  return day;
}

}  // namespace

MonthlyDaylight monthly_daylight(double latitude_deg) {
  const double latitude_rad = latitude_deg * std::numbers::pi / 180.0;
  MonthlyDaylight result;
  int day_of_year = 0;
  for (std::size_t month = 0; month < 12; ++month) {
    for (int i = 0; i < kDaysInMonth[month]; ++i) {
      const Day day = day_of(latitude_rad, ++day_of_year);
      result.day_length_h[month] += day.length_h / kDaysInMonth[month];
      result.horizontal_kWh_m2_day[month] += day.horizontal_kWh_m2 / kDaysInMonth[month];
    }
  }
  return result;
}

}  // namespace voltwright::files
