// The JSON of answers and problems can be read by any JSON reader, whatever bytes a person typed.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "app/json.h"
#include "files/text_file.h"

namespace voltwright::app {
namespace {

std::string plan_path(const std::string& name) { return ::testing::TempDir() + "/" + name; }

TEST(AnswerJson, HoldsTheRankingAndTheStamp) {
  const std::string path = plan_path("answer_json.toml");
  ASSERT_TRUE(
      files::write_text(path,
                        "format = 1\nname = \"Quoted \\\"hut\\\" \\u00e5\"\nseasons = 2\n"
                        "[cables.main]\none_way = \"1 m\"\narea = \"35 mm2\"\n"
                        "[[load]]\nname = \"Lamp\"\npower = \"9 W\"\nalways = true\nneed = \"essential\"\n"
                        "[[leg]]\nplace = \"Kiruna\"\nfrom = 2026-06-01\nto = 2026-06-02\n"
                        "[candidates]\nbatteries = [\"lfp-12v-100ah\", \"agm-12v-98ah\"]\nmax_parallel = 2\n")
          .empty());
  const auto response = advise({path, "", 1}, {});
  ASSERT_TRUE(response.ok()) << base::to_text(response.problems().front());
  const auto json = nlohmann::json::parse(to_json(response.value()));
  EXPECT_EQ(json["stamp"]["format"], kAnswerFormat);
  EXPECT_EQ(json["ranking"].size(), 4U);
  for (const auto& row : json["ranking"]) {
    EXPECT_EQ(row["seasons"], 2);
    const double in_Wh = row["ledger_per_season"]["in_sum_Wh"];
    const double out_Wh = row["ledger_per_season"]["out_sum_Wh"];
    EXPECT_NEAR(in_Wh, out_Wh, 1e-9 * out_Wh);
    EXPECT_TRUE(row["cost"]["known"].get<bool>());
    EXPECT_GT(row["cost"]["per_delivered_kWh"]["typical"].get<double>(), 0.0);
    EXPECT_EQ(row["bank"]["price_from"], "catalogue");
  }
  EXPECT_EQ(json["cost"]["currency"], "USD");
  EXPECT_EQ(json["cost"]["banks"][0]["bank"], json["ranking"][0]["bank"]["id"]);
}

TEST(AnswerJson, ProblemsParseEvenWithStrangeBytes) {
  base::Problem problem;
  problem.what = "Bytes \xff\xfe and \"quotes\" and \n lines.";
  problem.where = {"plan\xff.toml", 3, 4};
  const auto json = nlohmann::json::parse(to_json(base::Problems{problem}));
  ASSERT_EQ(json["problems"].size(), 1U);
  EXPECT_EQ(json["problems"][0]["line"], 3);
}

}  // namespace
}  // namespace voltwright::app
