// A life as it may be told: never finer than a quarter of itself.
#include "engine/advise/stated_life.h"

#include <gtest/gtest.h>

namespace voltwright::advise {
namespace {

TEST(StatedLife, WidensToAQuarterAndRounds) {
  const StatedLife life = stated({9.2, 9.2, 9.2});
  EXPECT_EQ(life.years.typical, 9.0);
  EXPECT_EQ(life.years.min, 6.0);   // 6.75 rounded down
  EXPECT_EQ(life.years.max, 12.0);  // 11.5 rounded up
  EXPECT_EQ(life_words(life), "about 9 years (6 to 12)");
}

TEST(StatedLife, NeverFinerThanAQuarter) {
  for (double years = 0.3; years < 40.0; years *= 1.03) {
    const StatedLife life = stated({years, years, years});
    EXPECT_LE(life.years.min, 0.75 * years) << years;
    if (!life.most_longer) {
      EXPECT_GE(life.years.max, 1.25 * years) << years;
    }
    if (!life.most_longer) {
      EXPECT_GE(life.years.max, 1.25 * life.years.typical) << years;
    }
    if (!life.longer && years > 0.4) {
      EXPECT_NEAR(life.years.typical, years, 0.26 * years) << years;
    }
  }
}

TEST(StatedLife, KeepsAWiderDoubt) {
  const StatedLife life = stated({2.0, 9.0, 24.0});
  EXPECT_EQ(life.years.min, 2.0);
  EXPECT_EQ(life.years.max, 25.0);
  EXPECT_FALSE(life.most_longer);
}

TEST(StatedLife, LongLives) {
  const StatedLife life = stated({16.0, 40.0, 60.0});
  EXPECT_TRUE(life.longer);
  EXPECT_EQ(life_words(life), "more than 25 years (at least 15)");
  EXPECT_EQ(years_words(life), "over 25");
  EXPECT_EQ(life_words(stated({12.0, 20.0, 60.0})), "about 20 years (12 to over 25)");
}

TEST(StatedLife, ShortLivesInMonths) {
  EXPECT_EQ(life_words(stated({1.4, 1.5, 1.6})), "about 18 months (12 to 24)");
  EXPECT_EQ(life_words(stated({0.1, 0.2, 0.3})), "about 3 months (0 to 6)");
}

TEST(StatedLife, Past) {
  const StatedLife life = stated({0.0, 0.0, 0.0});
  EXPECT_TRUE(life.past);
  EXPECT_EQ(life_words(life), "already now");
  EXPECT_EQ(years_words(life), "past");
}

}  // namespace
}  // namespace voltwright::advise
