#pragma once
// Day of the year from a count of days, by the civil (Gregorian) calendar.
#include <chrono>
#include <cstdint>

namespace voltwright::sky {

constexpr std::int64_t kSecondsPerDay = 86400;
constexpr std::int64_t kSecondsPerHour = 3600;

/// Quotient rounded towards minus infinity; the divisor is positive.
constexpr std::int64_t floor_divide(std::int64_t a, std::int64_t b) { return a / b - (a % b < 0 ? 1 : 0); }

/// Day of the year, 1 on 1 January, for days counted from 1 January 1970.
inline int day_of_year(std::int64_t days_since_1970) {
  using namespace std::chrono;
  const sys_days day{days{days_since_1970}};
  const year_month_day date{day};
  const sys_days first{date.year() / January / 1};
  return static_cast<int>((day - first).count()) + 1;
}

/// Part of the calendar year gone by at noon of a day, 0 to 1.
inline double part_of_year(std::int64_t days_since_1970) {
  using namespace std::chrono;
  const year_month_day date{sys_days{days{days_since_1970}}};
  const double length = date.year().is_leap() ? 366.0 : 365.0;
  return (static_cast<double>(day_of_year(days_since_1970)) - 0.5) / length;
}

}  // namespace voltwright::sky
