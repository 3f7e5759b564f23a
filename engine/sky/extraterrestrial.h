#pragma once
// Sunlight above the air: the solar constant, the Earth's distance through the year, and daily sums.

namespace voltwright::sky {

/// Total solar irradiance at the mean distance, W/m2. Source: Gueymard 2018.
constexpr double kSolarConstant_W_m2 = 1361.1;

/// Square of mean over actual Earth-Sun distance. `day_of_year` is 1 on 1 January, up to 366; within 0.0001
/// of the almanac (Spencer 1971).
double distance_factor(double day_of_year);

/// Irradiance on a plane facing the sun above the air, W/m2.
double extraterrestrial_W_m2(double day_of_year);

/// Declination of the sun in deg on a day of the year, within 0.05 deg (Spencer 1971). For daily sums only:
/// minutes use sun_position.
double daily_declination_deg(double day_of_year);

/// Apparent minus mean solar time in minutes, within 0.6 min (Spencer 1971).
double equation_of_time_min(double day_of_year);

/// Half the length of the day as an angle in rad, 0 in polar night and pi in polar day.
double sunset_hour_angle_rad(double latitude_deg, double declination_deg);

/// Daily sum on the horizontal above the air, Wh/m2, by the closed integral over the day.
double daily_extraterrestrial_Wh_m2(double day_of_year, double latitude_deg);

}  // namespace voltwright::sky
