// A race ends after as many seasons as the plan asks for, be they fewer than the race's own first laps.
#include <algorithm>
#include <vector>

#include "app/parallel.h"
#include "engine/advise/search.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

class Race : public ::testing::TestWithParam<int> {};

TEST_P(Race, EndsAtThePlansSeasons) {
  Practice practice(warm_cabin() + R"(
[[load]]
name = "Lamp"
power = "20 W"
hours = "6 h/day"
from = "17:00"
)" + winter_stay(2));
  practice.plan().seasons = GetParam();
  const std::vector<advise::Candidate> banks = {practice.bank("lfp-12v-100ah"), practice.bank("lfp-12v-50ah"),
                                                practice.bank("flooded-12v-100ah")};
  const std::vector<advise::Trial> trials = practice.race(banks, app::on_threads(2));
  ASSERT_EQ(trials.size(), banks.size());
  for (const advise::Trial& trial : trials) {
    EXPECT_GE(trial.count(), std::min(4, GetParam())) << trial.candidate.id();
    EXPECT_LE(trial.count(), GetParam()) << trial.candidate.id();
  }
  // One bank at least has gone the whole way.
  EXPECT_TRUE(std::any_of(trials.begin(), trials.end(),
                          [](const advise::Trial& t) { return t.count() == GetParam(); }));
}

INSTANTIATE_TEST_SUITE_P(Seasons, Race, ::testing::Values(1, 3, 4, 5, 11, 12, 13, 30));

}  // namespace
}  // namespace voltwright::whole
