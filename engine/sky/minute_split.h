#pragma once
// Beam and diffuse of many minutes.
#include <cstddef>

namespace voltwright::sky {

/// Splits `count` minutes of global irradiance by the relation of Erbs at each minute's clearness index.
void split_minutes(const float* ghi, const float* extraterrestrial, const float* cos_zenith,
                   std::size_t count, float* dni, float* dhi);

/// Splits `count` minutes with a given diffuse fraction, 0 to 1. Beam stronger than `largest_beam` W/m2, and
/// all beyond a zenith angle of 87 deg, counts as diffuse.
void split_minutes_by_fraction(const float* ghi, const float* cos_zenith, float diffuse_fraction,
                               float largest_beam, std::size_t count, float* dni, float* dhi);

}  // namespace voltwright::sky
