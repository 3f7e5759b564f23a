// Numbers as a reader expects them. U+202F is the narrow no-break space, U+2212 the minus sign.
#include "engine/advise/wording.h"

#include <gtest/gtest.h>

#include <limits>

namespace voltwright::advise {
namespace {

TEST(Figure, ThreeDigitsWholeFromAHundredOn) {
  EXPECT_EQ(figure(0.0), "0");
  EXPECT_EQ(figure(0.35), "0.35");
  EXPECT_EQ(figure(0.3456), "0.346");
  EXPECT_EQ(figure(4.7), "4.7");
  EXPECT_EQ(figure(4.714), "4.71");
  EXPECT_EQ(figure(52.0), "52");
  EXPECT_EQ(figure(52.34), "52.3");
  EXPECT_EQ(figure(99.96), "100");
  EXPECT_EQ(figure(100.4), "100");
  EXPECT_EQ(figure(9.996), "10");
  EXPECT_EQ(figure(0.9996), "1");
}

TEST(Figure, ThousandsAreSeparated) {
  EXPECT_EQ(figure(999.6), "1,000");
  EXPECT_EQ(figure(1485.0), "1,485");
  EXPECT_EQ(figure(12345678.0), "12,345,678");
}

TEST(Figure, TrueMinus) {
  EXPECT_EQ(figure(-4.7), "\u22124.7");
  EXPECT_EQ(figure(-1485.0), "\u22121,485");
  EXPECT_EQ(figure(-0.00001), "0");
}

TEST(Figure, UnitAfterANarrowSpace) {
  EXPECT_EQ(figure(12.8, "V"), "12.8\u202FV");
  EXPECT_EQ(figure(-5.0, "°C"), "\u22125\u202F°C");
}

TEST(Figure, WithoutEnd) { EXPECT_EQ(figure(std::numeric_limits<double>::infinity()), "unlimited"); }

TEST(Percent, TwoDigits) {
  EXPECT_EQ(percent(0.0035), "0.35\u202F%");
  EXPECT_EQ(percent(0.042), "4.2\u202F%");
  EXPECT_EQ(percent(0.37), "37\u202F%");
  EXPECT_EQ(percent(0.05), "5\u202F%");
  EXPECT_EQ(percent(1.0), "100\u202F%");
  EXPECT_EQ(percent(0.0), "0\u202F%");
}

TEST(ChanceText, SaysCountAndInterval) {
  EXPECT_EQ(chance_text(3, 1000, 0.00102, 0.00878), "3 of 1,000 seasons (0.1\u202F% to 0.88\u202F%)");
  EXPECT_EQ(chance_text(0, 100, 0.0, 0.037), "0 of 100 seasons, under 3.7\u202F%");
  EXPECT_EQ(chance_text(20, 20, 0.839, 1.0), "20 of 20 seasons, over 84\u202F%");
}

TEST(DurationText, PicksItsUnit) {
  EXPECT_EQ(duration_text(50.0), "50\u202Fmin");
  EXPECT_EQ(duration_text(240.0), "4\u202Fh");
  EXPECT_EQ(duration_text(3.0 * 1440.0), "3\u202Fdays");
}

}  // namespace
}  // namespace voltwright::advise
