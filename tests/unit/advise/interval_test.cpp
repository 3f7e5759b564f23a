#include "engine/advise/interval.h"

#include <gtest/gtest.h>

namespace voltwright::advise {
namespace {

TEST(Chance, WithoutSeasonsNothingIsKnown) {
  const Chance c = chance_of(0, 0);
  EXPECT_EQ(c.low, 0.0);
  EXPECT_EQ(c.high, 1.0);
}

TEST(Chance, NeverAndAlways) {
  EXPECT_EQ(chance_of(0, 50).low, 0.0);
  EXPECT_GT(chance_of(0, 50).high, 0.0);
  EXPECT_EQ(chance_of(50, 50).high, 1.0);
  EXPECT_LT(chance_of(50, 50).low, 1.0);
}

TEST(Chance, NarrowsWithSeasons) {
  double last = 1.0;
  for (const int n : {10, 100, 1000, 10000}) {
    const Chance c = chance_of(n / 10, n);
    EXPECT_LE(c.low, 0.1);
    EXPECT_GE(c.high, 0.1);
    EXPECT_LT(c.high - c.low, last);
    last = c.high - c.low;
  }
}

TEST(SeasonsToDecide, NoneIfDecided) {
  EXPECT_EQ(seasons_to_decide(chance_of(0, 1000), 0.05), 0);
  EXPECT_EQ(seasons_to_decide(chance_of(500, 1000), 0.05), 0);
}

// The smallest number at which the interval of the same share leaves the limit out; one fewer would not do.
TEST(SeasonsToDecide, IsTheSmallestNumber) {
  for (const int events : {0, 1, 2, 8}) {
    const Chance now = chance_of(events, events == 0 ? 20 : 50);
    const int n = seasons_to_decide(now, 0.05);
    ASSERT_GT(n, now.seasons);
    // Shares of whole seasons exist only at multiples; with no event every number does.
    if (events == 0) {
      EXPECT_LE(chance_of(0, n).high, 0.05);
      EXPECT_GT(chance_of(0, n - 1).high, 0.05);
    } else {
      const int times = n / 50;
      const Chance before = chance_of(events * times, 50 * times);
      const Chance after = chance_of(events * (times + 1), 50 * (times + 1));
      EXPECT_TRUE(before.low <= 0.05 && before.high > 0.05);
      EXPECT_TRUE(after.low > 0.05 || after.high <= 0.05);
    }
  }
}

TEST(SeasonsToDecide, GivesUpAtTheMost) {
  EXPECT_EQ(seasons_to_decide(chance_of(50, 1000), 0.05, 20000), 20000);
}

}  // namespace
}  // namespace voltwright::advise
