// Bars of the tornado and the turn of a ranking, worked by hand.
#include "engine/cost/sensitivity.h"

#include <gtest/gtest.h>

#include "engine/cost/corner.h"

namespace voltwright::cost {
namespace {

PricedBank bank_of(const units::Ranged& price, const units::Ranged& life_years) {
  PricedBank bank;
  bank.price = price;
  bank.life_years = life_years;
  bank.delivered_kWh_per_year = exactly(100.0);
  return bank;
}

Terms plain_terms() {
  Terms terms;
  terms.horizon_years = 10.0;
  terms.discount_rate = exactly(0.0);
  return terms;
}

const Bar& bar_of(const Tornado& tornado, Input input) {
  for (const Bar& bar : tornado.bars) {
    if (bar.assumption.input == input) return bar;
  }
  ADD_FAILURE() << "no bar";
  return tornado.bars.front();
}

TEST(Sensitivity, BarsStandByTheirSwing) {
  // 1000 kWh. Price 400 to 650 of 500 that lasts: 0.4 to 0.65; life 5 to 20 of 10 years: 1.0 to 0.25.
  const auto answer = tornado(bank_of({400.0, 500.0, 650.0}, {5.0, 10.0, 20.0}), plain_terms());
  ASSERT_TRUE(answer.ok());
  const Tornado& t = answer.value();
  EXPECT_NEAR(t.typical, 0.5, 1e-12);
  ASSERT_NE(t.decisive(), nullptr);
  EXPECT_EQ(t.decisive()->assumption.input, Input::kLife);
  EXPECT_NEAR(t.bars[0].cost_at_least, 1.0, 1e-12);
  EXPECT_NEAR(t.bars[0].cost_at_greatest, 0.25, 1e-12);
  EXPECT_EQ(t.bars[1].assumption.input, Input::kPrice);
  EXPECT_NEAR(t.bars[1].swing, 0.15, 1e-12);
  EXPECT_NEAR(t.likely.min, 0.5 - std::hypot(0.25, 0.1), 1e-12);
  EXPECT_NEAR(t.likely.max, 0.5 + std::hypot(0.5, 0.15), 1e-12);
}

TEST(Sensitivity, AnInputOfNoEffectHasNoBar) {
  PricedBank bank = bank_of({400.0, 500.0, 650.0}, exactly(10.0));
  Terms terms = plain_terms();
  terms.sources = {{"mains", {0.1, 0.3, 0.9}}};  // the bank takes none of it
  terms.carrying = {0.0, {0.1, 0.2, 0.3}, {1.0, 2.0, 3.0}};
  bank.mass_kg = 40.0;
  const auto answer = tornado(bank, terms);
  ASSERT_TRUE(answer.ok());
  for (const Input input : {Input::kSourcePrice, Input::kFuelForMass, Input::kFuelPrice, Input::kLife}) {
    EXPECT_EQ(bar_of(answer.value(), input).swing, 0.0);
  }
  EXPECT_EQ(answer.value().bars.front().assumption.input, Input::kPrice);
}

TEST(Sensitivity, NothingUncertainDecidesNothing) {
  const auto answer = tornado(bank_of(exactly(500.0), exactly(10.0)), plain_terms());
  ASSERT_TRUE(answer.ok());
  EXPECT_EQ(answer.value().decisive(), nullptr);
  EXPECT_EQ(answer.value().likely.min, answer.value().likely.max);
}

TEST(Sensitivity, RankingTurnsWhereBothCostTheSame) {
  // 500 for ten years against 300 twice: even when the first costs 600, or the second 250.
  const auto answer = ranking_of(bank_of({400.0, 500.0, 700.0}, exactly(10.0)),
                                 bank_of({280.0, 300.0, 310.0}, exactly(5.0)), plain_terms());
  ASSERT_TRUE(answer.ok());
  const Ranking& r = answer.value();
  EXPECT_NEAR(r.gap(), 0.1, 1e-12);
  EXPECT_TRUE(r.flips());
  ASSERT_NE(r.decisive(), nullptr);
  EXPECT_EQ(r.turns.front().whose, Whose::kFirst);
  EXPECT_EQ(r.turns.front().assumption.input, Input::kPrice);
  ASSERT_TRUE(r.turns.front().even_at);
  EXPECT_NEAR(*r.turns.front().even_at, 600.0, 1e-9);
  EXPECT_EQ(r.turns[1].whose, Whose::kSecond);
  EXPECT_FALSE(r.turns[1].even_at);
}

TEST(Sensitivity, AShorterLifeTurnsTheRankingToo) {
  const auto answer = ranking_of(bank_of(exactly(500.0), {5.0, 10.0, 12.0}),
                                 bank_of(exactly(300.0), exactly(5.0)), plain_terms());
  ASSERT_TRUE(answer.ok());
  ASSERT_TRUE(answer.value().turns.front().even_at);
  // 500 for each L years over 10 years, straight line: 5000 / L = 600.
  EXPECT_NEAR(*answer.value().turns.front().even_at, 5000.0 / 600.0, 1e-9);
}

TEST(Sensitivity, EnergyMovesBothBanks) {
  PricedBank first = bank_of(exactly(500.0), exactly(10.0));
  PricedBank second = bank_of(exactly(600.0), exactly(10.0));
  first.delivered_kWh_per_year = {50.0, 100.0, 200.0};
  second.delivered_kWh_per_year = exactly(100.0);
  const auto answer = ranking_of(first, second, plain_terms());
  ASSERT_TRUE(answer.ok());
  ASSERT_NE(answer.value().decisive(), nullptr);
  EXPECT_EQ(answer.value().turns.front().assumption.input, Input::kDelivered);
  EXPECT_NEAR(answer.value().turns.front().gap_at_least, 0.2, 1e-12);
  EXPECT_NEAR(answer.value().turns.front().gap_at_greatest, 0.05, 1e-12);
  EXPECT_FALSE(answer.value().flips());
}

TEST(Sensitivity, ProblemsAreTold) {
  EXPECT_FALSE(tornado(bank_of(exactly(-1.0), exactly(10.0)), plain_terms()).ok());
  EXPECT_FALSE(
      ranking_of(bank_of(exactly(1.0), exactly(10.0)), bank_of(exactly(1.0), exactly(0.0)), plain_terms())
          .ok());
}

}  // namespace
}  // namespace voltwright::cost
