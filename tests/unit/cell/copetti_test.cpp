// The photovoltaic battery model of 1993: its courses, and finite numbers wherever it is asked.
#include "engine/cell/copetti.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::cell {
namespace {

constexpr CopettiString kString{100.0};

TEST(Copetti, VoltageRisesWithChargeAndChargeLiesAboveDischarge) {
  for (const double current_A : {1.0, 5.0, 10.0, 20.0}) {
    double before_out = -10.0;  // near empty the formula falls below nought
    double before_in = 0.0;
    for (double z = 0.05; z < 0.99; z += 0.05) {
      const double out_V = copetti_discharge_V(kString, z, current_A, 25.0).value;
      const double in_V = copetti_charge_V(kString, z, current_A, 25.0).value;
      EXPECT_GT(out_V, before_out);
      EXPECT_GT(in_V, before_in);
      EXPECT_GT(in_V, out_V);
      before_out = out_V;
      before_in = in_V;
    }
  }
}

TEST(Copetti, FiniteAndFlaggedOutside) {
  for (const double z : {-1.0, 0.0, 1.0, 2.0}) {
    EXPECT_TRUE(std::isfinite(copetti_discharge_V(kString, z, 10.0, 25.0).value)) << z;
    EXPECT_TRUE(std::isfinite(copetti_charge_V(kString, z, 10.0, 25.0).value)) << z;
    EXPECT_EQ(copetti_discharge_V(kString, z, 10.0, 25.0).valid, z == 1.0) << z;
    EXPECT_FALSE(copetti_charge_V(kString, z, 10.0, 25.0).valid) << z;
    EXPECT_GE(copetti_charge_efficiency(kString, z, 10.0).value, 0.0) << z;
    EXPECT_LE(copetti_charge_efficiency(kString, z, 10.0).value, 1.0) << z;
  }
  EXPECT_FALSE(copetti_gassing_V(kString, 25.0, 25.0).valid);
  EXPECT_FALSE(copetti_final_V(kString, -1.0, 25.0).valid);
  EXPECT_FALSE(copetti_time_constant_h(kString, 25.0).valid);
  EXPECT_FALSE(copetti_overcharge_V(kString, 25.0, 25.0, 1.0).valid);
}

TEST(Copetti, GassingBeginsWhereTheChargingVoltageMeetsItsOnset) {
  for (const double current_A : {2.0, 10.0, 20.0}) {
    const double z = copetti_gassing_charge(kString, current_A, 25.0).value;
    EXPECT_GT(z, 0.3);
    EXPECT_LT(z, 1.0);
    EXPECT_NEAR(copetti_charge_V(kString, z, current_A, 25.0).value,
                copetti_gassing_V(kString, current_A, 25.0).value, 1e-9);
  }
  EXPECT_EQ(copetti_gassing_charge(kString, 0.0, 25.0).value, 1.0);  // a current of nought never gets there
}

TEST(Copetti, OverchargeLeadsFromTheOnsetToTheEnd) {
  const double end_V = copetti_final_V(kString, 10.0, 25.0).value;
  double before_V = copetti_gassing_V(kString, 10.0, 25.0).value;
  EXPECT_DOUBLE_EQ(copetti_overcharge_V(kString, 10.0, 25.0, -1.0).value, before_V);
  for (const double hours : {0.1, 0.5, 1.0, 3.0}) {
    const double now_V = copetti_overcharge_V(kString, 10.0, 25.0, hours).value;
    EXPECT_GT(now_V, before_V);
    EXPECT_LT(now_V, end_V);
    before_V = now_V;
  }
}

}  // namespace
}  // namespace voltwright::cell
