// Planes and replayed weather.
#include "engine/sky/plane.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "engine/sky/angle.h"
#include "engine/sky/atmosphere.h"
#include "engine/sky/incidence.h"
#include "engine/sky/made_weather.h"
#include "engine/sky/module_model.h"
#include "engine/sky/replayed_weather.h"
#include "engine/sky/transposition.h"
#include "tests/unit/sky/climates.h"
#include "tests/unit/sky/matrices_csv.h"

namespace voltwright::sky {
namespace {

constexpr std::int64_t kDay_s = 86400;
constexpr std::size_t kDayMinutes = 1440;

constexpr std::int64_t kNewYear2026 = 1767225600;

TEST(PlaneMinutes, AgreesWithTheEquationsInDoublePrecision) {
  const TestPlace place = madrid();
  const SunMinutes sun = sun_minutes(place.site, kNewYear2026 + 150 * kDay_s, 5 * kDayMinutes);
  const WeatherMinutes weather = make_weather(place.site, place.climate, catalogue_matrices(), sun, 2, 0, 0);
  for (const Plane& plane : {Plane{0.0, 90.0, Mounting::kGluedFlat}, Plane{35.0, 160.0, Mounting::kOpenRack},
                             Plane{80.0, -90.0, Mounting::kVentilatedRoof, 0.5}}) {
    const PlaneMinutes made = plane_minutes(sun, weather, plane);
    for (std::size_t i = 0; i < sun.cos_zenith.size(); ++i) {
      const auto at = [i](const std::vector<float>& v) { return static_cast<double>(v[i]); };
      if (at(weather.ghi_W_m2) <= 0.0) {
        ASSERT_EQ(made.absorbed_W_m2[i], 0.0F);
        ASSERT_EQ(made.module_C[i], weather.temperature_C[i]);
        continue;
      }
      const double zenith = degrees(std::acos(at(sun.cos_zenith)));
      const double lifted = std::min(90.0, 90.0 - zenith + refraction_deg(90.0 - zenith, 1013.25, 15.0));
      const PlaneInstant instant{zenith,
                                 degrees(at(sun.azimuth_rad)),
                                 at(sun.extraterrestrial_W_m2),
                                 air_mass(90.0 - lifted),
                                 at(weather.dni_W_m2),
                                 at(weather.dhi_W_m2)};
      const PlaneIrradiance light =
          on_plane(SkyModel::kPerez, instant, plane.tilt_deg, plane.azimuth_deg, plane.albedo);
      const double incidence = degrees(std::acos(std::clamp(
          cos_incidence(zenith, instant.sun_azimuth_deg, plane.tilt_deg, plane.azimuth_deg), -1.0, 1.0)));
      const double absorbed = light.beam_W_m2 * martin_ruiz_incidence_factor(incidence) +
                              kDiffuseIncidenceFactor * (light.sky_W_m2 + light.ground_W_m2);
      // The class of sky clearness steps, and single precision may fall on the other side of an edge.
      ASSERT_NEAR(at(made.absorbed_W_m2), absorbed, 0.5 + 0.02 * light.sky_W_m2)
          << plane.tilt_deg << ' ' << i;
      ASSERT_NEAR(at(made.module_C),
                  module_temperature(plane.mounting, light.total_W_m2(), at(weather.temperature_C),
                                     at(weather.wind_m_s)),
                  0.05 + 0.001 * light.sky_W_m2);
    }
  }
}

TEST(PlaneMinutes, LevelPlaneDoesNotCareForAzimuth) {
  const TestPlace place = london();
  const SunMinutes sun = sun_minutes(place.site, kNewYear2026, 20 * kDayMinutes);
  const WeatherMinutes weather = make_weather(place.site, place.climate, catalogue_matrices(), sun, 2, 0, 0);
  const PlaneMinutes south = plane_minutes(sun, weather, {0.0, 180.0});
  EXPECT_EQ(south.absorbed_W_m2, plane_minutes(sun, weather, {0.0, 17.0}).absorbed_W_m2);
  for (std::size_t i = 0; i < weather.ghi_W_m2.size(); ++i) {
    ASSERT_LE(south.absorbed_W_m2[i], weather.ghi_W_m2[i] * 1.000001F);
  }
}

TEST(ArrayPower, FollowsTheModulePower) {
  PlaneMinutes plane;
  plane.absorbed_W_m2 = {0.0F, 100.0F, 900.0F};
  plane.module_C = {20.0F, 30.0F, 30.0F};
  Module module;
  module.peak = units::watts(100.0);
  module.power_per_K = -0.003;
  const std::vector<float> power = array_power_W(plane, module, 4);
  ASSERT_EQ(power.size(), 3U);
  EXPECT_EQ(power[0], 0.0F);
  EXPECT_NEAR(static_cast<double>(power[1]), 4 * 8.9125, 1e-3);
  EXPECT_NEAR(static_cast<double>(power[2]), 4 * module_power(100.0, -0.003, 900.0, 30.0, kLowLightLoss),
              1e-3);
}

/// Hourly means of a made year, as a file would hold them; hours start at `start_utc_s`.
HourlyWeather hourly_year(const TestPlace& place, std::int64_t start_utc_s) {
  const SunMinutes sun = sun_minutes(place.site, start_utc_s, 525600);
  const WeatherMinutes weather = make_weather(place.site, place.climate, catalogue_matrices(), sun, 12, 0, 0);
  HourlyWeather hourly;
  hourly.site = place.site;
  hourly.start_utc_s = start_utc_s;
  const auto means = [](const std::vector<float>& minutes) {
    std::vector<double> hours(8760);
    for (std::size_t i = 0; i < minutes.size(); ++i) hours[i / 60] += static_cast<double>(minutes[i]) / 60.0;
    return hours;
  };
  hourly.ghi_W_m2 = means(weather.ghi_W_m2);
  hourly.dni_W_m2 = means(weather.dni_W_m2);
  hourly.dhi_W_m2 = means(weather.dhi_W_m2);
  hourly.temperature_C = means(weather.temperature_C);
  hourly.wind_m_s = means(weather.wind_m_s);
  return hourly;
}

constexpr std::int64_t kNewYear2023 = 1672531200;

TEST(ReplayedWeather, KeepsTheEnergyOfEveryHourInAnyYear) {
  for (const TestPlace& place : {london(), cape_town(), tromso()}) {
    for (const std::int64_t shift_s : {0, -3600, 2700}) {
      const HourlyWeather hourly = hourly_year(place, kNewYear2023 + shift_s);
      // 2028 is a leap year; its first 59 days and the hours after the leap day.
      const std::int64_t start = 1830297600 + shift_s;
      const SunMinutes sun = sun_minutes(place.site, start, 366 * kDayMinutes);
      const WeatherMinutes weather = replay_weather(hourly, sun);
      for (std::size_t hour = 1; hour < 366 * 24 - 1; ++hour) {
        double mean = 0.0;
        for (std::size_t i = 0; i < 60; ++i)
          mean += static_cast<double>(weather.ghi_W_m2[hour * 60 + i]) / 60.0;
        // 29 February, hours 1416 to 1439, repeats the day before.
        const bool whole_days = shift_s == 0;
        const std::size_t of_file = hour < 1416 ? hour : hour - 24;
        if (whole_days || hour < 1400 || hour > 1450) {
          ASSERT_NEAR(mean, hourly.ghi_W_m2[of_file], 1e-6 * std::max(1.0, mean))
              << place.name << ' ' << hour;
        }
      }
      for (std::size_t i = 0; i < weather.ghi_W_m2.size(); ++i) {
        const double ghi = static_cast<double>(weather.ghi_W_m2[i]);
        ASSERT_GE(weather.dni_W_m2[i], 0.0F);
        ASSERT_GE(weather.dhi_W_m2[i], 0.0F);
        ASSERT_NEAR(static_cast<double>(weather.dhi_W_m2[i]) +
                        static_cast<double>(weather.dni_W_m2[i]) * static_cast<double>(sun.cos_zenith[i]),
                    ghi, 1e-6 * ghi)
            << i;
      }
    }
  }
}

TEST(ReplayedWeather, KeepsTheFilesDiffuseShare) {
  const TestPlace place = madrid();
  const HourlyWeather hourly = hourly_year(place, kNewYear2023);
  const SunMinutes sun = sun_minutes(place.site, kNewYear2026, 525600);
  const WeatherMinutes weather = replay_weather(hourly, sun);
  double file_dhi = 0.0;
  double file_dni = 0.0;
  double dhi = 0.0;
  double dni = 0.0;
  double warmth = 0.0;
  double file_warmth = 0.0;
  for (std::size_t h = 0; h < 8760; ++h) {
    file_dhi += hourly.dhi_W_m2[h] * 60.0;
    file_dni += hourly.dni_W_m2[h] * 60.0;
    file_warmth += hourly.temperature_C[h] / 8760.0;
  }
  for (std::size_t i = 0; i < 525600; ++i) {
    dhi += static_cast<double>(weather.dhi_W_m2[i]);
    dni += static_cast<double>(weather.dni_W_m2[i]);
    warmth += static_cast<double>(weather.temperature_C[i]) / 525600.0;
  }
  EXPECT_NEAR(dhi / file_dhi, 1.0, 0.005);
  EXPECT_NEAR(dni / file_dni, 1.0, 0.02);
  EXPECT_NEAR(warmth, file_warmth, 0.05);
}

TEST(ReplayedWeather, DoesNotDependOnWhereTheStayStarts) {
  const TestPlace place = madrid();
  const HourlyWeather hourly = hourly_year(place, kNewYear2023 - 3600);
  const SunMinutes sun = sun_minutes(place.site, kNewYear2026 + 80 * kDay_s, 5000);
  const SunMinutes later = sun_minutes(place.site, kNewYear2026 + 80 * kDay_s + std::int64_t{60} * 777, 2000);
  const WeatherMinutes all = replay_weather(hourly, sun);
  const WeatherMinutes part = replay_weather(hourly, later);
  for (std::size_t i = 0; i < 2000; ++i) {
    ASSERT_EQ(all.ghi_W_m2[777 + i], part.ghi_W_m2[i]) << i;
    ASSERT_EQ(all.dhi_W_m2[777 + i], part.dhi_W_m2[i]) << i;
    ASSERT_EQ(all.temperature_C[777 + i], part.temperature_C[i]) << i;
  }
}

TEST(ReplayedWeather, TakesPoorFiles) {
  const SunMinutes sun = sun_minutes({50.0, 0.0, 0.0}, kNewYear2026, 3000);
  EXPECT_EQ(replay_weather({}, sun).ghi_W_m2.size(), 3000U);
  HourlyWeather global_only;
  global_only.site = {50.0, 0.0, 0.0};
  global_only.start_utc_s = kNewYear2023;
  global_only.ghi_W_m2.assign(48, 40.0);  // light also at night: spread evenly
  const WeatherMinutes weather = replay_weather(global_only, sun);
  double mean = 0.0;
  for (std::size_t i = 0; i < 2880; ++i) mean += static_cast<double>(weather.ghi_W_m2[i]) / 2880.0;
  EXPECT_NEAR(mean, 40.0, 4e-5);
}

}  // namespace
}  // namespace voltwright::sky
