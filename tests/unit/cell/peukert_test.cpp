// Peukert's law: ratings meet themselves, the cap, and what is refused.
#include "engine/cell/peukert.h"

#include <gtest/gtest.h>

namespace voltwright::cell {
namespace {

TEST(Peukert, TheExponentOfTwoRatingsMeetsBoth) {
  const RatedCapacity slow{225.0, 20.0};
  const RatedCapacity fast{170.0, 5.0};
  const auto exponent = peukert_exponent(slow, fast);
  ASSERT_TRUE(exponent.ok());
  EXPECT_NEAR(peukert_exponent(fast, slow).value(), exponent.value(), 1e-12);
  EXPECT_NEAR(peukert_hours(slow, exponent.value(), 170.0 / 5.0), 5.0, 1e-12);
  EXPECT_NEAR(peukert_Ah(slow, exponent.value(), 170.0 / 5.0), 170.0, 1e-9);
}

TEST(Peukert, NeverMoreThanTheCap) {
  const RatedCapacity rated{100.0, 20.0};
  for (double current_A = 0.01; current_A < 500.0; current_A *= 1.5) {
    EXPECT_LE(peukert_Ah(rated, 1.3, current_A), kMostOfRating * 100.0 + 1e-9);
    EXPECT_LE(peukert_Ah(rated, 1.3, current_A, 1.0), 100.0 + 1e-9);
    EXPECT_NEAR(peukert_hours(rated, 1.3, current_A) * current_A, peukert_Ah(rated, 1.3, current_A), 1e-9);
  }
}

TEST(Peukert, RefusesRatingsThatCannotBe) {
  const RatedCapacity rated{100.0, 20.0};
  EXPECT_FALSE(peukert_exponent(rated, rated).ok());
  EXPECT_FALSE(peukert_exponent(rated, {60.0, 12.0}).ok());  // the same 5 A
  EXPECT_FALSE(peukert_exponent(rated, {110.0, 5.0}).ok());  // more when hurried
  EXPECT_FALSE(peukert_exponent(rated, {0.0, 5.0}).ok());
  EXPECT_FALSE(peukert_exponent_from_reserve(rated, -10.0).ok());
  EXPECT_NEAR(peukert_exponent(rated, {100.0, 5.0}).value(), 1.0, 1e-12);
}

}  // namespace
}  // namespace voltwright::cell
