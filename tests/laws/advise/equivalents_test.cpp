// What must hold of the equivalents of any battery of the catalogue.
#include "engine/advise/equivalents.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "engine/advise/change.h"
#include "tests/laws/advise/catalogue_bank.h"

namespace voltwright::laws {
namespace {

using advise::Measure;

constexpr Measure kMeasures[] = {Measure::kUsableEnergy, Measure::kMass,       Measure::kVolume,
                                 Measure::kPrice,        Measure::kLifeEnergy, Measure::kStartingCurrent};
constexpr const char* kIncumbents[] = {"agm-12v-98ah", "flooded-6v-225ah", "lfp-24v-100ah", "lto-12v-60ah"};

advise::SwapQuestion question_of(const char* id, Measure measure) {
  advise::SwapQuestion question;
  question.incumbent = bank_of(id);
  question.measure = measure;
  question.load.power_W = 60.0;
  question.most_in_parallel = 6;
  return question;
}

advise::Equivalents answer_of(const advise::SwapQuestion& question) {
  return advise::equivalents_of(question, catalogue().chemistries, catalogue().batteries);
}

TEST(Equivalents, ReachTheTargetOrKeepWithinItAndStandInOrder) {
  for (const char* id : kIncumbents) {
    for (const Measure measure : kMeasures) {
      const auto answer = answer_of(question_of(id, measure));
      const advise::Compared* before = nullptr;
      for (const advise::Compared& one : answer.found) {
        SCOPED_TRACE(std::string(id) + " by " + std::string(advise::name_of(measure)) + ": " +
                     one.bank.battery->id);
        EXPECT_NEAR(one.share * answer.target, one.value, 1e-9 * one.value);
        if (advise::must_reach(measure)) {
          EXPECT_GE(one.share, 0.99);
          if (before != nullptr) {
            EXPECT_GE(one.share, before->share);
          }
        } else {
          EXPECT_LE(one.share, 1.01);
          if (before != nullptr) {
            EXPECT_LE(one.run.load_Wh, before->run.load_Wh);
          }
        }
        before = &one;
      }
    }
  }
}

TEST(Equivalents, HaveTheSystemVoltageAndPermittedSeries) {
  for (const char* id : kIncumbents) {
    const double system_V = catalogue().battery(id)->system_V;
    const auto answer = answer_of(question_of(id, Measure::kUsableEnergy));
    std::set<std::string> seen;
    for (const advise::Compared& one : answer.found) {
      EXPECT_DOUBLE_EQ(one.bank.battery->system_V * one.bank.layout.in_series, system_V);
      EXPECT_LE(one.bank.layout.in_series, one.bank.battery->max_in_series);
      EXPECT_LE(one.bank.layout.in_parallel, 6);
      EXPECT_TRUE(seen.insert(one.bank.battery->id).second) << one.bank.battery->id << " stands there twice";
      EXPECT_FALSE(one.bank.battery->id == id && one.bank.layout.in_parallel == 1);
    }
    for (const advise::LeftOut& one : answer.left_out) {
      EXPECT_FALSE(one.why.empty());
      EXPECT_TRUE(seen.insert(one.battery).second) << one.battery << " is both found and left out";
    }
  }
}

// One fewer would not do: the number found is the least.
TEST(Equivalents, AreTheFewestThatReach) {
  const auto question = question_of("agm-12v-98ah", Measure::kUsableEnergy);
  int several = 0;
  for (const advise::Compared& one : answer_of(question).found) {
    if (one.bank.layout.in_parallel == 1) continue;
    ++several;
    advise::BankOnHand fewer = one.bank;
    --fewer.layout.in_parallel;
    EXPECT_LT(advise::compare(question, fewer, {}).run.bank_Wh,
              0.99 * advise::compare(question, question.incumbent, {}).run.bank_Wh);
  }
  EXPECT_GT(several, 0);
}

TEST(Equivalents, EveryChemistryStandsOnceAmongTheBest) {
  const auto answer = answer_of(question_of("agm-12v-98ah", Measure::kUsableEnergy));
  const auto best = advise::best_of_each_chemistry(answer.found);
  std::set<std::string> kinds;
  for (const auto& one : best) EXPECT_TRUE(kinds.insert(one.bank.chemistry->id).second);
  for (const auto& one : answer.found) EXPECT_EQ(kinds.count(one.bank.chemistry->id), 1U);
}

// Every exchange speaks of the fuse, the monitor and the fastening, and the musts stand first.
TEST(Changes, NameTheMattersOfEveryExchangeMustsFirst) {
  for (const char* id : kIncumbents) {
    const auto question = question_of(id, Measure::kUsableEnergy);
    const auto answer = answer_of(question);
    for (const advise::Compared& one : answer.found) {
      SCOPED_TRACE(std::string(id) + " by " + one.bank.battery->id);
      std::set<advise::Topic> topics;
      auto before = advise::Urgency::kMust;
      for (const auto& change : advise::changes_between(question, answer.incumbent, one)) {
        topics.insert(change.topic);
        EXPECT_FALSE(change.text.empty());
        EXPECT_LE(before, change.urgency);
        before = change.urgency;
      }
      for (const auto topic : {advise::Topic::kFuse, advise::Topic::kMonitor, advise::Topic::kSecuring,
                               advise::Topic::kMixing}) {
        EXPECT_EQ(topics.count(topic), 1U) << advise::name_of(topic);
      }
      EXPECT_EQ(topics.count(advise::Topic::kParallel), one.bank.layout.in_parallel > 1 ? 1U : 0U);
      EXPECT_EQ(topics.count(advise::Topic::kSeries), one.bank.layout.in_series > 1 ? 1U : 0U);
      const bool lead_before = answer.incumbent.bank.chemistry->family == cell::Family::kLeadAcid;
      const bool lead_after = one.bank.chemistry->family == cell::Family::kLeadAcid;
      EXPECT_EQ(topics.count(advise::Topic::kAlternator), lead_before && !lead_after ? 1U : 0U);
    }
  }
}

}  // namespace
}  // namespace voltwright::laws
