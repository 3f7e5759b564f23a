// What a skyline takes away. Expected values come from geometry, and from what must hold for any skyline.
#include "engine/sky/horizon.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "engine/sky/angle.h"
#include "engine/sky/plane.h"

namespace voltwright::sky {
namespace {

double between(double low, double high) {
  return low + (high - low) * *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001)) / 1000000.0;
}

double passes(const Skyline& skyline, double azimuth_deg, double elevation_deg) {
  return static_cast<double>(skyline.beam(static_cast<float>(radians(azimuth_deg)),
                                          static_cast<float>(std::sin(radians(elevation_deg)))));
}

TEST(Skyline, LevelEdgeHidesTheSunBelowItAndSquaresTheView) {
  // A level plane under an edge of elevation e all around sees cos^2 e of an even sky (integral of sine).
  for (const double e : {5.0, 20.0, 45.0}) {
    const Skyline skyline({{0.0, e}});
    EXPECT_EQ(passes(skyline, 123.4, e - 0.1), 0.0);
    EXPECT_EQ(passes(skyline, 123.4, e + 0.1), 1.0);
    EXPECT_NEAR(skyline.view_of_sky(0.0, 0.0), std::pow(std::cos(radians(e)), 2), 0.01) << e;
  }
}

TEST(Skyline, FlatOneIsNone) {
  EXPECT_TRUE(Skyline().open());
  EXPECT_TRUE(Skyline({{0.0, 0.0}, {90.0, 0.0}}).open());
  EXPECT_EQ(Skyline({{10.0, 0.0}}).view_of_sky(30.0, 180.0), 1.0);
}

TEST(Skyline, JoinsItsPointsAcrossNorth) {
  const Skyline skyline({{350.0, 10.0}, {10.0, 30.0}, {180.0, 0.0}});
  EXPECT_EQ(passes(skyline, 0.5, 20.0), 0.0);  // 20.5 deg there
  EXPECT_EQ(passes(skyline, 0.5, 21.0), 1.0);
}

TEST(Skyline, MastTreesAndRoof) {
  // A mast of 10 m at 10 m stands 45 deg high; 1 m wide it covers 5.7 deg.
  const Skyline pole({}, {mast(180.0, 10.0, 10.0, 1.0, 0.5)});
  EXPECT_EQ(passes(pole, 181.2, 44.0), 0.5);
  EXPECT_EQ(passes(pole, 181.2, 46.0), 1.0);
  EXPECT_EQ(passes(pole, 184.5, 44.0), 1.0);
  const Skyline trees({}, {tree_line(300.0, 60.0, 20.0, 10.0, 0.25)});  // across north, 26.6 deg high
  EXPECT_EQ(passes(trees, 0.5, 26.0), 0.25);
  EXPECT_EQ(passes(trees, 180.5, 5.0), 1.0);
  const Skyline roof(rising_roof(0.0, 30.0));
  EXPECT_EQ(passes(roof, 0.5, 29.0), 0.0);
  EXPECT_EQ(passes(roof, 0.5, 31.0), 1.0);
  EXPECT_EQ(passes(roof, 180.5, 1.0), 1.0);
  // A slope of s that rises to one side leaves (1 + cos s) / 2 of the sky: that of a plane so tilted.
  EXPECT_NEAR(Skyline(rising_roof(0.0, 30.0)).view_of_sky(30.0, 180.0), 1.0, 0.005);
}

TEST(Skyline, HigherIsNeverBrighterAndNeverBrighterThanOpen) {
  const bool holds = rc::check("light falls with the height of the edge", [] {
    const Site site{between(-65.0, 65.0), between(-180.0, 180.0), 0.0};
    const SunMinutes sun = sun_minutes(site, 1767225600 + static_cast<std::int64_t>(between(0.0, 3e7)), 1440);
    WeatherMinutes weather;
    for (const float c : sun.cos_zenith) {
      const float up = c > 0.0F ? c : 0.0F;
      weather.dni_W_m2.push_back(up > 0.0F ? 700.0F : 0.0F);
      weather.dhi_W_m2.push_back(up > 0.0F ? 30.0F + 100.0F * up : 0.0F);
      weather.ghi_W_m2.push_back(weather.dhi_W_m2.back() + weather.dni_W_m2.back() * up);
      weather.temperature_C.push_back(10.0F);
      weather.wind_m_s.push_back(2.0F);
    }
    Plane plane{between(0.0, 1.0) < 0.3 ? 0.0 : between(0.0, 90.0), between(0.0, 360.0)};
    const PlaneMinutes open = plane_minutes(sun, weather, plane);
    const double edge = between(0.0, 50.0);
    const double at = between(0.0, 360.0);
    const std::vector<Obstacle> trees{tree_line(at, at + 60.0, 10.0, between(0.0, 10.0), between(0.0, 1.0))};
    plane.skyline = Skyline({{at, edge}, {at + 120.0, 0.5 * edge}}, trees);
    const PlaneMinutes low = plane_minutes(sun, weather, plane);
    plane.skyline = Skyline({{at, edge + 15.0}, {at + 120.0, 0.5 * edge + 15.0}}, trees);
    const PlaneMinutes high = plane_minutes(sun, weather, plane);
    for (std::size_t i = 0; i < open.absorbed_W_m2.size(); ++i) {
      RC_ASSERT(low.absorbed_W_m2[i] <= open.absorbed_W_m2[i] * 1.00001F);
      RC_ASSERT(high.absorbed_W_m2[i] <= low.absorbed_W_m2[i] * 1.00001F);
      RC_ASSERT(high.absorbed_W_m2[i] >= 0.0F);
      RC_ASSERT(high.module_C[i] <= low.module_C[i] + 1e-3F);
    }
  });
  EXPECT_TRUE(holds);
}

}  // namespace
}  // namespace voltwright::sky
