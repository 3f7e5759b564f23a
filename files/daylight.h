#pragma once
// Day length and sunshine above the atmosphere, monthly means: what turns sunshine hours and sea radiation
// into a clearness index.
#include <array>

namespace voltwright::files {

struct MonthlyDaylight {
  std::array<double, 12> day_length_h{};           // mean hours between geometric sunrise and sunset
  std::array<double, 12> horizontal_kWh_m2_day{};  // mean daily irradiation on a horizontal plane, no air
};

inline constexpr std::array<int, 12> kDaysInMonth = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

/// Means over every day of a 365-day year at a latitude of -90..90 degrees north. Declination and distance by
/// the Fourier series of Spencer 1971, solar constant 1361.1 W/m2 (Gueymard 2018).
MonthlyDaylight monthly_daylight(double latitude_deg);

}  // namespace voltwright::files
