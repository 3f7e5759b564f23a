// The example plans: they read without a problem, their example banks hold, and the answer is the same
// however it is worked out.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "app/parallel.h"
#include "app/plan_on_hand.h"
#include "engine/advise/search.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

std::string path_of(const std::string& example) {
  return std::string(VW_SOURCE_DIR) + "/examples/" + example + "/plan.toml";
}

struct Example {
  const char* folder;
  const char* battery;
  int in_parallel;
};

void PrintTo(const Example& example, std::ostream* os) { *os << example.folder; }

advise::Candidate bank_of(const app::PlanOnHand& hand, const std::string& battery, int in_parallel) {
  advise::NamedBank named;
  named.battery = battery;
  named.in_parallel = in_parallel;
  const bank::Battery* entry = hand.catalogue.battery(battery);
  if (entry == nullptr) {
    ADD_FAILURE() << battery;
    return {};
  }
  named.in_series =
      static_cast<int>(std::lround(units::as_volts(hand.plan.system_voltage) / entry->system_V));
  return advise::named_candidate(named, hand.catalogue.chemistries, hand.catalogue.batteries);
}

class Examples : public ::testing::TestWithParam<Example> {
 protected:
  void SetUp() override {
    auto read = app::plan_on_hand(path_of(GetParam().folder));
    if (!read) {
      for (const base::Problem& problem : read.problems()) ADD_FAILURE() << base::to_text(problem);
      FAIL();
    }
    hand_ = std::move(read).value();
  }
  app::PlanOnHand hand_;
};

TEST_P(Examples, ReadsWithoutAWarningAndItsBankHolds) {
  for (const base::Problem& warning : hand_.warnings) ADD_FAILURE() << base::to_text(warning);
  const advise::Candidate bank = bank_of(hand_, GetParam().battery, GetParam().in_parallel);
  const advise::Candidate* const banks[] = {&bank};
  const advise::Proving proving(hand_.plan, hand_.skies, hand_.climates.matrices());
  for (std::uint64_t season = 0; season < 4; ++season) {
    const season::Fared fared = proving.run_season(banks, season).front();
    EXPECT_FALSE(fared.ran_short()) << "season " << season << ", " << fared.ledger.unmet_essential_Wh
                                    << " Wh";
    EXPECT_EQ(fared.ledger.failed_starts, 0.0) << season;
    expect_closed(fared.ledger);
  }
}

// More of the same battery side by side have more of everything, so they never run short longer.
TEST_P(Examples, MoreInParallelNeverRunsShortLonger) {
  const advise::Proving proving(hand_.plan, hand_.skies, hand_.climates.matrices());
  for (const char* battery : {GetParam().battery, "flooded-12v-100ah"}) {
    std::vector<advise::Candidate> banks;
    for (int n = 1; n <= 4; ++n) banks.push_back(bank_of(hand_, battery, n));
    std::vector<const advise::Candidate*> pointers;
    pointers.reserve(banks.size());
    for (const advise::Candidate& bank : banks) pointers.push_back(&bank);
    const std::vector<season::Fared> fared = proving.run_season(pointers, 0);
    // One lead-acid battery is too small for each of them, or the comparison would say nothing.
    if (std::string(battery) == "flooded-12v-100ah") {
      EXPECT_GT(fared[0].ledger.short_h, 1.0);
    }
    for (std::size_t i = 0; i < fared.size(); ++i) {
      expect_closed(fared[i].ledger);
      if (i == 0) continue;
      EXPECT_LE(fared[i].ledger.short_h, fared[i - 1].ledger.short_h) << battery << " x " << i + 1;
      EXPECT_LE(fared[i].ledger.unmet_essential_Wh, fared[i - 1].ledger.unmet_essential_Wh)
          << battery << " x " << i + 1;
    }
  }
}

std::string digits(double x) {
  char text[40];
  std::snprintf(text, sizeof text, " %a", x);
  return text;
}

/// What a race found, as text with all digits.
std::string told(const std::vector<advise::Trial>& trials) {
  std::string text;
  for (const advise::Trial& t : trials) {
    text += t.candidate.id();
    for (const advise::SeasonNote& s : t.seasons) {
      for (const double x : {static_cast<double>(s.season), s.unmet_essential_Wh, s.unmet_Wh, s.short_h,
                             s.longest_short_min, s.lowest_charge, s.charge_blocked_h}) {
        text += digits(x);
      }
    }
    for (const double x : {t.ledger.in_Wh(), t.ledger.out_Wh(), t.ledger.residual_Wh, t.ledger.charged_Ah,
                           t.lowest_V, t.highest_V, t.mean_C, t.highest_surge_A, t.wear_typical.total()}) {
      text += digits(x);
    }
    text += '\n';
  }
  return text;
}

TEST_P(Examples, AnswerDoesNotDependOnThreadsOrRepetition) {
  hand_.plan.seasons = 4;
  std::vector<advise::Candidate> banks;
  for (int n = 1; n <= 2; ++n) banks.push_back(bank_of(hand_, GetParam().battery, n));
  banks.push_back(bank_of(hand_, "flooded-12v-100ah", 1));
  const advise::Proving proving(hand_.plan, hand_.skies, hand_.climates.matrices());
  const auto race = [&](unsigned threads) {
    return told(advise::prove(hand_.plan, proving, banks, app::on_threads(threads), [](int, int, int) {}));
  };
  const std::string alone = race(1);
  EXPECT_NE(alone.find("flooded-12v-100ah"), std::string::npos);
  EXPECT_EQ(race(2), alone);
  EXPECT_EQ(race(2), alone);
}

/// Test names may hold letters and digits alone.
std::string name_of(const ::testing::TestParamInfo<Example>& info) {
  std::string name;
  for (const char c : std::string(info.param.folder)) {
    if (c != '-') name += c;
  }
  return name;
}

INSTANTIATE_TEST_SUITE_P(All, Examples,
                         ::testing::Values(Example{"kelp-tender", "lfp-12v-200ah", 1},
                                           Example{"snow-depth-hut", "lfp-12v-200ah", 4},
                                           Example{"vaccine-truck", "lfp-24v-100ah", 1}),
                         name_of);

}  // namespace
}  // namespace voltwright::whole
