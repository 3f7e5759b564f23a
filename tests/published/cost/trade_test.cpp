// What the trade says of the cost of batteries, and the catalogue's facts on it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/cost/corner.h"
#include "engine/cost/life_cycle.h"
#include "engine/cost/money.h"
#include "files/catalogue.h"
#include "files/cost_facts.h"

namespace voltwright::cost {
namespace {

const files::Catalogue& catalogue() {
  static const files::Catalogue read = std::move(files::read_catalogue()).value();
  return read;
}

const RunningFacts& facts() {
  static const RunningFacts read = std::move(files::read_cost_facts()).value();
  return read;
}

// A case of practice: sellers promise 500 to 800 cycles to half for lead-acid and 2000 to 4000 to 80 % for
// iron-phosphate. For each rated ampere-hour 250 to 400 and 1600 to 3200 pass through: 4 to 13 times as many,
// and at one price for the rated kilowatt-hour one that passes through costs so many times less. Temperature
// and years are missing from such a table.
TEST(CostTrade, SellersTableOfCycles) {
  const auto lead = [](double cycles) { return cost_per_throughput_kWh(1.0, 1.0, 0.5, cycles, 1.0, 1.0); };
  const auto iron = [](double cycles) { return cost_per_throughput_kWh(1.0, 1.0, 0.8, cycles, 1.0, 1.0); };
  EXPECT_NEAR(lead(500.0), 1.0 / 250.0, 1e-12);
  EXPECT_NEAR(lead(800.0), 1.0 / 400.0, 1e-12);
  EXPECT_NEAR(iron(2000.0), 1.0 / 1600.0, 1e-12);
  EXPECT_NEAR(iron(4000.0), 1.0 / 3200.0, 1e-12);
  EXPECT_NEAR(lead(800.0) / iron(2000.0), 4.0, 1e-9);
  EXPECT_NEAR(lead(500.0) / iron(4000.0), 12.8, 1e-9);
}

/// One catalogue battery, used daily to the depth of practice until it is worn, without interest.
double cycled_daily(const char* id) {
  const bank::Battery& battery = *catalogue().battery(id);
  const cell::Chemistry& kind = *catalogue().chemistry(battery.chemistry);
  constexpr double kDays = 365.25;
  PricedBank bank;
  bank.price = battery.price;
  bank.usable_kWh = battery.nominal_V * battery.capacity_Ah * kind.usable_depth / 1000.0;
  bank.delivered_kWh_per_year = exactly(bank.usable_kWh * kDays);
  const double cycles =
      kind.life.cycles.typical * std::pow(kind.life.depth / kind.usable_depth, kind.life.depth_exponent);
  bank.life_years = exactly(std::min(cycles / kDays, kind.life.calendar_years.typical));
  Terms terms;
  terms.discount_rate = exactly(0.0);
  return costs_of(bank, terms).per_delivered_kWh;
}

// Common practice, no source: for daily use iron-phosphate is cheaper for each kilowatt-hour over its life
// than absorbed glass mat, and a battery shop charges much less for each usable kilowatt-hour of it.
TEST(CostTrade, IronPhosphateIsCheaperForEachKilowattHourOverLife) {
  EXPECT_LT(2.0 * cycled_daily("lfp-12v-100ah"), cycled_daily("agm-12v-98ah"));
}

TEST(CostTrade, EveryChemistryOfABatteryHasAScrapValue) {
  for (const bank::Battery& battery : catalogue().batteries) {
    int found = 0;
    for (const ScrapFact& fact : facts().scrap) {
      found +=
          static_cast<int>(std::count(fact.chemistries.begin(), fact.chemistries.end(), battery.chemistry));
    }
    EXPECT_EQ(found, 1) << battery.id;
  }
}

TEST(CostTrade, ScrapNamesOnlyChemistriesOfTheCatalogue) {
  for (const ScrapFact& fact : facts().scrap) {
    for (const std::string& id : fact.chemistries) EXPECT_NE(catalogue().chemistry(id), nullptr) << id;
  }
}

// A guide of the trade pays 7 to 22.50 US dollars for a car battery of 35 to 45 pounds (scrapGuides): the
// fact must span such sums for 18 kg.
TEST(CostTrade, ScrapOfACarBattery) {
  const units::Ranged scrap = scrap_of({}, facts(), "USD", "flooded", 18.0, 1000.0);
  EXPECT_LT(scrap.min, 7.0);
  EXPECT_GT(scrap.typical, 7.0);
  EXPECT_LT(scrap.typical, 22.5);
  EXPECT_GT(scrap.max, 15.0);
}

// delogu2016: 0.115 to 0.143 L in 100 km for each 100 kg. 100 kg over 10 000 km a year burn 11.5 to 14.3 L.
TEST(CostTrade, FuelForTheMassOfABank) {
  Money money;
  money.fuel_per_L = exactly(1.0);
  money.km_per_year = 10000.0;
  money.discount_rate = exactly(0.0);
  money.horizon_years = 1.0;
  PricedBank bank;
  bank.mass_kg = 100.0;
  bank.life_years = exactly(10.0);
  bank.delivered_kWh_per_year = exactly(1.0);
  const Terms terms = terms_of(money, facts(), "USD");
  EXPECT_NEAR(costs_of(bank, cheap(terms)).carrying, 11.5, 1e-9);
  EXPECT_NEAR(costs_of(bank, dear(terms)).carrying, 14.3, 1e-9);
}

}  // namespace
}  // namespace voltwright::cost
