// Bulk, absorption, float and back.
#include "engine/supply/stages.h"

#include <gtest/gtest.h>

namespace voltwright::supply {
namespace {

StageSettings<double> settings() {
  StageSettings<double> g;
  g.absorption_V = 14.4;
  g.float_V = 13.5;
  g.rebulk_V = 12.8;
  g.tail_A = 2.0;
  g.absorption_max_s = 3600.0;
  return g;
}

TEST(Stages, BulkUntilTheVoltageIsHeld) {
  StageState<double> s;
  next_stage<double>(settings(), s, false, 13.9, -40.0, 60.0);
  EXPECT_EQ(s.stage, 0.0);
  EXPECT_EQ(set_point<double>(settings(), s, 25.0), 14.4);
  next_stage<double>(settings(), s, true, 14.4, -35.0, 60.0);
  EXPECT_EQ(s.stage, 1.0);
}

TEST(Stages, AbsorptionEndsByTailCurrent) {
  StageState<double> s;
  s.stage = 1.0;
  next_stage<double>(settings(), s, true, 14.4, -2.1, 60.0);
  EXPECT_EQ(s.stage, 1.0);
  next_stage<double>(settings(), s, true, 14.4, -1.9, 60.0);
  EXPECT_EQ(s.stage, 2.0);
  EXPECT_EQ(set_point<double>(settings(), s, 25.0), 13.5);
}

// A small current without the voltage held is no sign of a full bank: the sun has gone.
TEST(Stages, WeakSourceIsNoTail) {
  StageState<double> s;
  s.stage = 1.0;
  next_stage<double>(settings(), s, false, 13.4, -0.5, 60.0);
  EXPECT_EQ(s.stage, 1.0);
}

TEST(Stages, AbsorptionEndsByTime) {
  StageState<double> s;
  s.stage = 1.0;
  for (int i = 0; i < 59; ++i) next_stage<double>(settings(), s, true, 14.4, -20.0, 60.0);
  EXPECT_EQ(s.stage, 1.0);
  next_stage<double>(settings(), s, true, 14.4, -20.0, 60.0);
  EXPECT_EQ(s.stage, 2.0);
}

TEST(Stages, StartsOverWhenTheVoltageHasFallen) {
  for (const double stage : {1.0, 2.0}) {
    StageState<double> s;
    s.stage = stage;
    s.absorption_s = 1800.0;
    next_stage<double>(settings(), s, false, 12.7, 5.0, 60.0);
    EXPECT_EQ(s.stage, 0.0);
    EXPECT_EQ(s.absorption_s, 0.0);
  }
}

// An equalising charge follows an absorption when it is due, holds its own voltage for its own time, above
// the cap for ordinary charging, and is then not due again.
TEST(Stages, EqualisesWhenDue) {
  StageSettings<double> g = settings();
  g.highest_V = 15.5;
  g.equalise_V = 15.9;
  g.equalise_s = 7200.0;
  g.equalise_every_s = 30.0 * 86400.0;
  StageState<double> s;
  s.stage = 1.0;
  s.since_equalised_s = 29.0 * 86400.0;
  next_stage<double>(g, s, true, 14.4, -1.0, 60.0);
  EXPECT_EQ(s.stage, 2.0) << "not due yet";
  s.stage = 1.0;
  for (int i = 0; i < 1440; ++i) notice_source<double>(s, true, 60.0);
  next_stage<double>(g, s, true, 14.4, -1.0, 60.0);
  EXPECT_EQ(s.stage, 3.0);
  EXPECT_EQ(set_point<double>(g, s, 25.0), 15.9);
  for (int i = 0; i < 119; ++i) next_stage<double>(g, s, true, 15.9, -3.0, 60.0);
  EXPECT_EQ(s.stage, 3.0);
  next_stage<double>(g, s, true, 15.9, -3.0, 60.0);
  EXPECT_EQ(s.stage, 2.0);
  EXPECT_EQ(s.since_equalised_s, 0.0);
}

}  // namespace
}  // namespace voltwright::supply
