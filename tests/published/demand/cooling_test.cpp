// A refrigerator against the room: energy relative to 25 degC, inside 4 degC. Lower bound: heat gain alone, (T - 4) / 21.
// Upper bound: heat gain over a Carnot coefficient with 15 K on both sides. Both worked out independently.
#include "engine/demand/cooling.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::demand {
namespace {

TEST(CoolingAgainstRoom, GeometricMeanOfTheBounds) {
  const struct {
    double room_C, lower, upper;
  } kRows[] = {{16.0, 0.571, 0.471}, {20.0, 0.762, 0.687}, {25.0, 1.0, 1.0},     {30.0, 1.238, 1.359},
               {32.0, 1.333, 1.516}, {35.0, 1.476, 1.766}, {40.0, 1.714, 2.218}, {43.0, 1.857, 2.513}};
  Cooling cooling;
  cooling.inside = units::celsius(4.0);
  cooling.heat_leak = units::watts_per_kelvin(0.8);
  cooling.cop_at_25C = 1.6;
  const double at_25_W = cooling_power_W(cooling, 25.0);
  EXPECT_NEAR(at_25_W, 0.8 * 21.0 / 1.6, 1e-9);
  for (const auto& row : kRows) {
    const double relative = cooling_power_W(cooling, row.room_C) / at_25_W;
    EXPECT_GE(relative, std::fmin(row.lower, row.upper) - 1e-3) << row.room_C;
    EXPECT_LE(relative, std::fmax(row.lower, row.upper) + 1e-3) << row.room_C;
    // Two roundings in the third decimal.
    EXPECT_NEAR(relative, std::sqrt(row.lower * row.upper), 1.2e-3) << row.room_C;
  }
}

TEST(CoolingAgainstRoom, NothingIfTheRoomIsColder) {
  Cooling cooling;
  cooling.heat_leak = units::watts_per_kelvin(0.8);
  EXPECT_EQ(cooling_power_W(cooling, 4.0), 0.0);
  EXPECT_EQ(cooling_power_W(cooling, -10.0), 0.0);
}

}  // namespace
}  // namespace voltwright::demand
