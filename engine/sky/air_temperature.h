#pragma once
// Daily course and day-to-day change of the air temperature.

namespace voltwright::sky {

/// Departure from the day's mean in parts of the daily range, at a solar time of 0 to 24 h; highest near 15
/// h, lowest near 6 h, zero on average over the 24 whole hours (Erbs, Klein and Beckman 1983, from memory;
/// the sum and the extremes were recomputed).
double daily_temperature_course(double solar_time_h);

/// Lag-one correlation of daily mean temperatures (assumption, common in weather generators).
constexpr double kTemperaturePersistence = 0.7;

/// Standard deviation of daily mean temperatures about the season's course, K. Assumption: 2 K where the
/// daily range is 5 K or less (sea air) to 6 K at 14 K or more (inland), and 2 K within 20 deg of the
/// equator.
double day_to_day_deviation_K(double daily_range_K, double latitude_deg);

}  // namespace voltwright::sky
