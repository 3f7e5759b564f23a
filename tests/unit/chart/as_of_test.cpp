// Which figure stands for a year, and what is worked out from it.
#include <gtest/gtest.h>

#include "engine/chart/chart.h"
#include "tests/unit/chart/sample_kind.h"

namespace voltwright::chart {
namespace {

constexpr Quantity kEnergy = Quantity::kEnergyPerMass;

TEST(AsOf, LatestAtOrBeforeTheYearAndNothingBetween) {
  const Kind one = kind("one", {fact(kEnergy, 2020, 140.0), fact(kEnergy, 2013, 100.0)});
  EXPECT_EQ(as_of(one, kEnergy, Level::kCell, 2012), nullptr);
  for (int year = 2013; year < 2020; ++year) {
    ASSERT_NE(as_of(one, kEnergy, Level::kCell, year), nullptr) << year;
    EXPECT_EQ(as_of(one, kEnergy, Level::kCell, year)->value.typical, 100.0) << year;
    EXPECT_EQ(as_of(one, kEnergy, Level::kCell, year)->year, 2013) << year;
  }
  EXPECT_EQ(as_of(one, kEnergy, Level::kCell, 2020)->value.typical, 140.0);
  EXPECT_EQ(as_of(one, kEnergy, Level::kCell, 2090)->value.typical, 140.0);
}

TEST(AsOf, LevelsAndQuantitiesStandApart) {
  const Kind one = kind("one", {fact(kEnergy, 2020, 140.0), fact(kEnergy, 2021, 90.0, Level::kBattery)});
  EXPECT_EQ(as_of(one, kEnergy, Level::kCell, 2022)->value.typical, 140.0);
  EXPECT_EQ(as_of(one, kEnergy, Level::kBattery, 2022)->value.typical, 90.0);
  EXPECT_EQ(as_of(one, kEnergy, Level::kPack, 2022), nullptr);
  EXPECT_EQ(as_of(one, Quantity::kPrice, Level::kCell, 2022), nullptr);
}

TEST(AsOf, OfOneYearTheDeepestAndThenTheLesser) {
  const Kind one = kind("one", {cycles(2020, 0.5, 900.0), cycles(2020, 1.0, 400.0), cycles(2020, 1.0, 300.0),
                                cycles(2019, 1.0, 100.0)});
  const Fact* found = as_of(one, Quantity::kCycles, Level::kCell, 2020);
  ASSERT_NE(found, nullptr);
  EXPECT_EQ(found->depth, 1.0);
  EXPECT_EQ(found->value.typical, 300.0);
}

TEST(AsOf, BlocksAreJudgedAsBatteries) {
  Kind block = kind("block", {fact(kEnergy, 2020, 40.0, Level::kBattery), fact(kEnergy, 2020, 60.0)});
  EXPECT_EQ(as_of_cell_or_block(block, kEnergy, 2020)->value.typical, 60.0);
  block.block = true;
  EXPECT_EQ(as_of_cell_or_block(block, kEnergy, 2020)->value.typical, 40.0);
}

TEST(Chart, WorksOutPowerChargeTimeAndLife) {
  const std::vector<Kind> kinds = {
      kind("one", {fact(kEnergy, 2020, 100.0), fact(Quantity::kContinuousRate, 2020, 2.0),
                   fact(Quantity::kChargeRate, 2020, 0.5), cycles(2020, 0.8, 1000.0)})};
  const Chart chart = draw(kinds, 0, std::nullopt);
  EXPECT_EQ(chart.year, 2020);
  const Row& row = chart.rows[0];
  ASSERT_TRUE(row.power_W_per_kg && row.charge_h && row.life_throughput);
  EXPECT_DOUBLE_EQ(row.power_W_per_kg->typical, 200.0);
  EXPECT_DOUBLE_EQ(row.power_W_per_kg->min, 50.0);
  EXPECT_DOUBLE_EQ(row.power_W_per_kg->max, 800.0);
  EXPECT_DOUBLE_EQ(row.charge_h->typical, 2.0);
  EXPECT_DOUBLE_EQ(row.charge_h->min, 1.0);
  EXPECT_DOUBLE_EQ(row.charge_h->max, 4.0);
  EXPECT_DOUBLE_EQ(row.life_throughput->typical, 800.0);
}

// A cell's current times a battery's energy per mass would be neither's power.
TEST(Chart, MultipliesNoLevels) {
  const std::vector<Kind> kinds = {
      kind("one", {fact(kEnergy, 2020, 100.0, Level::kBattery), fact(Quantity::kContinuousRate, 2020, 2.0)})};
  EXPECT_FALSE(draw(kinds, 2020, std::nullopt).rows[0].power_W_per_kg);
}

TEST(Chart, ChangesAreNewFiguresAndFirstFigures) {
  const std::vector<Kind> kinds = {kind("one", {fact(kEnergy, 2013, 100.0), fact(kEnergy, 2020, 140.0),
                                                fact(Quantity::kPrice, 2012, 9.0)}),
                                   kind("two", {fact(kEnergy, 2019, 50.0)})};
  const Chart chart = draw(kinds, 2020, 2014);
  ASSERT_EQ(chart.changes.size(), 2U);
  ASSERT_TRUE(chart.changes[0].before);
  EXPECT_EQ(chart.changes[0].before->value.typical, 100.0);
  EXPECT_EQ(chart.changes[0].now.value.typical, 140.0);
  EXPECT_EQ(chart.changes[1].kind->id, "two");
  EXPECT_FALSE(chart.changes[1].before);
  EXPECT_TRUE(draw(kinds, 2020, 2020).changes.empty());
}

TEST(Chart, SafetyIsNotSaidBeforeItsYear) {
  std::vector<Kind> kinds = {kind("one", {fact(kEnergy, 2010, 100.0)})};
  kinds[0].safety.year = 2016;
  EXPECT_FALSE(draw(kinds, 2015, std::nullopt).rows[0].safety_known);
  EXPECT_TRUE(draw(kinds, 2016, std::nullopt).rows[0].safety_known);
}

}  // namespace
}  // namespace voltwright::chart
