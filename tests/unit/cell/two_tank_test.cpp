// Closed forms of the two tanks: limits, inverses and what a fit refuses.
#include "engine/cell/two_tank.h"

#include <gtest/gtest.h>

namespace voltwright::cell {
namespace {

constexpr double kHours[] = {1e-12, 1e-6, 0.01, 0.1, 1.0, 5.0, 20.0, 100.0, 1e6};

TEST(TwoTank, CapacityRisesBetweenItsLimits) {
  for (const double fraction : {0.05, 0.35, 0.9}) {
    for (const double per_h : {0.01, 0.6, 30.0}) {
      const Availability tanks{fraction, per_h, 1.2};
      double before = fraction * 1.2 * (1.0 - 1e-12);
      for (const double hours : kHours) {
        const double now = capacity_in_hours(tanks, hours);
        EXPECT_GE(now, before) << hours;
        EXPECT_LE(now, 1.2 * (1.0 + 1e-12)) << hours;
        before = now;
      }
    }
  }
}

TEST(TwoTank, HoursAtIsTheInverseOfTheCapacity) {
  for (const double fraction : {0.05, 0.35, 0.9, 1.0}) {
    const Availability tanks{fraction, 0.6, 1.1};
    for (const double hours : kHours) {
      const double current_per_h = capacity_in_hours(tanks, hours) / hours;
      EXPECT_NEAR(hours_at(tanks, current_per_h), hours, 1e-9 * hours);
    }
  }
}

TEST(TwoTank, FullTanksGiveTheirCapacityAtTheLargestCurrent) {
  const Availability tanks{0.35, 0.6, 1.1};
  for (const double hours : {0.1, 1.0, 20.0}) {
    EXPECT_NEAR(largest_discharge(tanks, full_tanks(tanks), hours) * hours, capacity_in_hours(tanks, hours),
                1e-12);
    EXPECT_NEAR(largest_charge(tanks, full_tanks(tanks), hours), 0.0, 1e-12);
  }
}

TEST(TwoTankFit, FindsTheConstantsAgain) {
  for (const double fraction : {0.1, 0.4, 0.8}) {
    for (const double per_h : {0.05, 0.5, 4.0}) {
      const Availability tanks{fraction, per_h, 1.15};
      const auto rated = [&](double hours) {
        return RatedCapacity{80.0 * capacity_in_hours(tanks, hours), hours};
      };
      const auto found = fit_two_tanks({rated(1.0), rated(5.0), rated(20.0)}, 80.0);
      ASSERT_TRUE(found.ok()) << fraction << ' ' << per_h;
      EXPECT_NEAR(found.value().fraction, fraction, 1e-6);
      EXPECT_NEAR(found.value().exchange_per_h, per_h, 1e-6 * per_h);
      EXPECT_NEAR(found.value().full_over_rated, 1.15, 1e-6);
    }
  }
}

TEST(TwoTankFit, RefusesWhatNoTanksGive) {
  const auto fits = [](double one_Ah, double five_Ah, double twenty_Ah) {
    return fit_two_tanks({{{one_Ah, 1.0}, {five_Ah, 5.0}, {twenty_Ah, 20.0}}}, 100.0).ok();
  };
  EXPECT_TRUE(fits(55.0, 82.0, 100.0));
  EXPECT_FALSE(fits(82.0, 55.0, 100.0));    // falls
  EXPECT_FALSE(fits(50.0, 50.5, 100.0));    // hardly rises, then doubles
  EXPECT_FALSE(fits(10.0, 60.0, 100.0));    // rises faster than the time
  EXPECT_FALSE(fits(100.0, 100.0, 100.0));  // one tank
  EXPECT_FALSE(fits(-1.0, 82.0, 100.0));
  EXPECT_FALSE(fit_two_tanks({{{55.0, 5.0}, {82.0, 1.0}, {100.0, 20.0}}}, 100.0).ok());
  EXPECT_FALSE(fit_two_tanks({{{55.0, 1.0}, {82.0, 5.0}, {100.0, 20.0}}}, 0.0).ok());
}

}  // namespace
}  // namespace voltwright::cell
