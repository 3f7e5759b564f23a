#include "engine/sky/sun.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "engine/sky/angle.h"
#include "engine/sky/calendar.h"
#include "engine/sky/extraterrestrial.h"

namespace voltwright::sky {
namespace {

constexpr double kTwoPi = 2.0 * std::numbers::pi;
// Mean radius of the Earth over the astronomical unit: how far the observer stands from the Earth's centre.
constexpr double kParallax = 6371.01 / 149597890.0;
constexpr double kDaysFrom1970To2000Noon = 10957.5;
constexpr double kFirstDayOf2020 = 7304.5;   // counted from 2000-01-01 12:00
constexpr double kFirstDayOf2051 = 18627.5;  // likewise
constexpr double kFirstDayOf2101 = 36889.5;
constexpr double kFirstDayOf1950 = -18262.5;

/// Where the sun stands among the stars.
struct Celestial {
  double right_ascension_rad = 0.0;
  double declination_rad = 0.0;
};

/// After 2050 the algorithm is still the better of the two: 0.011 deg until 2100 against 0.014 deg of the
/// short series, both measured against an astronomy library.
bool by_psa(double n) { return n >= kFirstDayOf2020; }

Celestial from_ecliptic(double longitude_rad, double obliquity_rad) {
  const double sin_longitude = std::sin(longitude_rad);
  return {std::atan2(std::cos(obliquity_rad) * sin_longitude, std::cos(longitude_rad)),
          std::asin(std::clamp(std::sin(obliquity_rad) * sin_longitude, -1.0, 1.0))};
}

/// `n` = days since 2000-01-01 12:00 UTC.
Celestial celestial(double n) {
  if (by_psa(n)) {
    const double omega = 2.267127827 - 9.300339267e-4 * n;
    const double mean_longitude = 4.895036035 + 1.720279602e-2 * n;
    const double anomaly = 6.239468336 + 1.720200135e-2 * n;
    const double longitude = mean_longitude + 3.338320972e-2 * std::sin(anomaly) +
                             3.497596876e-4 * std::sin(2.0 * anomaly) - 1.544353226e-4 -
                             8.689729360e-6 * std::sin(omega);
    const double obliquity = 4.090904909e-1 - 6.213605399e-9 * n + 4.418094944e-5 * std::cos(omega);
    return from_ecliptic(longitude, obliquity);
  }
  const double mean_longitude_deg = 280.460 + 0.9856474 * n;
  const double anomaly = radians(357.528 + 0.9856003 * n);
  const double longitude_deg =
      mean_longitude_deg + 1.915 * std::sin(anomaly) + 0.020 * std::sin(2.0 * anomaly);
  return from_ecliptic(radians(longitude_deg), radians(23.439 - 4e-7 * n));
}

/// Greenwich mean sidereal time as an angle in rad, not reduced.
double sidereal_rad(double n, double hour_of_day) {
  const double hours =
      by_psa(n) ? 6.697096103 + 6.570984737e-2 * n + hour_of_day : 6.697375 + 0.0657098242 * n + hour_of_day;
  return radians(15.0 * hours);
}

double days_since_2000_noon(double utc_s) { return utc_s / 86400.0 - kDaysFrom1970To2000Noon; }

double hour_of_day(double utc_s) { return (utc_s - 86400.0 * std::floor(utc_s / 86400.0)) / 3600.0; }

double wrap_turn(double angle_rad) {
  const double wrapped = angle_rad - kTwoPi * std::floor(angle_rad / kTwoPi);
  return wrapped < kTwoPi ? wrapped : 0.0;
}

}  // namespace

SunYears sun_years(double utc_s) {
  const double n = days_since_2000_noon(utc_s);
  if (n >= kFirstDayOf2020 && n < kFirstDayOf2051) return SunYears::kStated;
  return n >= kFirstDayOf1950 && n < kFirstDayOf2101 ? SunYears::kMeasured : SunYears::kBeyond;
}

SunPosition sun_position(double utc_s, const Site& site) {
  const double n = days_since_2000_noon(utc_s);
  const Celestial star = celestial(n);
  const double hour_angle =
      sidereal_rad(n, hour_of_day(utc_s)) + radians(site.longitude_deg) - star.right_ascension_rad;
  const double sin_latitude = std::sin(radians(site.latitude_deg));
  const double cos_latitude = std::cos(radians(site.latitude_deg));
  const double sin_declination = std::sin(star.declination_rad);
  const double cos_declination = std::cos(star.declination_rad);
  const double cos_zenith =
      cos_latitude * std::cos(hour_angle) * cos_declination + sin_declination * sin_latitude;
  const double geocentric = std::acos(std::clamp(cos_zenith, -1.0, 1.0));
  const double zenith = geocentric + kParallax * std::sin(geocentric);
  const double azimuth =
      std::atan2(-std::sin(hour_angle) * cos_declination,
                 sin_declination * cos_latitude - sin_latitude * std::cos(hour_angle) * cos_declination);
  return {degrees(std::min(zenith, std::numbers::pi)), degrees(wrap_turn(azimuth))};
}

SunMinutes sun_minutes(const Site& site, std::int64_t start_utc_s, std::size_t minutes) {
  SunMinutes sun;
  sun.start_utc_s = start_utc_s;
  const auto last_s = static_cast<double>(start_utc_s + 60 * static_cast<std::int64_t>(minutes));
  sun.years = std::max(sun_years(static_cast<double>(start_utc_s)), sun_years(last_s - 1.0));
  sun.cos_zenith.resize(minutes);
  sun.azimuth_rad.resize(minutes);
  sun.extraterrestrial_W_m2.resize(minutes);
  if (minutes == 0) return sun;

  const double sin_latitude = std::sin(radians(site.latitude_deg));
  const double cos_latitude = std::cos(radians(site.latitude_deg));
  // Minutes may start at any second; hours are those of UTC, moved by that second.
  const std::int64_t phase_s = start_utc_s - 60 * floor_divide(start_utc_s, 60);
  std::int64_t hour_start_s =
      kSecondsPerHour * floor_divide(start_utc_s - phase_s, kSecondsPerHour) + phase_s;
  std::size_t skip = static_cast<std::size_t>((start_utc_s - hour_start_s) / 60);
  std::int64_t distance_day = floor_divide(hour_start_s, kSecondsPerDay);
  float distance_W_m2 = static_cast<float>(extraterrestrial_W_m2(day_of_year(distance_day)));

  std::array<double, 60> cos_hour_angle{};
  std::array<double, 60> sin_hour_angle{};
  Celestial here = celestial(days_since_2000_noon(static_cast<double>(hour_start_s)));
  std::size_t written = 0;
  while (written < minutes) {
    const double hour_start = static_cast<double>(hour_start_s);
    const double n = days_since_2000_noon(hour_start);
    const Celestial next = celestial(days_since_2000_noon(hour_start + 3600.0));
    const double drift = std::remainder(next.right_ascension_rad - here.right_ascension_rad, kTwoPi);
    const double sidereal_per_hour = radians(15.0 * (6.570984737e-2 / 24.0 + 1.0));
    const double step = (sidereal_per_hour - drift) / 60.0;
    const double first = sidereal_rad(n, hour_of_day(hour_start)) + radians(site.longitude_deg) -
                         here.right_ascension_rad + 0.5 * step;
    // The hour angle turns by the same step each minute, so its sine and cosine follow by rotation.
    const double cos_step = std::cos(step);
    const double sin_step = std::sin(step);
    double c = std::cos(first);
    double s = std::sin(first);
    for (std::size_t i = 0; i < 60; ++i) {
      cos_hour_angle[i] = c;
      sin_hour_angle[i] = s;
      const double turned = c * cos_step - s * sin_step;
      s = s * cos_step + c * sin_step;
      c = turned;
    }
    const double sin_declination = std::sin(here.declination_rad);
    const double cos_declination = std::cos(here.declination_rad);
    const double sin_change = (std::sin(next.declination_rad) - sin_declination) / 60.0;
    const double cos_change = (std::cos(next.declination_rad) - cos_declination) / 60.0;

    const std::int64_t day = floor_divide(hour_start_s, kSecondsPerDay);
    if (day != distance_day) {
      distance_day = day;
      distance_W_m2 = static_cast<float>(extraterrestrial_W_m2(day_of_year(day)));
    }
    const std::size_t count = std::min<std::size_t>(60 - skip, minutes - written);
    float* const cos_zenith = sun.cos_zenith.data() + written;
    float* const azimuth = sun.azimuth_rad.data() + written;
    for (std::size_t k = 0; k < count; ++k) {
      const std::size_t i = skip + k;
      const double middle = static_cast<double>(static_cast<int>(i)) + 0.5;
      const double sd = sin_declination + sin_change * middle;
      const double cd = cos_declination + cos_change * middle;
      const double along = cd * cos_hour_angle[i];
      const double height = cos_latitude * along + sd * sin_latitude;
      cos_zenith[k] = static_cast<float>(height - kParallax * (1.0 - height * height));
      const float angle = fast_atan2(static_cast<float>(-sin_hour_angle[i] * cd),
                                     static_cast<float>(sd * cos_latitude - sin_latitude * along));
      azimuth[k] = angle < 0.0F ? angle + static_cast<float>(kTwoPi) : angle;
    }
    std::fill_n(sun.extraterrestrial_W_m2.data() + written, count, distance_W_m2);
    written += count;
    skip = 0;
    hour_start_s += kSecondsPerHour;
    here = next;
  }
  return sun;
}

}  // namespace voltwright::sky
