// Latches of the protection: they set at one threshold and clear at another.
#include "engine/bank/protection.h"

#include <gtest/gtest.h>

namespace voltwright::bank {
namespace {

/// Lets the guard look at a bank of a given temperature and charge.
struct Bench {
  cell::Chemistry chemistry;
  cell::Tables tables;
  Parameters<double> parameters;
  GuardState<double> latches;

  Bench() { build(); }
  void build() {
    tables = cell::make_tables(chemistry);
    parameters.tables = &tables;
    parameters.capacity_Ah = 100.0;
  }
  Permission<double> permit(const Guard<double>& g, double temperature_C, double charge = 0.5) {
    State<double> bank;
    bank.temperature_C = temperature_C;
    bank.charge = charge;
    return bank::permit<double>(g, latches, parameters, bank);
  }
  void watch(const Guard<double>& g, double bank_V, double charge, double available, double current_A,
             double step_s = 60.0) {
    bank::watch<double>(g, latches, {bank_V, bank_V, bank_V, charge, available, 0.0, current_A, step_s});
  }
};

Guard<double> guard() {
  Guard<double> g;
  g.charge_min_C = 0.0;
  g.charge_max_C = 45.0;
  g.discharge_min_C = -20.0;
  g.discharge_max_C = 60.0;
  g.hysteresis_K = 3.0;
  g.charge_limit_A = 50.0;
  g.over_voltage_V = 14.6;
  g.under_voltage_V = 10.0;
  g.under_voltage_release_V = 12.0;
  g.floor_charge = 0.2;
  g.floor_release = 0.05;
  return g;
}

TEST(Protection, TemperatureWindowsHaveHysteresis) {
  Bench s;
  const auto limit_A = [&](double t) { return s.permit(guard(), t).charge_limit_A; };
  EXPECT_EQ(limit_A(20.0), 50.0);
  EXPECT_EQ(limit_A(-0.5), 0.0);
  EXPECT_EQ(limit_A(2.0), 0.0);
  EXPECT_EQ(limit_A(3.5), 50.0);
  EXPECT_EQ(limit_A(45.5), 0.0);
  EXPECT_EQ(limit_A(43.0), 0.0);
  EXPECT_EQ(limit_A(41.0), 50.0);
}

TEST(Protection, DischargeHasItsOwnWindow) {
  Bench s;
  const auto allowed = [&](double t) { return s.permit(guard(), t).discharge_allowed; };
  EXPECT_TRUE(allowed(-5.0));
  EXPECT_FALSE(allowed(-21.0));
  EXPECT_FALSE(allowed(-18.0));
  EXPECT_TRUE(allowed(-16.0));
  EXPECT_FALSE(allowed(61.0));
  EXPECT_TRUE(allowed(56.0));
}

TEST(Protection, TemperatureReducesTheChargeCurrent) {
  Bench s;
  s.chemistry.limits.charge_rate_by_C = {{-20.0, 0.3}, {0.0, 0.3}, {10.0, 0.8}};
  s.build();
  Guard<double> g = guard();
  g.charge_min_C = -20.0;
  EXPECT_NEAR(s.permit(g, -5.0).charge_limit_A, 30.0, 1e-9);
  EXPECT_NEAR(s.permit(g, 2.0).charge_limit_A, 40.0, 1e-9);
  EXPECT_EQ(s.permit(g, 15.0).charge_limit_A, 50.0) << "never above the ordinary limit";
}

// Where a maker permits a reduced charge in the cold, that rate holds at and below the chemistry's limit.
TEST(Protection, AReducedChargeInTheColdWhereItIsPermitted) {
  Bench s;
  s.chemistry.limits.charge_rate_by_C = {{0.0, 0.0}, {0.5, 0.1}, {15.0, 1.0}};
  s.build();
  Guard<double> g = guard();
  g.charge_min_C = -10.0;
  g.reduced_below_C = 0.0;
  g.reduced_A = 5.0;
  EXPECT_NEAR(s.permit(g, -5.0).charge_limit_A, 5.0, 1e-9);
  EXPECT_NEAR(s.permit(g, 0.0).charge_limit_A, 5.0, 1e-9);
  EXPECT_NEAR(s.permit(g, 0.5).charge_limit_A, 10.0, 1e-9);
  EXPECT_EQ(s.permit(g, -10.0).charge_limit_A, 0.0);
}

TEST(Protection, OverVoltageOpensForChargeOnly) {
  Bench s;
  s.watch(guard(), 14.7, 0.99, 0.99, -20.0);
  const auto p = s.permit(guard(), 20.0);
  EXPECT_EQ(p.charge_limit_A, 0.0);
  EXPECT_TRUE(p.discharge_allowed);
  s.watch(guard(), 14.4, 0.99, 0.99, 0.0);
  EXPECT_EQ(s.permit(guard(), 20.0).charge_limit_A, 0.0) << "released only 2 % below";
  s.watch(guard(), 14.2, 0.99, 0.99, 0.0);
  EXPECT_EQ(s.permit(guard(), 20.0).charge_limit_A, 50.0);
}

TEST(Protection, EmptyByVoltageByDepthOrByTheAvailableLevel) {
  const auto empty_after = [](double bank_V, double charge, double available, double current_A) {
    Bench s;
    s.watch(guard(), bank_V, charge, available, current_A);
    return s.latches.empty > 0.5;
  };
  EXPECT_FALSE(empty_after(12.5, 0.5, 0.5, 10.0));
  EXPECT_TRUE(empty_after(9.9, 0.5, 0.5, 10.0));
  EXPECT_FALSE(empty_after(9.9, 0.5, 0.5, -10.0)) << "low voltage while charging is no reason to open";
  EXPECT_TRUE(empty_after(12.5, 0.2, 0.3, 10.0));
  EXPECT_TRUE(empty_after(12.5, 0.5, 0.0005, 10.0));
}

TEST(Protection, ComesBackOnlyWhenThereIsSomethingAgain) {
  Bench s;
  s.watch(guard(), 12.5, 0.19, 0.3, 10.0);
  EXPECT_FALSE(s.permit(guard(), 20.0).discharge_allowed);
  s.watch(guard(), 13.0, 0.24, 0.3, -10.0);
  EXPECT_FALSE(s.permit(guard(), 20.0).discharge_allowed) << "not 5 % above the floor yet";
  s.watch(guard(), 11.5, 0.27, 0.3, -10.0);
  EXPECT_FALSE(s.permit(guard(), 20.0).discharge_allowed) << "voltage below the release";
  s.watch(guard(), 13.0, 0.27, 0.3, -10.0);
  EXPECT_TRUE(s.permit(guard(), 20.0).discharge_allowed);
}

// Inverse time: never at the continuous current, after the peak time at the peak current, later below it.
TEST(Protection, OverCurrentOpensAfterATime) {
  Guard<double> g = guard();
  g.continuous_A = 100.0;
  g.peak_A = 200.0;
  g.peak_s = 10.0;
  const auto seconds_at = [&](double current_A) {
    Bench s;
    for (int i = 1; i <= 3600; ++i) {
      s.watch(g, 12.5, 0.5, 0.5, current_A, 1.0);
      if (!s.permit(g, 20.0).discharge_allowed) return i;
    }
    return 0;
  };
  EXPECT_EQ(seconds_at(100.0), 0);
  EXPECT_EQ(seconds_at(200.0), 10);
  EXPECT_EQ(seconds_at(400.0), 2);
  // (200^2 - 100^2) / (150^2 - 100^2) x 10 s = 24 s.
  EXPECT_EQ(seconds_at(150.0), 24);
}

TEST(Protection, OverCurrentClosesAgainAfterAMinute) {
  Guard<double> g = guard();
  g.continuous_A = 100.0;
  g.peak_A = 200.0;
  g.peak_s = 10.0;
  Bench s;
  s.watch(g, 12.5, 0.5, 0.5, 250.0, 10.0);
  EXPECT_FALSE(s.permit(g, 20.0).discharge_allowed);
  s.watch(g, 12.5, 0.5, 0.5, 0.0, 59.0);
  EXPECT_FALSE(s.permit(g, 20.0).discharge_allowed);
  s.watch(g, 12.5, 0.5, 0.5, 0.0, 1.0);
  EXPECT_TRUE(s.permit(g, 20.0).discharge_allowed);
}

TEST(Protection, FrozenElectrolyteNeitherTakesNorGives) {
  Bench s;
  s.chemistry.freezing_C = {{0.0, -8.0}, {1.0, -57.0}};
  s.build();
  Guard<double> g = guard();
  g.charge_min_C = g.discharge_min_C = -60.0;
  EXPECT_TRUE(s.permit(g, -20.0, 0.9).discharge_allowed);
  EXPECT_FALSE(s.permit(g, -20.0, 0.1).discharge_allowed);
  EXPECT_EQ(s.permit(g, -20.0, 0.1).charge_limit_A, 0.0);
  EXPECT_TRUE(s.permit(g, -5.0, 0.1).discharge_allowed);
}

// Opened on low voltage with next to nothing left: chargers that look for a voltage see none until one that
// does not look has charged it. A sag under load is another matter. Lead-acid has no protection that could
// open.
TEST(Protection, DarkWhenNothingIsLeftToBeSeen) {
  Guard<double> g = guard();
  g.electronic = 1.0;
  Bench s;
  bank::watch<double>(g, s.latches, {9.0, 9.0, 12.4, 0.5, 0.5, 0.0, 10.0, 60.0});
  EXPECT_EQ(s.latches.dark, 0.0) << "recovers by itself";
  bank::watch<double>(g, s.latches, {9.0, 9.0, 9.5, 0.001, 0.0005, 0.0, 10.0, 60.0});
  EXPECT_EQ(s.latches.dark, 1.0);
  bank::watch<double>(g, s.latches, {12.3, 12.3, 12.3, 0.001, 0.001, 0.0, 0.0, 60.0});
  EXPECT_EQ(s.latches.dark, 1.0) << "no charger yet";
  bank::watch<double>(g, s.latches, {12.3, 12.3, 12.1, 0.01, 0.01, 0.0, -5.0, 60.0});
  EXPECT_EQ(s.latches.dark, 0.0) << "a charger has raised it";
  bank::watch<double>(g, s.latches, {9.0, 9.0, 12.4, 0.04, 0.04, 0.0, 10.0, 60.0});
  EXPECT_EQ(s.latches.dark, 1.0) << "the loads would draw the rest";
  s.latches.dark = 0.0;
  g.electronic = 0.0;
  bank::watch<double>(g, s.latches, {9.0, 9.0, 9.5, 0.001, 0.0005, 0.0, 10.0, 60.0});
  EXPECT_EQ(s.latches.dark, 0.0);
}

}  // namespace
}  // namespace voltwright::bank
