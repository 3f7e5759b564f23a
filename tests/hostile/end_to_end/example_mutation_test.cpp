// The shipped examples, damaged at random: reading them with the real catalogue and place list gives a plan
// or problems that name a line, never a crash.
#include <gtest/gtest.h>

#include <array>
#include <string>

#include "files/catalogue.h"
#include "files/gazetteer.h"
#include "files/plan.h"
#include "files/text_file.h"
#include "tests/hostile/damaged_text.h"

namespace voltwright::files {
namespace {

constexpr std::array<const char*, 3> kExamples = {"kelp-tender", "snow-depth-hut", "vaccine-truck"};
constexpr int kDamagedTexts = 400;
constexpr hostile::Damage kDamage{.seed = 20261125, .most_hits = 6.0, .inserted = "-1e308"};

TEST(DamagedExamples, GiveAPlanOrProblemsWithALine) {
  const auto catalogue = read_catalogue();
  const auto gazetteer = Gazetteer::built_in();
  ASSERT_TRUE(catalogue.ok());
  ASSERT_TRUE(gazetteer.ok());
  int refused = 0;
  for (const char* const example : kExamples) {
    const auto text = read_text(std::string(VW_SOURCE_DIR) + "/examples/" + example + "/plan.toml");
    ASSERT_TRUE(text.ok()) << example;
    for (std::uint64_t number = 0; number < kDamagedTexts; ++number) {
      const auto plan = read_plan(hostile::damaged(text.value(), number, kDamage), "plan.toml",
                                  catalogue.value(), gazetteer.value());
      if (plan.ok()) continue;
      ++refused;
      ASSERT_FALSE(plan.problems().empty());
      for (const base::Problem& problem : plan.problems()) {
        EXPECT_GT(problem.where.line, 0) << example << ' ' << number << ": " << base::to_text(problem);
        EXPECT_FALSE(problem.what.empty());
      }
    }
  }
  EXPECT_GT(refused, kDamagedTexts) << "damage of this size spoils most plans";
}

}  // namespace
}  // namespace voltwright::files
