// Losses must not depend on how a life is cut into portions, and nothing must come of nothing.
#include <cmath>

#include "tests/laws/ageing/every_law.h"

namespace voltwright::ageing {
namespace {

void expect_equal(const Aged& a, const Aged& b, const std::string& name) {
  // 1e-12: the roots and powers of some hundred portions in double precision.
  const auto near = [&](double x, double y) {
    EXPECT_NEAR(x, y, 1e-12 * std::max({1.0, std::fabs(x), std::fabs(y)})) << name;
  };
  near(a.calendar_loss, b.calendar_loss);
  near(a.cycle_loss, b.cycle_loss);
  near(a.resistance_growth, b.resistance_growth);
  near(a.full_cycles, b.full_cycles);
  near(a.hours, b.hours);
}

TEST(Portions, AHundredTimesAreTenTimesTen) {
  base::RandomStream random(11);
  for (const Opinion& opinion : every_opinion()) {
    for (int trial = 0; trial < 50; ++trial) {
      const Exposure exposure = random_exposure(random);
      Aged once, ten;
      opinion.law->age(once, exposure, 100.0);
      for (int i = 0; i < 10; ++i) opinion.law->age(ten, exposure, 10.0);
      expect_equal(once, ten, opinion.name);
    }
  }
}

// Whole lives, uneven portions.
TEST(Portions, UnevenPortionsMakeTheSameLife) {
  base::RandomStream random(12);
  for (const Opinion& opinion : every_opinion()) {
    const Exposure exposure = random_exposure(random);
    Aged once, parts;
    opinion.law->age(once, exposure, 64.0);
    for (const double times : {0.125, 0.875, 3.0, 12.0, 48.0}) opinion.law->age(parts, exposure, times);
    expect_equal(once, parts, opinion.name);
  }
}

// Two exposures in either order: no law here remembers which came first.
TEST(Portions, OrderDoesNotMatter) {
  base::RandomStream random(13);
  for (const Opinion& opinion : every_opinion()) {
    for (int trial = 0; trial < 20; ++trial) {
      const Exposure a = random_exposure(random);
      const Exposure b = random_exposure(random);
      Aged ab, ba;
      opinion.law->age(ab, a, 7.0);
      opinion.law->age(ab, b, 3.0);
      opinion.law->age(ba, b, 3.0);
      opinion.law->age(ba, a, 7.0);
      expect_equal(ab, ba, opinion.name);
    }
  }
}

TEST(Portions, NothingAgesNothing) {
  base::RandomStream random(14);
  for (const Opinion& opinion : every_opinion()) {
    Aged aged;
    opinion.law->age(aged, Exposure{}, 1000.0);
    opinion.law->age(aged, random_exposure(random), 0.0);
    EXPECT_EQ(aged.capacity(), 1.0) << opinion.name;
    EXPECT_EQ(aged.resistance_growth, 0.0) << opinion.name;
    EXPECT_EQ(aged.hours, 0.0) << opinion.name;
    // Something behind it does not change that.
    opinion.law->age(aged, day_of_use(25.0, 0.5), 100.0);
    Aged later = aged;
    opinion.law->age(later, Exposure{}, 10.0);
    EXPECT_EQ(later.capacity(), aged.capacity()) << opinion.name;
    EXPECT_EQ(later.resistance_growth, aged.resistance_growth) << opinion.name;
  }
}

// Losses are finite and never given back, whatever the use.
TEST(Portions, LossesOnlyGrow) {
  base::RandomStream random(15);
  for (const Opinion& opinion : every_opinion()) {
    Aged aged;
    for (int step = 0; step < 60; ++step) {
      const double before = aged.capacity();
      const double growth_before = aged.resistance_growth;
      opinion.law->age(aged, random_exposure(random), 1.0);
      EXPECT_LE(aged.capacity(), before + 1e-15) << opinion.name;
      EXPECT_GE(aged.resistance_growth, growth_before) << opinion.name;
      EXPECT_TRUE(std::isfinite(aged.capacity())) << opinion.name;
    }
  }
}

}  // namespace
}  // namespace voltwright::ageing
