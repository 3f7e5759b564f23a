#pragma once
// Splitting global irradiance into diffuse and beam.

namespace voltwright::sky {

/// Below this cosine of the zenith angle the clearness index is taken as if the sun stood here, because the
/// quotient of two small numbers says nothing about the sky (zenith 86.3 deg; common practice, no source).
constexpr double kLowestCosForClearness = 0.065;
/// Below this cosine (zenith 87 deg) all global irradiance counts as diffuse (common practice, no source).
constexpr double kLowestCosForBeam = 0.0523;

/// Hourly clearness index, 0 to 1. Templated because the minute loop runs it in single precision.
template <class T>
T clearness_index(T ghi_W_m2, T extraterrestrial_W_m2, T cos_zenith) {
  const T floor = static_cast<T>(kLowestCosForClearness);
  const T horizontal = extraterrestrial_W_m2 * (cos_zenith > floor ? cos_zenith : floor);
  const T kt = ghi_W_m2 / horizontal;
  return kt < T(0) ? T(0) : (kt > T(1) ? T(1) : kt);
}

/// Diffuse fraction of hourly global irradiance against the clearness index 0 to 1 (Erbs, Klein and Duffie
/// 1982).
template <class T>
T erbs_diffuse_fraction(T kt) {
  const T low = T(1) - T(0.09) * kt;
  const T middle = T(0.9511) + kt * (T(-0.1604) + kt * (T(4.388) + kt * (T(-16.638) + kt * T(12.336))));
  return kt <= T(0.22) ? low : (kt <= T(0.80) ? middle : T(0.165));
}

/// Diffuse fraction of a day's global irradiation against the day's clearness index and sunset hour angle
/// (Erbs, Klein and Duffie 1982).
double erbs_daily_diffuse_fraction(double clearness, double sunset_hour_angle_deg);

/// Beam and diffuse part of a global irradiance; ghi = dhi + dni cos z holds.
struct Split {
  double dni_W_m2 = 0.0;
  double dhi_W_m2 = 0.0;
};

/// Split by the hourly relation of Erbs; everything is diffuse beyond a zenith angle of 87 deg.
Split erbs_split(double ghi_W_m2, double extraterrestrial_W_m2, double cos_zenith);

/// Diffuse fraction for steps of one minute by the form of Engerer 2015, coefficients refitted to the world
/// by Bright and Engerer 2019, 0 to 1. `clear_sky_clearness` is clear-sky over extraterrestrial horizontal
/// irradiance, `solar_time_h` apparent solar time, `cloud_enhancement` = max(0, 1 - clear-sky / measured
/// ghi).
double engerer_minute_diffuse_fraction(double kt, double solar_time_h, double zenith_deg,
                                       double clear_sky_clearness, double cloud_enhancement);

/// The same form for steps of one hour.
double engerer_hour_diffuse_fraction(double kt, double solar_time_h, double zenith_deg,
                                     double clear_sky_clearness, double cloud_enhancement);

}  // namespace voltwright::sky
