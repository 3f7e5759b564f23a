// What must hold of every alternator, generator and turbine.
#include <gtest/gtest.h>

#include "engine/base/random.h"
#include "engine/supply/alternator.h"
#include "engine/supply/generator.h"
#include "engine/supply/towing_plug.h"
#include "engine/supply/wind_turbine.h"

namespace voltwright::supply {
namespace {

constexpr int kTries = 2000;

TEST(EngineSide, AlternatorNeverRisesAboveItsCurveAndGrowsWithSpeed) {
  base::RandomStream random(11);
  for (int i = 0; i < kTries; ++i) {
    Alternator a;
    a.rated_A = 20.0 + 300.0 * random.uniform();
    a.pulley_ratio = 1.5 + 2.0 * random.uniform();
    const double air_C = -30.0 + 150.0 * random.uniform();
    const double rpm = 4000.0 * random.uniform();
    const double now_A = alternator_A(a, rpm, air_C);
    EXPECT_GE(now_A, 0.0);
    EXPECT_LE(now_A, a.rated_A);
    EXPECT_GE(alternator_A(a, rpm + 100.0, air_C), now_A);
    EXPECT_LE(alternator_A(a, rpm, air_C + 10.0), now_A);
    EXPECT_LE(spare_A(a, rpm, air_C), now_A);
  }
}

TEST(EngineSide, MoreEnergyTakesMoreFuelAndLessOfItForEachUnit) {
  base::RandomStream random(12);
  for (int i = 0; i < kTries; ++i) {
    Generator g;
    g.rated_W = 500.0 + 5000.0 * random.uniform();
    const double load_W = (0.02 + 0.9 * random.uniform()) * g.rated_W;
    const double more_W = load_W + 0.05 * g.rated_W;
    EXPECT_GT(generator_L_per_h(g, more_W), generator_L_per_h(g, load_W));
    EXPECT_LT(generator_L_per_kWh(g, more_W), generator_L_per_kWh(g, load_W));
  }
}

TEST(EngineSide, TurbinesGrowWithSpeedUpToTheirRating) {
  const WindTurbine t;
  const WaterGenerator w;
  double wind_W = 0.0;
  double wet_W = 0.0;
  for (double v = 0.0; v < t.cut_out_m_s; v += 0.05) {
    const double next_W = turbine_W(t, v, 1.225);
    const double next_wet_W = water_W(w, v);
    EXPECT_GE(next_W, wind_W);
    EXPECT_GE(next_wet_W, wet_W);
    EXPECT_LE(next_W, t.rated_W);
    EXPECT_LE(next_wet_W, w.rated_W);
    // The limit of Betz: 16/27 of the wind's power.
    EXPECT_LE(next_W, 16.0 / 27.0 * 0.5 * 1.225 * 0.7854 * v * v * v + 1e-9);
    wind_W = next_W;
    wet_W = next_wet_W;
  }
}

TEST(EngineSide, PowerIntoALeadIsWhatComesOutAndWhatItLoses) {
  base::RandomStream random(13);
  for (int i = 0; i < kTries; ++i) {
    TowingPlug plug;
    plug.loop_ohm = 0.005 + 0.1 * random.uniform();
    plug.contacts_ohm = 0.02 * random.uniform();
    const double at_V = 12.0 + 3.0 * random.uniform();
    const double output_W = 200.0 * random.uniform();
    const TowingCharge c = tow_converter(plug, at_V, output_W, 0.9, 0.0);
    if (c.current_A <= 0.0) continue;
    EXPECT_NEAR(at_V * c.current_A, output_W / 0.9 + c.drop_V * c.current_A, 1e-9 * at_V * c.current_A);
  }
}

}  // namespace
}  // namespace voltwright::supply
