// Quadratic loss curve of inverters, Schmidt and Sauer 1996 (form from memory).
#include "engine/demand/inverter.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::demand {
namespace {

Inverter sample() {
  Inverter inverter;
  inverter.rated = units::watts(2000.0);
  inverter.idle = units::watts(16.0);
  inverter.linear_loss = 0.03;
  inverter.quadratic_loss = 0.06;
  return inverter;
}

// p0 0.008, k1 0.03, k2 0.06 of 2000 W, worked out independently: half a unit of the last digit.
TEST(InverterCurve, SampleSet) {
  const struct {
    double load, input_W, efficiency;
  } kRows[] = {{0.0, 16.0, 0.0},      {0.05, 119.3, 0.8382}, {0.10, 223.2, 0.8961}, {0.25, 538.5, 0.9285},
               {0.50, 1076.0, 0.9294}, {0.75, 1628.5, 0.9211}, {1.0, 2196.0, 0.9107}};
  for (const auto& row : kRows) {
    const double output_W = 2000.0 * row.load;
    const double input_W = inverter_input_W(sample(), output_W);
    EXPECT_NEAR(input_W, row.input_W, 0.0501) << row.load;
    EXPECT_NEAR(output_W / input_W, row.efficiency, 5.1e-5) << row.load;
  }
}

// The best load is sqrt(p0 / k2) = 0.365 of the rating, with 0.9313.
TEST(InverterCurve, BestLoad) {
  double best = 0.0;
  double at = 0.0;
  for (double u = 0.01; u <= 1.0; u += 0.001) {
    const double efficiency = 2000.0 * u / inverter_input_W(sample(), 2000.0 * u);
    if (efficiency > best) {
      best = efficiency;
      at = u;
    }
  }
  EXPECT_NEAR(at, 0.365, 0.0011);
  EXPECT_NEAR(best, 0.9313, 5e-5);
}

// 15 W at idle are 360 Wh a day; none if switched off when unused.
TEST(InverterCurve, Idle) {
  Inverter inverter = sample();
  inverter.idle = units::watts(15.0);
  EXPECT_NEAR(24.0 * inverter_input_W(inverter, 0.0), 360.0, 1e-9);
  inverter.off_when_unused = true;
  EXPECT_EQ(inverter_input_W(inverter, 0.0), 0.0);
}

}  // namespace
}  // namespace voltwright::demand
