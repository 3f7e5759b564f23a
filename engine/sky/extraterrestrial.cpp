#include "engine/sky/extraterrestrial.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sky/angle.h"

namespace voltwright::sky {
namespace {

double day_angle_rad(double day_of_year) { return 2.0 * std::numbers::pi * (day_of_year - 1.0) / 365.0; }

}  // namespace

double distance_factor(double day_of_year) {
  const double b = day_angle_rad(day_of_year);
  return 1.00011 + 0.034221 * std::cos(b) + 0.00128 * std::sin(b) + 0.000719 * std::cos(2.0 * b) +
         0.000077 * std::sin(2.0 * b);
}

double extraterrestrial_W_m2(double day_of_year) {
  return kSolarConstant_W_m2 * distance_factor(day_of_year);
}

double daily_declination_deg(double day_of_year) {
  const double b = day_angle_rad(day_of_year);
  return degrees(0.006918 - 0.399912 * std::cos(b) + 0.070257 * std::sin(b) - 0.006758 * std::cos(2.0 * b) +
                 0.000907 * std::sin(2.0 * b) - 0.002697 * std::cos(3.0 * b) + 0.00148 * std::sin(3.0 * b));
}

double equation_of_time_min(double day_of_year) {
  const double b = day_angle_rad(day_of_year);
  return 229.18 * (7.5e-6 + 0.001868 * std::cos(b) - 0.032077 * std::sin(b) - 0.014615 * std::cos(2.0 * b) -
                   0.04089 * std::sin(2.0 * b));
}

double sunset_hour_angle_rad(double latitude_deg, double declination_deg) {
  const double latitude = radians(latitude_deg);
  const double declination = radians(declination_deg);
  // At the poles the tangent is huge but finite, so that the clamp gives polar day or night there too.
  return std::acos(std::clamp(-std::tan(latitude) * std::tan(declination), -1.0, 1.0));
}

double daily_extraterrestrial_Wh_m2(double day_of_year, double latitude_deg) {
  const double declination_deg = daily_declination_deg(day_of_year);
  const double latitude = radians(latitude_deg);
  const double declination = radians(declination_deg);
  const double sunset = sunset_hour_angle_rad(latitude_deg, declination_deg);
  const double sum = std::cos(latitude) * std::cos(declination) * std::sin(sunset) +
                     sunset * std::sin(latitude) * std::sin(declination);
  return std::max(0.0, 24.0 / std::numbers::pi * extraterrestrial_W_m2(day_of_year) * sum);
}

}  // namespace voltwright::sky
