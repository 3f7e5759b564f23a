// What holds for every bank and every row of payments, whatever the numbers.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <utility>

#include "engine/base/random.h"
#include "engine/cost/comparison.h"
#include "engine/cost/corner.h"
#include "engine/cost/sensitivity.h"

namespace voltwright::cost {
namespace {

constexpr std::uint64_t kSeed = 606;
constexpr std::uint64_t kCases = 400;

class Draw {
 public:
  explicit Draw(std::uint64_t n) : random_(kSeed, n) {}

  double between(double low, double high) { return low + (high - low) * random_.uniform(); }
  bool coin() { return random_.uniform() < 0.5; }

  units::Ranged spread(double low, double high) {
    const double typical = between(low, high);
    return {between(low, typical), typical, between(typical, high)};
  }

  std::vector<Flow> flows() {
    std::vector<Flow> all;
    const int count = static_cast<int>(between(1.0, 20.0));
    for (int i = 0; i < count; ++i) all.push_back({between(0.0, 30.0), between(-1000.0, 1000.0)});
    return all;
  }

  PricedBank bank() {
    PricedBank bank;
    bank.price = spread(100.0, 3000.0);
    bank.usable_kWh = between(0.3, 10.0);
    bank.delivered_kWh_per_year = spread(20.0, 2000.0);
    bank.life_years = spread(0.5, 20.0);
    bank.fitted_now = coin();
    bank.life_left_years = spread(0.0, 5.0);
    bank.mass_kg = between(5.0, 200.0);
    bank.charging = {{"solar", between(0.0, 1.0)}, {"mains", between(0.0, 1.0)}};
    bank.scrap = spread(-50.0, 99.0);
    bank.upkeep_per_year = spread(0.0, 40.0);
    return bank;
  }

  Terms terms() {
    Terms terms;
    terms.horizon_years = between(1.0, 25.0);
    terms.discount_rate = spread(0.0, 0.12);
    terms.sources = {{"solar", exactly(0.0)}, {"mains", spread(0.05, 1.0)}};
    terms.carrying = {between(0.0, 20000.0), spread(0.1, 0.2), spread(1.0, 2.0)};
    return terms;
  }

 private:
  base::RandomStream random_;
};

TEST(CostLaws, PresentValueIsLinearInThePayments) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    const std::vector<Flow> one = draw.flows();
    const std::vector<Flow> other = draw.flows();
    const double a = draw.between(-3.0, 3.0);
    const double rate = draw.between(-0.1, 0.3);
    std::vector<Flow> both = other;
    for (const Flow& flow : one) both.push_back({flow.year, a * flow.amount});
    EXPECT_NEAR(net_present_value(both, rate),
                a * net_present_value(one, rate) + net_present_value(other, rate), 1e-7);
  }
}

TEST(CostLaws, AtEachInternalRateNothingIsLeftAndNoMoreExistThanSignChanges) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    const std::vector<Flow> flows = draw.flows();
    const InternalRates found = internal_rates(flows);
    EXPECT_LE(found.rates.size(), sign_changes(flows));
    // The value has opposite signs at both ends of the range exactly if the number of (simple) roots is odd.
    const double low = net_present_value(flows, kLeastInternalRate);
    const double high = net_present_value(flows, kGreatestInternalRate);
    EXPECT_EQ(found.rates.size() % 2 == 1, (low < 0.0) != (high < 0.0)) << n;
    for (const double rate : found.rates) {
      double size = 0.0;
      for (const Flow& flow : flows) size += std::abs(flow.amount) * discount_factor(rate, flow.year);
      EXPECT_NEAR(net_present_value(flows, rate), 0.0, 1e-10 * size);
    }
  }
}

TEST(CostLaws, InterestNeverPaysBackSooner) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    std::vector<Flow> flows = {{0.0, -draw.between(100.0, 2000.0)}};
    for (int year = 1; year <= 20; ++year)
      flows.push_back({static_cast<double>(year), draw.between(0.0, 300.0)});
    const Payback simple = payback(flows, 0.0);
    const Payback discounted = payback(flows, draw.between(0.0, 0.2));
    if (!discounted.year) continue;
    ASSERT_TRUE(simple.year);
    EXPECT_LE(*simple.year, *discounted.year);
  }
}

TEST(CostLaws, LongerLifeNeverCostsMore) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    PricedBank bank = draw.bank();
    Terms terms = draw.terms();
    if (draw.coin()) terms.discount_rate = exactly(0.0);
    double before = costs_of(bank, terms).per_delivered_kWh;
    for (int step = 0; step < 10; ++step) {
      bank.life_years.typical *= 1.0 + 0.4 * draw.between(0.0, 1.0);
      const double now = costs_of(bank, terms).per_delivered_kWh;
      EXPECT_LE(now, before * (1.0 + 1e-9)) << n;
      before = now;
    }
  }
}

TEST(CostLaws, YearlySumIsWorthTheWhole) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    const PricedBank bank = draw.bank();
    const Terms terms = draw.terms();
    const Costs costs = costs_of(bank, terms);
    EXPECT_NEAR(costs.annualised * annuity_factor(terms.discount_rate.typical, terms.horizon_years),
                costs.present_value, 1e-9 * costs.present_value);
    EXPECT_NEAR(-net_present_value(plain(flows_of(bank, terms)), terms.discount_rate.typical),
                costs.present_value, 1e-9 * std::abs(costs.present_value));
  }
}

TEST(CostLaws, SavingsAreTheDifferenceOfBothCosts) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    const PricedBank one = draw.bank();
    const PricedBank other = draw.bank();
    const Terms terms = draw.terms();
    const auto answer = compare(one, other, terms);
    ASSERT_TRUE(answer.ok());
    const units::Ranged& value = answer.value().net_present_value;
    EXPECT_NEAR(value.typical, costs_of(other, terms).present_value - costs_of(one, terms).present_value,
                1e-6);
    EXPECT_LE(value.min, value.typical + 1e-9);
    EXPECT_LE(value.typical, value.max + 1e-9);
  }
}

TEST(CostLaws, InTwiceTheMoneyEverythingCostsTwice) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    PricedBank bank = draw.bank();
    Terms terms = draw.terms();
    const double before = costs_of(bank, terms).per_delivered_kWh;
    for (double* sum : {&bank.price.typical, &bank.scrap.typical, &bank.upkeep_per_year.typical,
                        &terms.sources[1].price_per_kWh.typical, &terms.carrying.fuel_price_per_L.typical}) {
      *sum *= 2.0;
    }
    EXPECT_NEAR(costs_of(bank, terms).per_delivered_kWh, 2.0 * before, 1e-9 * std::abs(before));
  }
}

TEST(CostLaws, WithoutInterestTheHorizonDoesNotMatterToABankThatIsReplacedForever) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    PricedBank bank = draw.bank();
    bank.fitted_now = false;
    Terms terms = draw.terms();
    terms.discount_rate = exactly(0.0);
    const double before = costs_of(bank, terms).per_delivered_kWh;
    terms.horizon_years = draw.between(1.0, 60.0);
    EXPECT_NEAR(costs_of(bank, terms).per_delivered_kWh, before, 1e-9 * std::abs(before) + 1e-12) << n;
  }
}

TEST(CostLaws, TheBandHoldsEveryBarOfTheTornado) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    const PricedBank bank = draw.bank();
    const Terms terms = draw.terms();
    const auto band = life_cycle(bank, terms);
    const auto bars = tornado(bank, terms);
    ASSERT_TRUE(band.ok() && bars.ok());
    const units::Ranged& all = band.value().per_delivered_kWh;
    double last = bars.value().bars.front().swing;
    for (const Bar& bar : bars.value().bars) {
      EXPECT_LE(bar.swing, last);
      last = bar.swing;
      if (bar.assumption.input == Input::kDiscountRate) continue;  // typical throughout the band
      for (const double cost : {bar.cost_at_least, bar.cost_at_greatest}) {
        EXPECT_GE(cost, all.min - 1e-9);
        EXPECT_LE(cost, all.max + 1e-9);
      }
    }
    EXPECT_LE(bars.value().likely.min, bars.value().typical);
    EXPECT_GE(bars.value().likely.max, bars.value().typical);
  }
}

TEST(CostLaws, AnInputWithoutSpreadMovesNothing) {
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    PricedBank bank = draw.bank();
    const Terms terms = draw.terms();
    bank.price = exactly(bank.price.typical);
    bank.scrap = exactly(std::min(bank.scrap.typical, bank.price.min));
    const auto bars = tornado(bank, terms);
    ASSERT_TRUE(bars.ok());
    for (const Bar& bar : bars.value().bars) {
      if (bar.assumption.input == Input::kPrice || bar.assumption.input == Input::kScrap) {
        EXPECT_EQ(bar.swing, 0.0);
      }
    }
  }
}

TEST(CostLaws, ARankingTurnsAtAValueWhereBothCostTheSame) {
  int turned = 0;
  for (std::uint64_t n = 0; n < kCases; ++n) {
    Draw draw(n);
    const PricedBank one = draw.bank();
    const PricedBank other = draw.bank();
    const Terms terms = draw.terms();
    const auto answer = ranking_of(one, other, terms);
    ASSERT_TRUE(answer.ok());
    for (const Turn& turn : answer.value().turns) {
      if (!turn.even_at || turn.assumption.input != Input::kPrice) continue;
      ++turned;
      PricedBank moved = turn.whose == Whose::kFirst ? one : other;
      moved.price.typical = *turn.even_at;
      const double cost = costs_of(moved, terms).per_delivered_kWh;
      const double against = turn.whose == Whose::kFirst ? answer.value().second : answer.value().first;
      EXPECT_NEAR(cost, against, 1e-9 * (1.0 + std::abs(against)));
    }
  }
  EXPECT_GT(turned, 20);
}

}  // namespace
}  // namespace voltwright::cost
