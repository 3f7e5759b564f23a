#pragma once
// Splitting global irradiance into diffuse and beam.
#include <algorithm>
#include <cmath>

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

/// Length of the steps that an irradiance is averaged over.
enum class SplitStep { kMinute, k5Minutes, k10Minutes, k15Minutes, k30Minutes, kHour };

/// Form of Engerer 2015: lower end of the diffuse fraction, weights in the exponent (constant, clearness,
/// solar time, zenith angle, clearness lost to clouds), weight of enhancement by clouds.
struct EngererWeights {
  double floor, constant, clearness, solar_time, zenith, lost, enhancement;
};

/// Weights refitted to the world by Bright and Engerer 2019.
const EngererWeights& engerer_weights(SplitStep step);

/// Diffuse fraction by that form, 0 to 1. `clear_sky_clearness` is clear-sky over extraterrestrial horizontal
/// irradiance, `solar_time_h` apparent solar time, `cloud_enhancement` = max(0, 1 - clear-sky / measured
/// ghi). Templated because the minute loop runs it in single precision.
template <class T>
T engerer_diffuse_fraction(const EngererWeights& w, T kt, T solar_time_h, T zenith_deg, T clear_sky_clearness,
                           T cloud_enhancement) {
  const T exponent = static_cast<T>(w.constant) + static_cast<T>(w.clearness) * kt +
                     static_cast<T>(w.solar_time) * solar_time_h + static_cast<T>(w.zenith) * zenith_deg +
                     static_cast<T>(w.lost) * (clear_sky_clearness - kt);
  const auto floor = static_cast<T>(w.floor);
  const T fraction = floor + (T(1) - floor) / (T(1) + std::exp(exponent)) +
                     static_cast<T>(w.enhancement) * cloud_enhancement;
  return std::clamp(fraction, T(0), T(1));
}

}  // namespace voltwright::sky
