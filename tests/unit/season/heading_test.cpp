// Arrays that turn with the vehicle. What is expected follows from geometry.
#include "engine/season/heading.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <vector>

#include "engine/sky/sun.h"

namespace voltwright::season {
namespace {

constexpr std::size_t kDays = 40;
constexpr std::size_t kDay_min = 1440;

/// Clear and mild weather of forty days of March at 50 north, on the meridian of Greenwich.
struct Scene {
  sky::SunMinutes sun = sky::sun_minutes({50.0, 0.0, 100.0}, 1772323200, kDays* kDay_min);
  sky::WeatherMinutes weather;
  std::vector<std::int32_t> day;

  Scene() {
    const std::size_t count = kDays * kDay_min;
    weather.start_utc_s = 1772323200;
    weather.ghi_W_m2.resize(count);
    weather.dni_W_m2.resize(count);
    weather.dhi_W_m2.resize(count);
    weather.temperature_C.assign(count, 10.0F);
    weather.wind_m_s.assign(count, 2.0F);
    for (std::size_t i = 0; i < count; ++i) {
      day.push_back(static_cast<std::int32_t>(i / kDay_min));
      const float up = sun.cos_zenith[i];
      if (up <= 0.0F) continue;
      weather.dni_W_m2[i] = 700.0F;
      weather.dhi_W_m2[i] = 100.0F * up;
      weather.ghi_W_m2[i] = 800.0F * up;
    }
  }
};

const Scene& scene() {
  static const Scene kScene;
  return kScene;
}

supply::SolarArray tilted(double azimuth_deg, bool turns) {
  supply::SolarArray array;
  array.tilt_deg = 60.0;
  array.azimuth_deg = azimuth_deg;
  array.turns = turns;
  return array;
}

std::vector<float> light(const supply::SolarArray& array, std::optional<double> facing_deg,
                         std::uint64_t season = 0) {
  return array_minutes(array, scene().sun, scene().weather, {facing_deg, scene().day, 7, season})
      .absorbed_W_m2;
}

double sum(const std::vector<float>& of) {
  double all = 0.0;
  for (const float x : of) all += static_cast<double>(x);
  return all;
}

TEST(Heading, AndAzimuthAddUp) {
  EXPECT_EQ(light(tilted(90.0, true), 90.0), light(tilted(180.0, false), std::nullopt));
  EXPECT_EQ(light(tilted(270.0, true), 225.0), light(tilted(135.0, false), std::nullopt));
  // An array fixed to the ground does not turn.
  EXPECT_EQ(light(tilted(180.0, false), 90.0), light(tilted(180.0, false), std::nullopt));
}

TEST(Heading, TurnsTheMastAlongAndNotTheLand) {
  supply::SolarArray aboard = tilted(0.0, true);
  aboard.near = sky::Skyline({}, {sky::tree_line(340.0, 20.0, 2.0, 4.0, 0.0)});
  aboard.land = sky::Skyline({{180.0, 12.0}, {90.0, 0.0}, {270.0, 0.0}});
  supply::SolarArray fixed = tilted(180.0, false);
  fixed.near = sky::Skyline({}, {sky::tree_line(160.0, 200.0, 2.0, 4.0, 0.0)});
  fixed.land = aboard.land;
  const std::vector<float> turned = light(aboard, 180.0);
  EXPECT_EQ(turned, light(fixed, std::nullopt));
  EXPECT_LT(sum(turned), sum(light(tilted(180.0, false), std::nullopt)));
}

TEST(Heading, DrawnDayByDayGivesTheMeanOfAllDirections) {
  const supply::SolarArray array = tilted(0.0, true);
  double mean = 0.0;
  for (int k = 0; k < 8; ++k) mean += sum(light(array, 45.0 * k)) / 8.0;
  double drawn = 0.0;
  constexpr int kSeasons = 20;
  for (int season = 0; season < kSeasons; ++season) {
    drawn += sum(light(array, std::nullopt, static_cast<std::uint64_t>(season))) / kSeasons;
  }
  // 800 days; the eight directions spread by about 0.6 of their mean: 0.6 / sqrt(800) = 2 %, three of them.
  EXPECT_NEAR(drawn / mean, 1.0, 0.065);
  // Each minute is that of one of the eight directions, and a season is the same when drawn again.
  EXPECT_EQ(light(array, std::nullopt, 3), light(array, std::nullopt, 3));
  EXPECT_NE(light(array, std::nullopt, 3), light(array, std::nullopt, 4));
}

}  // namespace
}  // namespace voltwright::season
