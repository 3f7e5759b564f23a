// Which banks a plan may choose from.
#include "engine/advise/candidate.h"

#include <gtest/gtest.h>

#include <set>
#include <vector>

namespace voltwright::advise {
namespace {

cell::Chemistry chemistry(const char* id, bool simulated = true) {
  cell::Chemistry c;
  c.id = id;
  c.simulated = simulated;
  return c;
}
bank::Battery battery(const char* id, const char* kind, double system_V, int max_in_series) {
  bank::Battery b;
  b.id = id;
  b.name = id;
  b.chemistry = kind;
  b.system_V = system_V;
  b.nominal_V = system_V;
  b.max_in_series = max_in_series;
  return b;
}

class Candidates : public ::testing::Test {
 protected:
  std::set<std::string> ids() const {
    std::set<std::string> found;
    for (const Candidate& c : candidates_of(plan_, chemistries_, batteries_)) found.insert(c.id());
    return found;
  }
  const std::vector<cell::Chemistry> chemistries_{chemistry("a"), chemistry("b"), chemistry("new", false)};
  const std::vector<bank::Battery> batteries_{
      battery("a6", "a", 6.0, 8),   battery("a12", "a", 12.0, 2),     battery("b12", "b", 12.0, 1),
      battery("b24", "b", 24.0, 1), battery("new12", "new", 12.0, 4), battery("none12", "gone", 12.0, 4)};
  Plan plan_;
};

TEST_F(Candidates, SeriesToTheSystemVoltageParallelToTheLimit) {
  plan_.candidates.max_parallel = 2;
  EXPECT_EQ(ids(),
            (std::set<std::string>{"a6:2s1p", "a6:2s2p", "a12:1s1p", "a12:1s2p", "b12:1s1p", "b12:1s2p"}));
}

TEST_F(Candidates, MoreInSeriesOnlyWhereAllowed) {
  plan_.candidates.max_parallel = 1;
  plan_.system_voltage = units::volts(24.0);
  EXPECT_EQ(ids(), (std::set<std::string>{"a6:4s1p", "a12:2s1p", "b24:1s1p"}));
  plan_.system_voltage = units::volts(48.0);
  EXPECT_EQ(ids(), (std::set<std::string>{"a6:8s1p"}));
}

TEST_F(Candidates, ListsNarrowTheChoice) {
  plan_.candidates.max_parallel = 1;
  plan_.candidates.chemistries = {"b"};
  EXPECT_EQ(ids(), (std::set<std::string>{"b12:1s1p"}));
  plan_.candidates.chemistries.clear();
  plan_.candidates.batteries = {"a12", "new12"};
  EXPECT_EQ(ids(), (std::set<std::string>{"a12:1s1p"}))
      << "a chemistry that is not simulated is never a candidate";
}

TEST_F(Candidates, SmallestFirstWithinABattery) {
  int last = 0;
  std::string battery;
  for (const Candidate& c : candidates_of(plan_, chemistries_, batteries_)) {
    if (c.battery->id != battery) last = 0;
    battery = c.battery->id;
    EXPECT_GT(c.layout.in_parallel, last);
    last = c.layout.in_parallel;
  }
}

TEST_F(Candidates, NamedBankKeepsItsWear) {
  const Candidate c = named_candidate({"a6", 2, 3, 0.3}, chemistries_, batteries_);
  EXPECT_EQ(c.id(), "a6:2s3p");
  EXPECT_EQ(c.name(), "6 \u00D7 a6");
  EXPECT_NEAR(c.figures.capacity_Ah, 300.0 * 0.7, 1e-9);
  EXPECT_EQ(named_candidate({"unknown", 1, 1, 0.0}, chemistries_, batteries_).battery, nullptr);
  EXPECT_EQ(named_candidate({"none12", 1, 1, 0.0}, chemistries_, batteries_).battery, nullptr);
}

}  // namespace
}  // namespace voltwright::advise
