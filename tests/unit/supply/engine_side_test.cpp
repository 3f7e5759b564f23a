// When a generator runs, what a towing plug lets through, when turbines stand still.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/supply/alternator.h"
#include "engine/supply/dc_dc.h"
#include "engine/supply/generator.h"
#include "engine/supply/towing_plug.h"
#include "engine/supply/wind_draws.h"
#include "engine/supply/wind_turbine.h"

namespace voltwright::supply {
namespace {

constexpr int kHour = 3600;

TEST(Generator, StartsLowAndRunsOnUntilTheBankIsFullEnough) {
  Generator g;
  g.start_below = 0.3;
  g.stop_above = 0.8;
  EXPECT_FALSE(generator_runs(g, 12 * kHour, 0.5, false));
  EXPECT_TRUE(generator_runs(g, 12 * kHour, 0.29, false));
  EXPECT_TRUE(generator_runs(g, 12 * kHour, 0.5, true));
  EXPECT_FALSE(generator_runs(g, 12 * kHour, 0.8, true));
}

TEST(Generator, IsSilentInQuietHoursEvenWhenTheBankIsEmpty) {
  Generator g;
  g.start_below = 0.3;
  g.quiet = units::DayWindow{22 * kHour, 8 * kHour};
  EXPECT_FALSE(generator_runs(g, 23 * kHour, 0.1, true));
  EXPECT_FALSE(generator_runs(g, 7 * kHour, 0.1, true));
  EXPECT_TRUE(generator_runs(g, 8 * kHour, 0.1, false));
}

TEST(Generator, FollowsItsScheduleAndNothingElseWithoutAStartCharge) {
  Generator g;
  g.runs = units::DayWindow{9 * kHour, 11 * kHour};
  EXPECT_TRUE(generator_runs(g, 10 * kHour, 0.6, false));
  EXPECT_FALSE(generator_runs(g, 11 * kHour, 0.6, true));
  EXPECT_FALSE(generator_runs(g, 10 * kHour, 0.95, true));
  EXPECT_FALSE(generator_runs(g, 12 * kHour, 0.0, false));
}

TEST(Generator, IsOverloadedByAChargerWithAPoorPowerFactor) {
  Generator g;
  g.rated_W = 1000.0;
  g.charger_power_factor = 0.6;
  EXPECT_DOUBLE_EQ(generator_output_W(g, 900.0, 0.9), 1000.0 * 0.6 * 0.9);
  EXPECT_DOUBLE_EQ(generator_output_W(g, 300.0, 0.9), 300.0);
  EXPECT_TRUE(std::isinf(generator_L_per_kWh(g, 0.0)));
}

TEST(TowingPlug, GivesNothingToABankThatStandsHigherThanTheAlternator) {
  const TowingCharge charge = tow_direct({}, 12.8, 80.0, 13.2, 0.004);
  EXPECT_FALSE(charge.charges);
  EXPECT_EQ(charge.current_A, 0.0);
}

TEST(TowingPlug, KeepsToTheAlternatorsCurrentAndWarnsOfPinAndFuse) {
  TowingPlug plug;
  plug.loop_ohm = 0.010;
  plug.pin_A = 20.0;
  plug.fuse_A = 25.0;
  const TowingCharge charge = tow_direct(plug, 14.4, 30.0, 13.0, 0.004);
  EXPECT_DOUBLE_EQ(charge.current_A, 30.0);
  EXPECT_TRUE(charge.pin_overloaded);
  EXPECT_EQ(charge.fuse, FuseFate::kDoubtful);
  EXPECT_TRUE(charge.charges);
  plug.fuse_A = 15.0;
  EXPECT_FALSE(tow_direct(plug, 14.4, 30.0, 13.0, 0.004).charges);
}

TEST(TowingPlug, HasNoCurrentForAConverterBeyondWhatTheLeadCanCarry) {
  TowingPlug plug;
  plug.loop_ohm = 0.5;
  const TowingCharge charge = tow_converter(plug, 12.0, 300.0, 0.9, 0.0);  // most is 144 / 2 W
  EXPECT_FALSE(charge.charges);
  EXPECT_EQ(charge.current_A, 0.0);
}

TEST(Alternator, GivesTheVehicleItsShareFirst) {
  Alternator a;
  a.vehicle_A = 60.0;
  EXPECT_EQ(spare_A(a, 500.0, 85.0), 0.0);
  EXPECT_DOUBLE_EQ(spare_A(a, 2500.0, 25.0), alternator_A(a, 2500.0, 25.0) - 60.0);
  EXPECT_EQ(speed_share(900.0), 0.0);
}

TEST(Alternator, ControlledByTheEngineClosesARelayOnlyOnOverrun) {
  const ControlledDuty duty;
  EXPECT_DOUBLE_EQ(relay_closed_share(duty, 13.3), 0.10);
  EXPECT_NEAR(relay_closed_share(duty, 12.7), 0.70, 1e-12);
  EXPECT_EQ(relay_closed_share(duty, 15.0), 0.0);
}

TEST(Converter, IsDeratedInWarmAirAndNeverBelowNothing) {
  EXPECT_EQ(derated_share(20.0, 45.0, 0.03), 1.0);
  EXPECT_NEAR(derated_share(55.0, 45.0, 0.03), 0.70, 1e-12);
  EXPECT_EQ(derated_share(90.0, 45.0, 0.03), 0.0);
}

TEST(Turbine, StandsStillBelowCutInAndInAStorm) {
  const WindTurbine t;
  EXPECT_EQ(turbine_W(t, 3.4, 1.225), 0.0);
  EXPECT_GT(turbine_W(t, 3.6, 1.225), 0.0);
  EXPECT_EQ(turbine_W(t, 24.0, 1.225), t.rated_W);
  EXPECT_EQ(turbine_W(t, 25.0, 1.225), 0.0);
  const WaterGenerator w;
  EXPECT_EQ(water_W(w, 1.4), 0.0);
  EXPECT_DOUBLE_EQ(water_W(w, 3.0), 100.0);
  EXPECT_EQ(water_W(w, 9.0), 500.0);
}

TEST(WindYear, IsTheSameWheneverItIsDrawn) {
  WindHabit habit;
  habit.mean_m_s.fill(7.0);
  const sky::Site site{40.0, -20.0, 0.0};
  const auto first = wind_year(habit, site, 2028, 7, 3);
  EXPECT_EQ(first.size(), 8784U);
  (void)wind_year(habit, site, 2027, 7, 3);
  EXPECT_EQ(wind_year(habit, site, 2028, 7, 3), first);
  EXPECT_NE(wind_year(habit, site, 2028, 8, 3), first);
  EXPECT_NE(wind_year(habit, site, 2028, 7, 4), first);
  EXPECT_NE(wind_year(habit, {40.0, -25.0, 0.0}, 2028, 7, 3), first);
}

}  // namespace
}  // namespace voltwright::supply
