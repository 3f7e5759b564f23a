#include "engine/sky/sun_day.h"

#include <cmath>

#include "engine/sky/calendar.h"
#include "engine/sky/extraterrestrial.h"
#include "engine/sky/sun.h"

namespace voltwright::sky {
namespace {

constexpr double kHalfDay_s = 43200.0;
constexpr double kPrecision_s = 0.5;

double elevation_deg(double utc_s, const Site& site) { return 90.0 - sun_position(utc_s, site).zenith_deg; }

/// Instant between `low_s`, when the sun is down, and `high_s`, when it is up, at which it crosses; either
/// may be the earlier one.
double crossing_s(double low_s, double high_s, const Site& site) {
  while (std::abs(high_s - low_s) > kPrecision_s) {
    const double middle = 0.5 * (low_s + high_s);
    (elevation_deg(middle, site) > kRiseElevation_deg ? high_s : low_s) = middle;
  }
  return 0.5 * (low_s + high_s);
}

/// Highest (`sign` 1) or lowest (-1) sun within two hours of a guess, by golden section.
double extreme_s(double guess_s, double sign, const Site& site) {
  constexpr double kGolden = 0.6180339887498949;
  double from = guess_s - 7200.0;
  double to = guess_s + 7200.0;
  while (to - from > kPrecision_s) {
    const double left = to - kGolden * (to - from);
    const double right = from + kGolden * (to - from);
    const bool left_wins = sign * elevation_deg(left, site) > sign * elevation_deg(right, site);
    (left_wins ? to : from) = left_wins ? right : left;
  }
  return 0.5 * (from + to);
}

}  // namespace

SunDay sun_day(double near_utc_s, const Site& site) {
  const double longitude_s = 240.0 * site.longitude_deg;
  const auto day = static_cast<std::int64_t>(std::floor((near_utc_s + longitude_s) / 86400.0));
  const double mean_noon_s = static_cast<double>(day) * 86400.0 + kHalfDay_s - longitude_s;
  const double noon_guess_s = mean_noon_s - 60.0 * equation_of_time_min(day_of_year(day));
  SunDay result;
  result.noon_utc_s = extreme_s(noon_guess_s, 1.0, site);
  result.rise_utc_s = result.noon_utc_s;
  result.set_utc_s = result.noon_utc_s;
  const double before_s = extreme_s(result.noon_utc_s - kHalfDay_s, -1.0, site);
  const double after_s = extreme_s(result.noon_utc_s + kHalfDay_s, -1.0, site);
  if (elevation_deg(result.noon_utc_s, site) <= kRiseElevation_deg) {
    result.kind = DayKind::kPolarNight;
    return result;
  }
  const bool dark_before = elevation_deg(before_s, site) <= kRiseElevation_deg;
  const bool dark_after = elevation_deg(after_s, site) <= kRiseElevation_deg;
  if (!dark_before && !dark_after) {
    result.kind = DayKind::kPolarDay;
    result.day_length_h = 24.0;
    return result;
  }
  // On the first and last day of the midnight sun only one end is dark; the other is the lowest sun.
  result.rise_utc_s = dark_before ? crossing_s(before_s, result.noon_utc_s, site) : before_s;
  result.set_utc_s = dark_after ? crossing_s(after_s, result.noon_utc_s, site) : after_s;
  result.day_length_h = (result.set_utc_s - result.rise_utc_s) / 3600.0;
  return result;
}

}  // namespace voltwright::sky
