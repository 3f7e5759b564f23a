// Cost over life, from the text of a plan to the answer.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "app/advise.h"
#include "app/json.h"
#include "app/report.h"
#include "engine/advise/cost_words.h"
#include "files/cost_facts.h"
#include "files/text_file.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

/// An example with fewer seasons and banks, so that it is worked in a moment.
std::string shortened(const std::string& example) {
  std::string text =
      files::read_text(std::string(VW_SOURCE_DIR) + "/examples/" + example + "/plan.toml").value();
  const auto swap = [&](const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    if (at != std::string::npos) text.replace(at, from.size(), to);
  };
  swap("seasons = 100", "seasons = 2");
  swap("chemistries = \"all\"", "batteries = [\"lfp-24v-100ah\", \"agm-12v-98ah\"]");
  swap("max_parallel = 4", "max_parallel = 2");
  return text;
}

app::AdviseResponse advised(const std::string& name, const std::string& text) {
  const std::string path = ::testing::TempDir() + "/" + name;
  EXPECT_TRUE(files::write_text(path, text).empty());
  auto response = app::advise({path, "", 1}, {});
  if (!response.ok()) {
    ADD_FAILURE() << base::to_text(response.problems().front());
    return {};
  }
  return std::move(response).value();
}

TEST(WholeCost, AnExampleHasItsCostWithABandAndItsDecisiveAssumption) {
  const app::AdviseResponse response = advised("cost_example.toml", shortened("vaccine-truck"));
  ASSERT_FALSE(response.costs.banks.empty());
  const advise::BankCost& shown = response.costs.banks[response.costs.shown];
  ASSERT_TRUE(shown.known()) << advise::unknown_sentence(shown);
  const units::Ranged& likely = shown.tornado.likely;
  EXPECT_LT(likely.min, likely.typical);
  EXPECT_LT(likely.typical, likely.max);
  // Between a tenth and a hundred times what batteries of the trade cost for each kWh (common practice, no
  // source).
  EXPECT_GT(likely.typical, 0.02);
  EXPECT_LT(likely.typical, 20.0);
  ASSERT_NE(shown.tornado.decisive(), nullptr);
  ASSERT_GE(response.answer.fitted_now, 0);
  const advise::BankCost& now = response.costs.banks[static_cast<std::size_t>(response.answer.fitted_now)];
  ASSERT_TRUE(now.known()) << advise::unknown_sentence(now);
  EXPECT_TRUE(now.bank.fitted_now);

  const auto json = nlohmann::json::parse(app::to_json(response));
  const auto& cost = json["cost"];
  EXPECT_EQ(cost["currency"], "USD");
  EXPECT_FALSE(cost["sentences"].empty());
  EXPECT_FALSE(cost["against"].empty());
  EXPECT_FALSE(cost["banks"][0]["working"].empty());
  for (const auto& row : json["ranking"]) {
    ASSERT_TRUE(row["cost"].contains("known"));
    if (row["cost"]["known"]) {
      const auto& ends = row["cost"]["per_delivered_kWh_at_all_ends"];
      EXPECT_LT(ends["min"], ends["typical"]);
      EXPECT_EQ(ends["typical"], row["cost"]["per_delivered_kWh"]["typical"]);
    }
  }
  EXPECT_NE(app::report(response).find("Life and cost"), std::string::npos);
}

TEST(WholeCost, PlanInAnotherCurrencySaysWhyAndWhatToGive) {
  std::string text = shortened("vaccine-truck");
  for (std::size_t at = text.find("USD"); at != std::string::npos; at = text.find("USD", at))
    text.replace(at, 3, "EUR");
  const app::AdviseResponse unknown = advised("cost_euro.toml", text);
  EXPECT_EQ(unknown.answer.best, -1);
  const auto json = nlohmann::json::parse(app::to_json(unknown));
  EXPECT_FALSE(json["ranking"][0]["cost"]["known"]);
  EXPECT_EQ(json["ranking"][0]["bank"]["price_currency"], "USD");
  EXPECT_NE(json["cost"]["sentences"][0].get<std::string>().find("is not known"), std::string::npos);
  bool found = false;
  for (const auto& v : json["ranking"][0]["verdicts"]) {
    if (v["matter"] != "price") continue;
    found = true;
    EXPECT_EQ(v["verdict"], "not known");
    EXPECT_TRUE(v["value"].is_null());
    EXPECT_NE(v["remedy"].get<std::string>().find("[[money.price]]"), std::string::npos);
  }
  EXPECT_TRUE(found);
}

/// A daily cycle of the kind of battery, and what a kWh out of it costs.
double cost_of_daily_use(const std::string& battery, const std::string& power, double price_of_kWh) {
  Practice practice = nightly_on_mains(power, 20);
  practice.plan().seasons = 1;
  practice.plan().money = cost::Money{};
  practice.plan().money->discount_rate = {};
  const advise::Candidate bank = practice.bank(battery);
  if (price_of_kWh > 0.0) {
    const double price = price_of_kWh * bank.figures.nominal_Wh / 1000.0;
    practice.plan().money->prices.push_back({battery, {price, price, price}});
  }
  const advise::Recommendation answer =
      advise::recommend(practice.plan(), practice.race({bank}, [](std::size_t n, const auto& work) {
        for (std::size_t i = 0; i < n; ++i) work(i);
      }));
  const advise::LifeCost costs = advise::life_cost(practice.plan(), files::read_cost_facts().value(), answer);
  EXPECT_TRUE(costs.banks.at(0).known());
  return costs.banks.at(0).known() ? costs.banks[0].life_cycle.typical.per_delivered_kWh : 0.0;
}

// A case of practice: by a seller's table of cycles 4 to 13 times as much passes through iron-phosphate as
// through lead-acid of the same size until they are worn, so that at one price for the rated kWh one that is
// delivered costs so many times less. The table leaves years and temperature out.
TEST(WholeCost, IronPhosphateAgainstLeadAcidAtOnePriceForTheRatedKilowattHour) {
  const double lead = cost_of_daily_use("flooded-12v-100ah", "108 W", 100.0);
  const double iron = cost_of_daily_use("lfp-12v-100ah", "204 W", 100.0);
  EXPECT_GT(lead / iron, 4.0);
  EXPECT_LT(lead / iron, 13.0);
}

// Common practice, no source: at the prices of shops daily use of iron-phosphate costs less for each kWh than
// of absorbed glass mat.
TEST(WholeCost, IronPhosphateIsCheaperInDailyUseAtShopPrices) {
  EXPECT_LT(cost_of_daily_use("lfp-12v-100ah", "204 W", 0.0),
            cost_of_daily_use("agm-12v-98ah", "108 W", 0.0));
}

}  // namespace
}  // namespace voltwright::whole
