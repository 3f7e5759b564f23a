#pragma once
// Beam and diffuse of many minutes.
#include <cstddef>

namespace voltwright::sky {

/// Splits `count` minutes of global irradiance by the relation of Erbs at each minute's clearness index.
void split_minutes(const float* ghi, const float* extraterrestrial, const float* cos_zenith,
                   std::size_t count, float* dni, float* dhi);

/// Splits `count` minutes whose clearness ramps from minute to minute, by the one-minute relation of Bright
/// and Engerer 2019. `clear_ghi` is the clear sky's global irradiance, `solar_time_h` apparent solar time at
/// the middle of the first minute. The beam is at most the extraterrestrial one; beyond a zenith angle of
/// 87 deg all counts as diffuse.
void split_ramping_minutes(const float* ghi, const float* clear_ghi, const float* extraterrestrial,
                           const float* cos_zenith, float solar_time_h, std::size_t count, float* dni,
                           float* dhi);

/// Splits `count` minutes with a given diffuse fraction, 0 to 1. Beam stronger than `largest_beam` W/m2, and
/// all beyond a zenith angle of 87 deg, counts as diffuse.
void split_minutes_by_fraction(const float* ghi, const float* cos_zenith, float diffuse_fraction,
                               float largest_beam, std::size_t count, float* dni, float* dhi);

}  // namespace voltwright::sky
