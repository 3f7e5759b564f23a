// Section [money] of a plan, and the catalogue's record of running costs.
#include "files/plan_money.h"

#include <gtest/gtest.h>

#include <string>

#include "files/cost_facts.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

struct Read {
  cost::Money money;
  base::Problems problems;

  std::string text() const {
    std::string all;
    for (const base::Problem& p : problems) all += base::to_text(p) + "\n";
    return all;
  }
};

Read read_section(const std::string& text, const std::string& currency = "EUR") {
  static const Catalogue kCatalogue = small_catalogue();
  static const Gazetteer kNoPlaces;
  const TomlTree tree = read_toml(text, "plan.toml");
  PlanReading reading{.file = "plan.toml",
                      .catalogue = kCatalogue,
                      .gazetteer = kNoPlaces,
                      .complete = tree.complete,
                      .problems = tree.problems,
                      .start = {},
                      .moved = {},
                      .track = {}};
  Read read;
  read.money = read_money(Section(reading, tree.root, "money"), currency);
  read.problems = reading.problems;
  return read;
}

TEST(PlanMoney, EmptyLeavesTheAssumptions) {
  const Read read = read_section("");
  EXPECT_TRUE(read.problems.empty()) << read.text();
  EXPECT_EQ(read.money.horizon_years, 10.0);
  EXPECT_EQ(read.money.discount_rate.typical, 0.03);
  EXPECT_FALSE(read.money.mains_per_kWh);
  EXPECT_TRUE(read.money.prices.empty());
}

TEST(PlanMoney, ReadsEveryKey) {
  const Read read = read_section(R"(
horizon = "12 years"
discount_rate = { low = "1 %", typical = "4 %", high = "8 %" }
dollar = "0.92 EUR"
electricity = "0,30 EUR/kWh"
fuel = { low = "1.50 EUR/L", typical = "1.80 EUR/L", high = "2.10 EUR / L" }
distance = "8000 km/year"
fuel_for_100_kg = "0.2 L/100 km"
upkeep = "20 EUR/year"

[[price]]
battery = "lfp-12v-100ah"
price = { low = "250 EUR", typical = "289 EUR", high = "340 EUR" }

[[price]]
battery = "agm-12v-98ah"
price = "€199"

[[scrap]]
per_kg = "-1.50 EUR/kg"

[[scrap]]
chemistry = "agm"
per_kg = "0.40 EUR/kg"
)");
  ASSERT_TRUE(read.problems.empty()) << read.text();
  const cost::Money& m = read.money;
  EXPECT_NEAR(m.horizon_years, 12.0, 1e-12);
  EXPECT_DOUBLE_EQ(m.discount_rate.min, 0.01);
  EXPECT_DOUBLE_EQ(m.discount_rate.max, 0.08);
  EXPECT_DOUBLE_EQ(m.per_dollar.value_or(0.0), 0.92);
  ASSERT_TRUE(m.mains_per_kWh && m.fuel_per_L && m.L_per_100km_100kg && m.upkeep_per_year);
  EXPECT_DOUBLE_EQ(m.mains_per_kWh->typical, 0.30);
  EXPECT_DOUBLE_EQ(m.fuel_per_L->max, 2.10);
  EXPECT_DOUBLE_EQ(m.km_per_year, 8000.0);
  EXPECT_DOUBLE_EQ(m.L_per_100km_100kg->min, 0.2);
  EXPECT_DOUBLE_EQ(m.upkeep_per_year->typical, 20.0);
  ASSERT_EQ(m.prices.size(), 2U);
  EXPECT_EQ(m.prices[0].battery, "lfp-12v-100ah");
  EXPECT_DOUBLE_EQ(m.prices[0].price.min, 250.0);
  EXPECT_DOUBLE_EQ(m.prices[1].price.max, 199.0);
  ASSERT_EQ(m.scrap.size(), 2U);
  EXPECT_TRUE(m.scrap[0].chemistry.empty());
  EXPECT_DOUBLE_EQ(m.scrap[0].per_kg.typical, -1.5);
  EXPECT_EQ(m.scrap[1].chemistry, "agm");
}

TEST(PlanMoney, InflationMakesTheRateReal) {
  // 1.05 / 1.02 - 1 = 2.94118 %.
  const Read read = read_section("discount_rate = \"5 %\"\ninflation = \"2 %\"\n");
  ASSERT_TRUE(read.problems.empty()) << read.text();
  EXPECT_NEAR(read.money.discount_rate.typical, 0.0294118, 5e-8);
}

struct Row {
  const char* text;
  const char* words;
};

void PrintTo(const Row& row, std::ostream* out) { *out << row.text; }

class BrokenMoney : public testing::TestWithParam<Row> {};

TEST_P(BrokenMoney, IsNamed) {
  const Read read = read_section(GetParam().text);
  EXPECT_NE(read.text().find(GetParam().words), std::string::npos) << read.text();
}

INSTANTIATE_TEST_SUITE_P(
    Plan, BrokenMoney,
    testing::Values(
        Row{"horizon = \"3 months\"", "1 to 60 years"}, Row{"discount_rate = \"80 %\"", "-10 % to 50 %"},
        Row{"inflation = \"2 %\"", "Inflation alone changes nothing"},
        Row{"discount_rate = { low = \"4 %\", typical = \"3 %\" }", "out of order"},
        Row{"discount_rate = { low = \"1 %\" }", "`typical` is missing"},
        Row{"fuel = { typical = \"1 EUR/L\", hihg = \"2 EUR/L\" }", "Did you mean high?"},
        Row{"electricity = \"0.30 EUR\"", "A sum for each kWh is wanted."},
        Row{"electricity = \"0.30 USD/kWh\"", "The plan counts in EUR"},
        Row{"electricity = \"0.30/kWh\"", "The currency is missing"},
        Row{"electricity = 0.3", "A text in quotes is wanted."},
        Row{"electricity = \"-0.30 EUR/kWh\"", "0 EUR/kWh to"}, Row{"dollar = \"0 EUR\"", "1e-06 EUR"},
        Row{"fuel_for_100_kg = \"0.13 L\"", "Fuel such as"},
        Row{"distance = \"8000 km\"", "A distance for each year is wanted"},
        Row{"distance = \"8000 km/year\"", "what the fuel costs"},
        Row{"upkeep = \"20 EUR/kWh\"", "Write upkeep = \"20 EUR/year\""},
        Row{"price = \"3 EUR\"", "Write [[money.price]] in double brackets."},
        Row{"[[price]]\nprice = \"3 EUR\"", "`battery` is missing"},
        Row{"[[price]]\nbattery = \"lfp-12v-100ah\"", "`price` is missing"},
        Row{"[[price]]\nbattery = \"lead\"\nprice = \"3 EUR\"", "The catalogue has no battery \"lead\""},
        Row{"[[price]]\nbattery = \"lfp-12v-100ah\"\nprice = \"3 EUR\"\n[[price]]\nbattery = "
            "\"lfp-12v-100ah\"\nprice = \"4 EUR\"",
            "has a price already"},
        Row{"[[scrap]]\nchemistry = \"agm\"", "`per_kg` is missing"},
        Row{"[[scrap]]\nchemistry = \"lead\"\nper_kg = \"1 EUR/kg\"", "no chemistry \"lead\""},
        Row{"electrcity = \"0.30 EUR/kWh\"", "Did you mean electricity?"}));

TEST(PlanMoney, WithoutACurrencyThatCanBeUsedSumsAreNotRead) {
  const Read read = read_section("electricity = \"0.30 EUR/kWh\"\n", "");
  EXPECT_TRUE(read.problems.empty()) << read.text();
  EXPECT_FALSE(read.money.mains_per_kWh);
}

const std::string kRecord = R"({"format": 1, "id": "running-costs", "name": "n",
  "carrying": {"fuel_L_per_100km_100kg": {"min": 0.1, "typical": 0.2, "max": 0.3}, "assumption": "a"},
  "scrap": [{"chemistries": ["agm"], "value_year": 2024, "assumption": "a",
    "scrap_USD_per_kg": {"min": -1, "typical": 0, "max": 2}}]})";

std::string changed(const std::string& from, const std::string& to) {
  std::string text = kRecord;
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos);
  return text.replace(at, from.size(), to);
}

std::string problems_of(const std::string& text) {
  const auto read = read_cost_record(text, "costs/running-costs.json");
  std::string all;
  if (!read) {
    for (const base::Problem& p : read.problems()) all += base::to_text(p) + "\n";
  }
  return all;
}

TEST(CostRecord, IsRead) {
  const auto read = read_cost_record(kRecord, "costs/running-costs.json");
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read.value().L_per_100km_100kg.typical, 0.2);
  ASSERT_EQ(read.value().scrap.size(), 1U);
  EXPECT_EQ(read.value().scrap[0].chemistries.at(0), "agm");
  EXPECT_EQ(read.value().scrap[0].USD_per_kg.min, -1.0);
  EXPECT_TRUE(read.value().scrap[0].is_assumption);
}

TEST(CostRecord, FaultsAreNamed) {
  EXPECT_NE(problems_of(changed("\"max\": 0.3", "\"max\": 9.0")).find("fuel_L_per_100km_100kg"),
            std::string::npos);
  EXPECT_NE(problems_of(changed("[\"agm\"]", "[]")).find("names no chemistry"), std::string::npos);
  EXPECT_NE(problems_of(changed("2024", "24")).find("value_year"), std::string::npos);
  EXPECT_NE(problems_of(changed("\"scrap\": [", "\"scraps\": [")).find("A list is wanted"),
            std::string::npos);
  EXPECT_NE(problems_of(changed("\"scrap\": [", "\"scrap\": [3, ")).find("must be an object"),
            std::string::npos);
  EXPECT_NE(problems_of("{").find("costs/running-costs.json"), std::string::npos);
}

TEST(CostRecord, StandsOnce) {
  const EmbeddedFile one = {"costs/running-costs.json", kRecord};
  const EmbeddedFile other = {"costs/more.json", kRecord};
  const EmbeddedFile two[] = {one, other};
  EXPECT_TRUE(read_cost_files(std::span(two, 1)).ok());
  EXPECT_FALSE(read_cost_files(two).ok());
  EXPECT_FALSE(read_cost_files({}).ok());
}

TEST(CostRecord, OfTheCatalogueIsInOrder) {
  const auto read = read_cost_facts();
  ASSERT_TRUE(read.ok());
  EXPECT_GT(read.value().L_per_100km_100kg.min, 0.0);
}

}  // namespace
}  // namespace voltwright::files
