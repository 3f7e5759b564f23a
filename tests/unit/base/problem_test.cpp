#include "engine/base/problem.h"

#include <gtest/gtest.h>

#include "engine/base/result.h"

namespace voltwright::base {
namespace {

TEST(Problem, SaysWhereWhatGivenAllowedAndRemedy) {
  Problem p;
  p.what = "The tilt is too steep.";
  p.where = {"plan.toml", 12, 8};
  p.field = "arrays.tilt";
  p.given = "97 deg";
  p.limit = "0 to 90 deg";
  p.remedy = "Lay it flatter.";
  EXPECT_EQ(to_text(p),
            "plan.toml:12:8: arrays.tilt: The tilt is too steep. Given: 97 deg. Allowed: 0 to 90 deg. Lay it flatter.");
  p.where = {"plan.toml", 12, 0};
  p.severity = Severity::kWarning;
  EXPECT_EQ(to_text(p).find("plan.toml:12: warning: "), 0U);
  EXPECT_EQ(to_text({"Nothing is known.", {}, "", "", "", "", Severity::kError}), "Nothing is known.");
}

TEST(Problem, WarningsAreNoErrors) {
  Problem warning;
  warning.severity = Severity::kWarning;
  EXPECT_FALSE(has_error({}));
  EXPECT_FALSE(has_error({warning}));
  EXPECT_TRUE(has_error({warning, Problem{}}));
}

TEST(Result, HoldsAValueOrProblems) {
  const Result<int> good(7);
  ASSERT_TRUE(good.ok());
  EXPECT_EQ(good.value(), 7);
  const Result<int> bad(Problem{"No.", {}, "", "", "", "", Severity::kError});
  ASSERT_FALSE(bad);
  EXPECT_EQ(bad.problems().size(), 1U);
}

}  // namespace
}  // namespace voltwright::base
