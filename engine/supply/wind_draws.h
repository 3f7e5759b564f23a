#pragma once
// Hourly wind drawn from monthly means. See docs/method/wind_and_water.md.
#include <array>
#include <cstdint>
#include <vector>

#include "engine/sky/weather.h"

namespace voltwright::supply {

struct WindHabit {
  std::array<double, 12> mean_m_s{};  // by month, at 10 m
  double weibull_shape = 2.0;         // 2: Rayleigh; > 0
  double hour_to_hour = 0.90;         // correlation of the underlying normal numbers from hour to hour, 0..1
};

/// Wind speed that is exceeded with the chance that a standard normal number exceeds `normal`, of a Weibull
/// distribution with the given mean and shape [m/s].
double weibull_speed(double mean_m_s, double shape, double normal);

/// The hours of a calendar year [m/s at 10 m], from its first in UTC. Depends on the arguments alone:
/// the same (seed, site, year, season) gives the same hours whatever was drawn before.
/// @param year 1970 to 2100
std::vector<double> wind_year(const WindHabit& habit, const sky::Site& site, int year, std::uint64_t seed,
                              std::uint64_t season);

}  // namespace voltwright::supply
