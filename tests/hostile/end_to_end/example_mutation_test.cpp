// The shipped examples, damaged at random: reading them with the real catalogue and place list gives a plan
// or problems that name a line, never a crash.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <string>

#include "engine/base/random.h"
#include "files/catalogue.h"
#include "files/gazetteer.h"
#include "files/plan.h"
#include "files/text_file.h"

namespace voltwright::files {
namespace {

constexpr std::array<const char*, 3> kExamples = {"kelp-tender", "snow-depth-hut", "vaccine-truck"};
constexpr int kDamagedTexts = 400;

/// One to six places of the text overwritten, cut out or doubled.
std::string damaged(std::string text, std::uint64_t number) {
  base::RandomStream random(20261125, number);
  const int hits = 1 + static_cast<int>(random.uniform() * 6.0);
  for (int i = 0; i < hits && !text.empty(); ++i) {
    const auto at = static_cast<std::size_t>(random.uniform() * static_cast<double>(text.size()));
    const auto length = std::min(text.size() - at, static_cast<std::size_t>(random.uniform() * 12.0) + 1);
    switch (static_cast<int>(random.uniform() * 4.0)) {
      case 0:
        text[at] = static_cast<char>(random.next_bits() & 0xffU);
        break;
      case 1:
        text.erase(at, length);
        break;
      case 2:
        text.insert(at, text.substr(at, length));
        break;
      default:
        text.insert(at, "-1e308");
        break;
    }
  }
  return text;
}

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
      const auto plan =
          read_plan(damaged(text.value(), number), "plan.toml", catalogue.value(), gazetteer.value());
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
