// A bank in a box: two heat nodes in a chain.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/bank/assembly.h"
#include "engine/bank/electrochemistry.h"

namespace voltwright::bank {
namespace {

/// A bank without losses of its own.
struct Boxed {
  cell::Chemistry chemistry;
  cell::Tables tables;
  Battery battery;

  Boxed() {
    chemistry.ocv_V = {{0.0, 3.3}, {1.0, 3.3}};
    chemistry.self_discharge_per_month = 0.0;
    tables = cell::make_tables(chemistry);
    battery.mass_kg = {12.0, 12.0, 12.0};
  }
  Parameters<double> parameters(double step_s, double box_loss_W_K) const {
    return assemble(battery, chemistry, tables, {}, 0.0, 2.4, step_s, {box_loss_W_K, 3000.0});
  }
};

State<double> after(const Parameters<double>& p, State<double> s, int steps, double outside_C,
                    double heater_W) {
  for (int i = 0; i < steps; ++i) advance<double>(p, terminal<double>(p, s), s, 0.0, outside_C, heater_W);
  return s;
}

State<double> warm() {
  State<double> s;
  s.temperature_C = 20.0;
  s.enclosure_C = 5.0;
  return s;
}

// The exponential of the two nodes is exact: any number of pieces leads to the same.
TEST(HeatNodes, StepsOfAnyLengthAgree) {
  const Boxed boxed;
  const State<double> whole = after(boxed.parameters(3600.0, 0.8), warm(), 1, -10.0, 30.0);
  const State<double> pieces = after(boxed.parameters(1.0, 0.8), warm(), 3600, -10.0, 30.0);
  EXPECT_NEAR(whole.temperature_C, pieces.temperature_C, 1e-9);
  EXPECT_NEAR(whole.enclosure_C, pieces.enclosure_C, 1e-9);
}

// And it is that of the differential equations: small Euler steps come close.
TEST(HeatNodes, FollowTheDifferentialEquations) {
  const Boxed boxed;
  const State<double> exact = after(boxed.parameters(600.0, 0.8), warm(), 1, -10.0, 30.0);
  double bank_C = 20.0;
  double box_C = 5.0;
  constexpr double kStep_s = 0.01;
  for (int i = 0; i < 60000; ++i) {
    const double out_W = 2.4 * (bank_C - box_C);
    bank_C += (30.0 - out_W) / 12000.0 * kStep_s;
    box_C += (out_W - 0.8 * (box_C + 10.0)) / 3000.0 * kStep_s;
  }
  EXPECT_NEAR(exact.temperature_C, bank_C, 1e-4);
  EXPECT_NEAR(exact.enclosure_C, box_C, 1e-4);
}

// At rest: outside + P / G_box in the box, P / G more in the bank.
TEST(HeatNodes, SettleByTheirLosses) {
  const Boxed boxed;
  const State<double> s = after(boxed.parameters(3600.0, 0.8), warm(), 200, -10.0, 16.0);
  EXPECT_NEAR(s.enclosure_C, -10.0 + 16.0 / 0.8, 1e-6);
  EXPECT_NEAR(s.temperature_C, -10.0 + 16.0 / 0.8 + 16.0 / 2.4, 1e-6);
}

TEST(HeatNodes, WithoutABoxTheSurroundingsAreTheBox) {
  const Boxed boxed;
  const State<double> s = after(boxed.parameters(60.0, 0.0), warm(), 30, -10.0, 0.0);
  EXPECT_EQ(s.enclosure_C, -10.0);
  EXPECT_NEAR(s.temperature_C, -10.0 + 30.0 * std::exp(-1800.0 * 2.4 / 12000.0), 1e-9);
}

}  // namespace
}  // namespace voltwright::bank
