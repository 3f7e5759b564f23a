// Latches of the protection: they set at one threshold and clear at another.
#include "engine/bank/protection.h"

#include <gtest/gtest.h>

namespace voltwright::bank {
namespace {

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
  GuardState<double> s;
  const auto limit_A = [&](double t) { return permit<double>(guard(), s, t).charge_limit_A; };
  EXPECT_EQ(limit_A(20.0), 50.0);
  EXPECT_EQ(limit_A(-0.5), 0.0);
  EXPECT_EQ(limit_A(2.0), 0.0);
  EXPECT_EQ(limit_A(3.5), 50.0);
  EXPECT_EQ(limit_A(45.5), 0.0);
  EXPECT_EQ(limit_A(43.0), 0.0);
  EXPECT_EQ(limit_A(41.0), 50.0);
}

TEST(Protection, DischargeHasItsOwnWindow) {
  GuardState<double> s;
  const auto allowed = [&](double t) { return permit<double>(guard(), s, t).discharge_allowed; };
  EXPECT_TRUE(allowed(-5.0));
  EXPECT_FALSE(allowed(-21.0));
  EXPECT_FALSE(allowed(-18.0));
  EXPECT_TRUE(allowed(-16.0));
  EXPECT_FALSE(allowed(61.0));
  EXPECT_TRUE(allowed(56.0));
}

TEST(Protection, ColdReducesTheChargeCurrent) {
  Guard<double> g = guard();
  g.charge_min_C = -20.0;
  g.cold_below_C = 0.0;
  g.cold_limit_A = 30.0;
  GuardState<double> s;
  EXPECT_EQ(permit<double>(g, s, -5.0).charge_limit_A, 30.0);
  EXPECT_EQ(permit<double>(g, s, 5.0).charge_limit_A, 50.0);
  g.cold_limit_A = 80.0;
  EXPECT_EQ(permit<double>(g, s, -5.0).charge_limit_A, 50.0) << "never above the ordinary limit";
}

TEST(Protection, OverVoltageOpensForChargeOnly) {
  GuardState<double> s;
  watch<double>(guard(), s, 14.7, 0.99, 0.99, 0.0, -20.0);
  const auto p = permit<double>(guard(), s, 20.0);
  EXPECT_EQ(p.charge_limit_A, 0.0);
  EXPECT_TRUE(p.discharge_allowed);
  watch<double>(guard(), s, 14.4, 0.99, 0.99, 0.0, 0.0);
  EXPECT_EQ(permit<double>(guard(), s, 20.0).charge_limit_A, 0.0) << "released only 2 % below";
  watch<double>(guard(), s, 14.2, 0.99, 0.99, 0.0, 0.0);
  EXPECT_EQ(permit<double>(guard(), s, 20.0).charge_limit_A, 50.0);
}

TEST(Protection, EmptyByVoltageByDepthOrByTheAvailableLevel) {
  const auto empty_after = [](double bank_V, double charge, double available, double current_A) {
    GuardState<double> s;
    watch<double>(guard(), s, bank_V, charge, available, 0.0, current_A);
    return s.empty > 0.5;
  };
  EXPECT_FALSE(empty_after(12.5, 0.5, 0.5, 10.0));
  EXPECT_TRUE(empty_after(9.9, 0.5, 0.5, 10.0));
  EXPECT_FALSE(empty_after(9.9, 0.5, 0.5, -10.0)) << "low voltage while charging is no reason to open";
  EXPECT_TRUE(empty_after(12.5, 0.2, 0.3, 10.0));
  EXPECT_TRUE(empty_after(12.5, 0.5, 0.0005, 10.0));
}

TEST(Protection, ComesBackOnlyWhenThereIsSomethingAgain) {
  GuardState<double> s;
  watch<double>(guard(), s, 12.5, 0.19, 0.3, 0.0, 10.0);
  EXPECT_FALSE(permit<double>(guard(), s, 20.0).discharge_allowed);
  watch<double>(guard(), s, 13.0, 0.24, 0.3, 0.0, -10.0);
  EXPECT_FALSE(permit<double>(guard(), s, 20.0).discharge_allowed) << "not 5 % above the floor yet";
  watch<double>(guard(), s, 11.5, 0.27, 0.3, 0.0, -10.0);
  EXPECT_FALSE(permit<double>(guard(), s, 20.0).discharge_allowed) << "voltage below the release";
  watch<double>(guard(), s, 13.0, 0.27, 0.3, 0.0, -10.0);
  EXPECT_TRUE(permit<double>(guard(), s, 20.0).discharge_allowed);
}

}  // namespace
}  // namespace voltwright::bank
