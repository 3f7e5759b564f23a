#include "engine/ageing/opinion.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/ageing/refused.h"
#include "engine/ageing/schmalstieg.h"

namespace voltwright::ageing {
namespace {

/// Loses a thousandth of a root of the repetitions and reaches as far as it is told.
class Simple final : public Law {
 public:
  explicit Simple(Reach reach) : reach_(reach) {}
  void age(Aged& aged, const Exposure&, double times) const override {
    aged.calendar_loss = 0.001 * std::sqrt(times);
  }
  Reach reach(const Exposure&, const Aged&) const override { return reach_; }

 private:
  Reach reach_;
};

Opinion opinion(const char* id, Reach reach) {
  Opinion result;
  result.id = id;
  result.law = std::make_shared<Simple>(reach);
  return result;
}

TEST(Opinions, TheFirstThatKnowsLeads) {
  Opinions opinions;
  EXPECT_EQ(leading_opinion(opinions, {}, {}), nullptr);
  opinions.opinions = {opinion("a", Reach::kOutside), opinion("b", Reach::kExtrapolated),
                       opinion("c", Reach::kInside)};
  EXPECT_EQ(leading_opinion(opinions, {}, {})->id, "b");
  opinions.opinions.resize(1);
  EXPECT_EQ(leading_opinion(opinions, {}, {})->id, "a");
}

TEST(Opinions, ByChemistry) {
  const std::vector<Opinions> all = {{"lfp", {}, "none", 0.0, {}}, {"nmc", {}, "none", 0.0, {}}};
  EXPECT_EQ(opinions_on(all, "nmc"), &all[1]);
  EXPECT_EQ(opinions_on(all, "lead"), nullptr);
}

// 0.2 = 0.001 sqrt(n): n = 40,000.
TEST(Opinions, RepetitionsUntil) {
  const Simple law(Reach::kInside);
  EXPECT_NEAR(repetitions_until(law, {}, 0.8, 1e6), 40000.0, 1e-6);
  EXPECT_EQ(repetitions_until(law, {}, 0.8, 1000.0), 1000.0);
}

// (T - 300)(T - 310) 1e-3 is below 0 between 26.85 and 36.85 degC; moved up by 0.1 it never is.
TEST(RefusedLaws, RootsOfAPolynomial) {
  const auto span = gaining_span({1e-3, -0.61, 93.0});
  ASSERT_TRUE(span.has_value());
  if (!span) return;
  EXPECT_NEAR(span->from_C, 26.85, 1e-6);
  EXPECT_NEAR(span->to_C, 36.85, 1e-6);
  EXPECT_FALSE(gaining_span({1e-3, -0.61, 93.1}).has_value());
}

// A straight line from 3 V to 4 V: the mean of the square is (9 + 12 + 16) / 3.
TEST(Schmalstieg, QuadraticMean) {
  const base::Curve line = {{0.0, 3.0}, {0.5, 3.5}, {1.0, 4.0}};
  EXPECT_NEAR(quadratic_mean_V(line, 0.0, 1.0), std::sqrt(37.0 / 3.0), 1e-12);
  EXPECT_NEAR(quadratic_mean_V(line, 0.25, 0.25), 3.25, 1e-12);
}

}  // namespace
}  // namespace voltwright::ageing
