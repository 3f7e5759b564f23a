#include "engine/base/curve.h"

#include <gtest/gtest.h>

namespace voltwright::base {
namespace {

const Curve kCurve{{0.0, 1.0}, {1.0, 3.0}, {4.0, 0.0}};

TEST(Curve, StraightBetweenPointsConstantBeyond) {
  EXPECT_DOUBLE_EQ(curve_at(kCurve, 0.5, 9.0), 2.0);
  EXPECT_DOUBLE_EQ(curve_at(kCurve, 1.0, 9.0), 3.0);
  EXPECT_DOUBLE_EQ(curve_at(kCurve, 2.5, 9.0), 1.5);
  EXPECT_DOUBLE_EQ(curve_at(kCurve, -5.0, 9.0), 1.0);
  EXPECT_DOUBLE_EQ(curve_at(kCurve, 5.0, 9.0), 0.0);
  EXPECT_DOUBLE_EQ(curve_at({}, 0.5, 9.0), 9.0);
}

struct Set {
  UniformTable<8> first;
};

TEST(UniformTable, ValueAndSlope) {
  Set set;
  set.first.fill(0.0, 4.0, [](double x) { return curve_at(kCurve, x, 0.0); });
  const Set* at = &set;
  const auto look = [&](double x) { return look_up<double>(at, &Set::first, x); };
  EXPECT_DOUBLE_EQ(look(0.5).value, 2.0);
  EXPECT_DOUBLE_EQ(look(0.5).slope, 2.0);
  EXPECT_DOUBLE_EQ(look(2.25).value, 1.75);
  EXPECT_DOUBLE_EQ(look(2.25).slope, -1.0);
  // Beyond the ends the value stays; above the last point the slope is nothing.
  EXPECT_DOUBLE_EQ(look(-3.0).value, 1.0);
  EXPECT_DOUBLE_EQ(look(7.0).value, 0.0);
  EXPECT_DOUBLE_EQ(look(7.0).slope, 0.0);
}

TEST(Lanes, PlainNumbersChooseByMask) {
  EXPECT_EQ(min_of(1.0, 2.0), 1.0);
  EXPECT_EQ(max_of(1.0, 2.0), 2.0);
  EXPECT_EQ(clamp_of(5.0, 0.0, 2.0), 2.0);
  EXPECT_EQ(clamp_of(-5.0, 0.0, 2.0), 0.0);
  EXPECT_EQ(clamp_of(1.0, 0.0, 2.0), 1.0);
}

TEST(Lanes, WideNumbersDoTheSameInEachLane) {
  using Wide = simd::native_simd<double>;
  using L = Lanes<Wide>;
  const Wide x = L::generate([](std::size_t i) { return static_cast<double>(i) - 0.5; });
  const Wide y = clamp_of<Wide>(x, Wide(0.0), Wide(1.0));
  for (std::size_t i = 0; i < L::kCount; ++i) {
    EXPECT_EQ(L::lane_value(y, i), clamp_of(static_cast<double>(i) - 0.5, 0.0, 1.0));
  }
  EXPECT_TRUE(L::any(x < Wide(0.0)));
  EXPECT_FALSE(L::any(x > Wide(1e3)));
}

}  // namespace
}  // namespace voltwright::base
