// A year made of exposures, by a law of which every figure is known.
#include "engine/ageing/year_of_use.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/ageing/life_map.h"

namespace voltwright::ageing {
namespace {

/// Loses 2 % of the capacity in each 8766 h, and 1 % in each ten full cycles.
class Straight : public Law {
 public:
  void age(Aged& aged, const Exposure& exposure, double times) const override {
    aged.calendar_loss += 0.02 * exposure.hours / kHoursOfYear * times;
    for (const Swing& swing : exposure.swings) aged.cycle_loss += 0.001 * swing.depth * swing.count * times;
    aged.hours += exposure.hours * times;
  }
  Reach reach(const Exposure& exposure, const Aged& aged) const override {
    if (exposure.hours > 0.0 && exposure.dwell.front().temperature_C > 50.0) return Reach::kOutside;
    return aged.hours > 2.0 * kHoursOfYear ? Reach::kExtrapolated : Reach::kInside;
  }
};

YearOfUse idle_year(double temperature_C = 25.0) {
  Exposure e;
  e.hours = kHoursOfYear;
  e.dwell = {{temperature_C, 1.0, kHoursOfYear}};
  return {{e, 1.0}};
}

TEST(YearOfUse, AgesByPartsOfAYear) {
  Aged aged;
  age_by_years(Straight(), aged, idle_year(), 2.5);
  EXPECT_NEAR(aged.capacity(), 0.95, 1e-12);
  age_by_years(Straight(), aged, idle_year(), 0.0);
  EXPECT_NEAR(aged.capacity(), 0.95, 1e-12);
}

TEST(YearOfUse, FindsTheYears) {
  EXPECT_NEAR(years_until(Straight(), idle_year(), 0.8, 60.0).value_or(0.0), 10.0, 1e-6);
  EXPECT_FALSE(years_until(Straight(), idle_year(), 0.8, 9.0).has_value());
}

TEST(YearOfUse, ReachIsTheWorstOfItsParts) {
  YearOfUse year = idle_year();
  EXPECT_EQ(reach_of(Straight(), year, {}), Reach::kInside);
  year.push_back(idle_year(60.0).front());
  EXPECT_EQ(reach_of(Straight(), year, {}), Reach::kOutside);
  year.back().per_year = 0.0;
  EXPECT_EQ(reach_of(Straight(), year, {}), Reach::kInside);
}

TEST(YearOfUse, DutyOfADay) {
  const YearOfUse year = year_of({30.0, 0.5, 0.9});
  ASSERT_EQ(year.size(), 1U);
  EXPECT_NEAR(year[0].per_year * year[0].exposure.hours, kHoursOfYear, 1e-9);
  EXPECT_NEAR(full_cycles_per_year(year), 365.25 * 0.5, 1e-9);
  EXPECT_NEAR(year[0].exposure.swings[0].mean_soc, 0.65, 1e-12);
  EXPECT_TRUE(year_of({30.0, 0.0, 0.5})[0].exposure.swings.empty());
}

// The laws asked set the ends; one that knows no rest is left out while another knows it.
TEST(SaidLife, SpreadsOverTheLawsThatKnow) {
  Opinion knows;
  knows.id = "knows";
  knows.law = std::make_shared<Straight>();
  Opinion cycles_only = knows;
  cycles_only.id = "cycles";
  cycles_only.knows_rest = false;
  const SaidLife said = said_life({cycles_only, knows}, idle_year(), 0.8);
  EXPECT_EQ(said.law, "knows");
  EXPECT_NEAR(said.years.typical, 10.0, 1e-6);
  EXPECT_EQ(said.reach, Reach::kExtrapolated);
  EXPECT_EQ(said_life({cycles_only}, idle_year(), 0.8).law, "cycles");
}

// By the law above: 2 % a year at rest, 2 + 36.525 x depth % at one cycle a day, whatever the temperature.
TEST(LifeMap, HoldsTheYearsOfEachDuty) {
  Opinion opinion;
  opinion.id = "straight";
  opinion.law = std::make_shared<Straight>();
  const LifeMap map = life_map({opinion}, false);
  ASSERT_EQ(map.by_depth.size(), 20U);
  for (const Mapped& one : map.by_depth)
    EXPECT_NEAR(one.life.years.typical, 0.2 / (0.02 + 0.36525 * one.duty.depth), 1e-6);
  for (const Mapped& one : map.by_storage) EXPECT_NEAR(one.life.years.typical, 10.0, 1e-6);
  EXPECT_EQ(map.by_ceiling.size(), 4U);
  const LifeMap filled = life_map({opinion}, true);
  EXPECT_EQ(filled.by_depth.size(), 20U);
  EXPECT_TRUE(filled.by_ceiling.empty());
  EXPECT_TRUE(filled.by_storage.empty());
  EXPECT_TRUE(life_map({}, false).by_depth.empty());
}

// 0.02 + 365.25 x 0.8 x 0.001 = 0.312 a year by the law above; half as deep 0.166, which is 1.88 times the
// life.
TEST(WhatHelps, RanksByGain) {
  const std::vector<Gain> gains = what_helps(Straight(), year_of({}), {}, {});
  ASSERT_EQ(gains.size(), 3U);
  EXPECT_EQ(gains[0].habit, "half as deep, from twice the bank");
  EXPECT_NEAR(gains[0].times, 0.3122 / 0.1661, 1e-3);
  EXPECT_NEAR(gains[1].times, 1.0, 1e-6);
  EXPECT_GE(gains[1].times, gains[2].times);
}

}  // namespace
}  // namespace voltwright::ageing
