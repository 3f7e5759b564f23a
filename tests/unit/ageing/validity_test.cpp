#include "engine/ageing/validity.h"

#include <gtest/gtest.h>

#include "engine/ageing/naumann_cycling.h"
#include "engine/ageing/naumann_storage.h"

namespace voltwright::ageing {
namespace {

Validity limits() {
  Validity validity;
  validity.coldest_C = 0.0;
  validity.hottest_C = 50.0;
  validity.tested_from_C = 20.0;
  validity.least_soc = 0.2;
  validity.fastest_per_h = 1.0;
  validity.tested_h = 1000.0;
  validity.tested_full_cycles = 50.0;
  return validity;
}

Exposure use(double temperature_C, double soc, double rate_per_h) {
  Exposure exposure;
  exposure.hours = 100.0;
  exposure.dwell = {{temperature_C, soc, 100.0}};
  exposure.swings = {{0.2, soc, 5.0, rate_per_h, rate_per_h, temperature_C}};
  return exposure;
}

TEST(Validity, InsideExtrapolatedOutside) {
  EXPECT_EQ(reach_within(limits(), use(25, 0.5, 0.5), {}), Reach::kInside);
  EXPECT_EQ(reach_within(limits(), use(10, 0.5, 0.5), {}), Reach::kExtrapolated);
  EXPECT_EQ(reach_within(limits(), use(-5, 0.5, 0.5), {}), Reach::kOutside);
  EXPECT_EQ(reach_within(limits(), use(55, 0.5, 0.5), {}), Reach::kOutside);
  EXPECT_EQ(reach_within(limits(), use(25, 0.1, 0.5), {}), Reach::kOutside);
  Exposure deep = use(25, 0.25, 0.5);  // rests above 20 % and swings below
  EXPECT_EQ(reach_within(limits(), deep, {}), Reach::kOutside);
  deep.swings.clear();
  EXPECT_EQ(reach_within(limits(), deep, {}), Reach::kInside);
  EXPECT_EQ(reach_within(limits(), use(25, 0.5, 2.0), {}), Reach::kExtrapolated);
}

TEST(Validity, LongerThanTheTest) {
  Aged aged;
  aged.hours = 950.0;
  EXPECT_EQ(reach_within(limits(), use(25, 0.5, 0.5), aged), Reach::kExtrapolated);
  aged.hours = 850.0;
  aged.full_cycles = 49.5;
  EXPECT_EQ(reach_within(limits(), use(25, 0.5, 0.5), aged), Reach::kExtrapolated);
  aged.full_cycles = 48.0;
  EXPECT_EQ(reach_within(limits(), use(25, 0.5, 0.5), aged), Reach::kInside);
}

// Cells drawn below their rated capacity stand below 0: no reason to call them outside where no limit is
// known.
TEST(Validity, ALittleBelowEmpty) {
  Validity validity;
  EXPECT_EQ(reach_within(validity, use(25, -0.03, 0.5), {}), Reach::kInside);
  EXPECT_EQ(reach_within(validity, use(25, 1.001, 0.5), {}), Reach::kInside);
}

// A hundredth of the hours beyond a limit is let pass, more is not.
TEST(Validity, AFewColdHours) {
  Exposure exposure = use(25, 0.5, 0.5);
  exposure.dwell = {{25.0, 0.5, 99.5}, {-5.0, 0.5, 0.5}};
  EXPECT_EQ(reach_within(limits(), exposure, {}), Reach::kInside);
  exposure.dwell = {{25.0, 0.5, 98.0}, {-5.0, 0.5, 2.0}};
  EXPECT_EQ(reach_within(limits(), exposure, {}), Reach::kOutside);
}

TEST(Validity, WhatALawDoesNotSpeakOfIsNotAsked) {
  Validity validity = limits();
  validity.swings = false;
  Exposure exposure = use(25, 0.5, 0.5);
  exposure.swings[0].temperature_C = -20.0;
  EXPECT_EQ(reach_within(validity, exposure, {}), Reach::kInside);
  validity.rests = false;
  exposure.dwell[0].temperature_C = -20.0;
  EXPECT_EQ(reach_within(validity, exposure, {}), Reach::kInside);
  validity.estimated = true;
  EXPECT_EQ(reach_within(validity, exposure, {}), Reach::kExtrapolated);
}

// A law reaches no farther than the part that reaches least, and counts hours and cycles once.
TEST(ComposedLaw, WorstPartAndOneCount) {
  Validity wide = limits();
  wide.coldest_C = -30.0;
  wide.tested_from_C = -30.0;
  const ComposedLaw law(
      {std::make_shared<NaumannStorage>(NaumannStorageConstants{1e-5, 2e4, 0.0, 1.0}, wide),
       std::make_shared<NaumannStorage>(NaumannStorageConstants{1e-5, 2e4, 0.0, 1.0}, limits())});
  EXPECT_EQ(law.reach(use(10, 0.5, 0.5), {}), Reach::kExtrapolated);
  EXPECT_EQ(law.reach(use(25, 0.5, 0.5), {}), Reach::kInside);
  Aged aged;
  law.age(aged, use(25, 0.5, 0.5), 3.0);
  EXPECT_DOUBLE_EQ(aged.hours, 300.0);
  EXPECT_DOUBLE_EQ(aged.full_cycles, 3.0);
}

// Cubes of the charge fitted in the middle go below nought at the ends for other constants: held at 0.
TEST(NaumannParts, NeverGiveBack) {
  const NaumannStorage storage({1e-5, 2e4, 10.0, 0.5}, {});
  EXPECT_EQ(storage.rate_per_root_s(25.0, 0.0), 0.0);
  NaumannCyclingConstants constants;
  constants.base = 0.1;
  constants.cubic = 10.0;
  constants.middle = 0.5;
  constants.centre_depth = 0.6;
  EXPECT_EQ(NaumannCycling(constants, {}).loss_per_root_cycle(0.5, 0.1), 0.0);
}

}  // namespace
}  // namespace voltwright::ageing
