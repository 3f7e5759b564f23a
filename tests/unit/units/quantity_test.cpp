#include "engine/units/quantity.h"

#include <gtest/gtest.h>

#include <type_traits>

namespace voltwright::units {
namespace {

TEST(Quantity, ProductsKeepTheirDimension) {
  static_assert(std::is_same_v<decltype(volts(1) * amperes(1)), Power>);
  static_assert(std::is_same_v<decltype(watts(1) * hours(1)), Energy>);
  static_assert(std::is_same_v<decltype(volts(1) * ampere_hours(1)), Energy>);
  EXPECT_DOUBLE_EQ(as_watt_hours(volts(12.8) * ampere_hours(100.0)), 1280.0);
  EXPECT_DOUBLE_EQ(as_ohms(volts(12.0) / amperes(4.0)), 3.0);
}

TEST(Quantity, TemperaturePointsAndDifferences) {
  static_assert(std::is_same_v<decltype(celsius(20) - celsius(5)), TemperatureDifference>);
  static_assert(std::is_same_v<decltype(celsius(20) - kelvins(5)), Temperature>);
  static_assert(std::is_same_v<decltype(celsius(20) + kelvins(5)), Temperature>);
  EXPECT_DOUBLE_EQ((celsius(20.0) - kelvins(5.0)).as_celsius(), 15.0);
  EXPECT_DOUBLE_EQ(as_kelvins(celsius(20.0) - celsius(5.0)), 15.0);
}

}  // namespace
}  // namespace voltwright::units
