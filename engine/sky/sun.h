#pragma once
// Where the sun stands: one instant to 0.01 deg, or minute by minute for a stay.
#include <cstddef>
#include <cstdint>
#include <vector>

#include "engine/sky/weather.h"

namespace voltwright::sky {

/// Direction of the sun's centre without refraction: zenith 0..180 deg, azimuth 0..360 deg from north over
/// east.
struct SunPosition {
  double zenith_deg = 0.0;
  double azimuth_deg = 0.0;
};

/// How well the position of a date is known.
enum class SunYears {
  kStated,    // 2020 to 2050: the years the algorithm was made for, 0.01 deg
  kMeasured,  // 1950 to 2019 and 2051 to 2100: outside them, but compared with an astronomy library, 0.012
              // deg
  kBeyond,    // other years: an extrapolation that nothing has checked
};

SunYears sun_years(double utc_s);

/// True position of the sun at an instant in UTC seconds since 1970. From 2020 on by the algorithm of Blanco,
/// Milidonis and Bonanos 2020, before by the almanac's short series (Michalsky 1988). Errors: see SunYears;
/// the caller says so to the user where a date is not kStated.
SunPosition sun_position(double utc_s, const Site& site);

/// The sun of a stay, one value a minute, taken at the middle of the minute. Index i covers the minute
/// starting at start_utc_s + 60 i.
struct SunMinutes {
  std::int64_t start_utc_s = 0;
  SunYears years = SunYears::kStated;        // the worst among the minutes
  std::vector<float> cos_zenith;             // of the true zenith angle, negative below the horizon
  std::vector<float> azimuth_rad;            // from north over east, 0 to 2 pi
  std::vector<float> extraterrestrial_W_m2;  // on a plane facing the sun
};

/// The same position minute by minute. Right ascension and declination are evaluated at whole UTC hours and
/// interpolated, which costs less than 0.0001 deg. A minute's values do not depend on where the stay starts.
SunMinutes sun_minutes(const Site& site, std::int64_t start_utc_s, std::size_t minutes);

}  // namespace voltwright::sky
