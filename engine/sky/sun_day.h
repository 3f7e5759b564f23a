#pragma once
// Sunrise, noon and sunset of a day, and the days that have none.
#include "engine/sky/weather.h"

namespace voltwright::sky {

enum class DayKind { kOrdinary, kPolarDay, kPolarNight };

/// Elevation of the sun's centre at which its upper limb touches a level horizon: 0.5667 deg of refraction
/// and 0.2667 deg of radius (Reda and Andreas 2004).
constexpr double kRiseElevation_deg = -0.8333;

struct SunDay {
  DayKind kind = DayKind::kOrdinary;
  double rise_utc_s = 0.0;  // of an ordinary day; else equal to noon
  double noon_utc_s = 0.0;  // the sun is highest within a quarter of a minute
  double set_utc_s = 0.0;
  double day_length_h = 0.0;  // 24 in polar day, 0 in polar night
};

/// The day around the solar noon that lies nearest to `near_utc_s` (the middle of a local day, say). Rise and
/// set are within 30 s of the reference algorithm at latitudes where the sun crosses the horizon at a slant
/// of more than a few degrees; near the polar circles they are as uncertain as refraction is.
SunDay sun_day(double near_utc_s, const Site& site);

}  // namespace voltwright::sky
