// Places and points under a weighting.
#include "engine/chart/placing.h"

#include <gtest/gtest.h>

#include "tests/unit/chart/sample_kind.h"

namespace voltwright::chart {
namespace {

constexpr Quantity kEnergy = Quantity::kEnergyPerMass;

Weighting weighing(std::vector<Weight> weights) {
  Weighting made;
  made.weights = std::move(weights);
  return made;
}

const Score& of(const std::vector<Score>& scores, const std::string& id) {
  for (const Score& s : scores) {
    if (s.row->kind->id == id) return s;
  }
  throw std::out_of_range(id);
}

TEST(Placing, FirstHasAllPointsAndLastNone) {
  const std::vector<Kind> kinds = {kind("low", {fact(kEnergy, 2020, 10.0)}),
                                   kind("top", {fact(kEnergy, 2020, 30.0)}),
                                   kind("mid", {fact(kEnergy, 2020, 20.0)})};
  const Chart chart = draw(kinds, 2020, std::nullopt);
  const auto scores = score(chart, weighing({{Matter::kEnergy, 1.0}}));
  EXPECT_EQ(scores[0].row->kind->id, "top");
  EXPECT_EQ(scores[0].least, 1.0);
  EXPECT_EQ(scores[1].least, 0.5);
  EXPECT_EQ(scores[2].least, 0.0);
  EXPECT_EQ(scores[2].rank, 3);
}

TEST(Placing, EqualsShareTheMeanOfTheirPlaces) {
  const std::vector<Kind> kinds = {kind("a", {fact(kEnergy, 2020, 30.0)}),
                                   kind("b", {fact(kEnergy, 2020, 30.0)}),
                                   kind("c", {fact(kEnergy, 2020, 20.0)})};
  const Chart chart = draw(kinds, 2020, std::nullopt);
  const auto scores = score(chart, weighing({{Matter::kEnergy, 1.0}}));
  EXPECT_EQ(of(scores, "a").place(Matter::kEnergy)->place, 1.5);
  EXPECT_EQ(of(scores, "b").place(Matter::kEnergy)->points, 0.75);
  EXPECT_EQ(of(scores, "a").rank, 1);
  EXPECT_EQ(of(scores, "b").rank, 1);
  EXPECT_EQ(of(scores, "c").rank, 3);
}

// What is not known opens the span: nothing is assumed for it, and the lower end ranks.
TEST(Placing, MissingFigureOpensTheSpan) {
  const std::vector<Kind> kinds = {
      kind("known", {fact(kEnergy, 2020, 10.0), fact(Quantity::kPrice, 2020, 100.0, Level::kBattery)}),
      kind("unknown", {fact(kEnergy, 2020, 20.0)})};
  const Chart chart = draw(kinds, 2020, std::nullopt);
  const auto scores = score(chart, weighing({{Matter::kEnergy, 1.0}, {Matter::kPrice, 3.0}}));
  EXPECT_EQ(scores[0].row->kind->id, "known");
  const Score& unknown = of(scores, "unknown");
  EXPECT_DOUBLE_EQ(unknown.least, 0.25);
  EXPECT_DOUBLE_EQ(unknown.most, 1.0);
  ASSERT_EQ(unknown.missing.size(), 1U);
  EXPECT_EQ(unknown.missing[0], Matter::kPrice);
  EXPECT_FALSE(unknown.place(Matter::kPrice));
}

TEST(Placing, WeightsChangeTheOrder) {
  const std::vector<Kind> kinds = {
      kind("light", {fact(kEnergy, 2020, 30.0), fact(Quantity::kPrice, 2020, 200.0, Level::kBattery)}),
      kind("cheap", {fact(kEnergy, 2020, 10.0), fact(Quantity::kPrice, 2020, 100.0, Level::kBattery)})};
  const Chart chart = draw(kinds, 2020, std::nullopt);
  EXPECT_EQ(score(chart, weighing({{Matter::kEnergy, 3.0}, {Matter::kPrice, 1.0}}))[0].row->kind->id,
            "light");
  EXPECT_EQ(score(chart, weighing({{Matter::kEnergy, 1.0}, {Matter::kPrice, 3.0}}))[0].row->kind->id,
            "cheap");
}

TEST(Placing, SafetyBySeverityThenPlatingThenOnset) {
  std::vector<Kind> kinds;
  const auto add = [&](const char* id, Runaway runaway, bool plates, double onset_C) {
    Kind made = kind(id, {});
    if (onset_C > 0.0) made.facts.push_back(fact(Quantity::kOnset, 2016, onset_C));
    made.safety.year = 2016;
    made.safety.runaway = runaway;
    made.safety.plates_metal = plates;
    kinds.push_back(std::move(made));
  };
  add("hot", Runaway::kHigh, true, 200.0);
  add("hotter", Runaway::kHigh, true, 150.0);
  add("calm", Runaway::kLow, true, 270.0);
  add("calmer", Runaway::kLow, false, 0.0);
  add("none", Runaway::kNone, false, 0.0);
  add("unknown", Runaway::kNotKnown, true, 300.0);
  const Chart chart = draw(kinds, 2020, std::nullopt);
  const auto scores = score(chart, weighing({{Matter::kSafety, 1.0}}));
  std::vector<std::string> order;
  for (const Score& s : scores) order.push_back(s.row->kind->id);
  EXPECT_EQ(order, (std::vector<std::string>{"none", "calmer", "calm", "hot", "unknown", "hotter"}))
      << "the last has no points for sure, the unknown one might";
  EXPECT_FALSE(of(scores, "unknown").place(Matter::kSafety));
}

TEST(Placing, ColdByChargeThenByDischarge) {
  const auto made = [](const char* id, double charge_C, double discharge_C) {
    Fact from = fact(Quantity::kChargeFrom, 2020, charge_C);
    Fact discharge = fact(Quantity::kDischargeFrom, 2020, discharge_C);
    return kind(id, {from, discharge});
  };
  const std::vector<Kind> kinds = {made("a", 0.0, -20.0), made("b", 0.0, -30.0), made("c", -10.0, -10.0)};
  const Chart chart = draw(kinds, 2020, std::nullopt);
  const auto scores = score(chart, weighing({{Matter::kCold, 1.0}}));
  EXPECT_EQ(scores[0].row->kind->id, "c");
  EXPECT_EQ(scores[1].row->kind->id, "b");
}

TEST(Placing, OneAloneIsFirst) {
  const std::vector<Kind> kinds = {kind("a", {fact(kEnergy, 2020, 30.0)})};
  const Chart chart = draw(kinds, 2020, std::nullopt);
  EXPECT_EQ(score(chart, weighing({{Matter::kEnergy, 1.0}}))[0].least, 1.0);
}

TEST(Placing, EveryMatterHasANameAndARule) {
  for (const Matter matter : kMatters) {
    EXPECT_FALSE(rule_of(matter).empty());
    EXPECT_EQ(matter_named(name_of(matter)), matter);
  }
  EXPECT_FALSE(matter_named("colour"));
}

}  // namespace
}  // namespace voltwright::chart
