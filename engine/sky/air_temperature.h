#pragma once
// Daily course and day-to-day change of the air temperature.
#include "engine/sky/weather.h"

namespace voltwright::sky {

/// Departure from the day's mean in parts of the daily range, at a solar time of 0 to 24 h; highest near 15
/// h, lowest near 6 h, zero on average over the 24 whole hours (Erbs, Klein and Beckman 1983, from memory;
/// the sum and the extremes were recomputed).
double daily_temperature_course(double solar_time_h);

/// Lag-one correlation of daily mean temperatures: 0.705 by the mean lag-one correlations of daily maxima and
/// minima at 31 places (Richardson 1982, from memory).
constexpr double kTemperaturePersistence = 0.7;

/// Standard deviation of daily mean temperatures about the season's course, K, for a day whose normal
/// temperature is `monthly_mean_C`. Our own fit to the standard deviations that stations report in CLIMAT
/// messages of January 2017 and July 2016 (Deutscher Wetterdienst), root mean square error 1.2 K, lifted by 8
/// % because a report counts from its own month's mean: 0.2 K at the equator, rising to 2.6 K at 45 deg, and
/// 0.3 K for each kelvin below 5 degC at 60 deg. North America east of the Rocky Mountains has up to 4.3 K on
/// top from 20 down to 6 degC. Not below 0.8 K.
double day_to_day_deviation_K(double monthly_mean_C, const Site& site);

/// Furthest that a daily mean departs from the season's course, K. Records of cold winter places lie 22 to 32
/// K from their month's mean with the course of the day in it (from memory).
inline constexpr double kFurthestDeparture_K = 26.0;

/// Departure of a daily mean, K, from a standard normal number: A tanh(s z / A) with A the furthest departure
/// and s so that the deviation is kept (within 1 % up to 13 K). Near the bell where the deviation is small;
/// without the bound a cold winter of 10 K would now and then bring days of 40 K above or below its mean.
double departure_K(double normal, double deviation_K);

}  // namespace voltwright::sky
