// What holds of both lead-acid laws and all kinds.
#include <gtest/gtest.h>

#include <memory>

#include "engine/ageing/depth_law.h"
#include "engine/ageing/schiffer.h"
#include "tests/laws/ageing/plate_days.h"

namespace voltwright::ageing {
namespace {

constexpr const char* kKinds[] = {"agm", "flooded", "gel"};
constexpr double kHoursPerYear = 8766.0;

std::unique_ptr<Law> depth_law(const char* kind) { return std::make_unique<DepthLaw>(lead(kind).life); }

std::unique_ptr<Law> weighted(const char* kind) {
  const cell::Chemistry& c = lead(kind);
  return std::make_unique<WeightedThroughput>(*c.plate_wear, base::curve_at(c.ocv_V, 1.0, 2.1));
}

Exposure month(const char* kind, const Day& day, int days = 30) {
  PlateDays course(lead(kind));
  course.days(days, day);
  return course.exposure();
}

/// Years to 80 %.
double years(const Law& law, const Exposure& exposure) {
  double low = 0.0;
  double high = 50.0;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    Aged aged;
    law.age(aged, exposure, middle * kHoursPerYear / exposure.hours);
    (aged.capacity() > 0.8 ? low : high) = middle;
  }
  return low;
}

TEST(LeadLaws, ChunksDoNotMatter) {
  for (const char* kind : kKinds) {
    const Exposure exposure = month(kind, {});
    for (const auto& law : {depth_law(kind), weighted(kind)}) {
      Aged whole;
      law->age(whole, exposure, 24.0);
      Aged pieces;
      for (int i = 0; i < 12; ++i) law->age(pieces, exposure, 2.0);
      EXPECT_NEAR(pieces.calendar_loss, whole.calendar_loss, 1e-12 * whole.calendar_loss) << kind;
      EXPECT_NEAR(pieces.cycle_loss, whole.cycle_loss, 1e-12 * whole.cycle_loss) << kind;
      EXPECT_NEAR(pieces.resistance_growth, whole.resistance_growth, 1e-12) << kind;
      EXPECT_NEAR(pieces.full_cycles, whole.full_cycles, 1e-12 * whole.full_cycles) << kind;
      EXPECT_NEAR(pieces.hours, whole.hours, 1e-12 * whole.hours) << kind;
    }
  }
}

TEST(LeadLaws, MoreHeatDepthAndTimeWearMore) {
  for (const char* kind : kKinds) {
    for (const auto& law : {depth_law(kind), weighted(kind)}) {
      Day day;
      const double usual = years(*law, month(kind, day));
      day.temperature_C = 38.0;
      EXPECT_LT(years(*law, month(kind, day)), usual) << kind;
      day = {};
      day.depth = 0.5;
      EXPECT_LT(years(*law, month(kind, day)), usual) << kind;
      Aged aged;
      double before = 1.0;
      for (int m = 0; m < 24; ++m) {
        law->age(aged, month(kind, {}, 5), 6.0);
        EXPECT_LT(aged.capacity(), before) << kind;
        before = aged.capacity();
      }
    }
  }
}

// Float at the stated conditions: the layer is at its limit after the float life, a fifth of the capacity.
TEST(WeightedThroughput, FloatLifeIsTheStatedOne) {
  for (const char* kind : kKinds) {
    const cell::Chemistry& c = lead(kind);
    const cell::PlateRating& rating = c.plate_wear->rating;
    PlateRecorder plates(*c.plate_wear, c.ocv_V, 100.0);
    for (int i = 0; i < 1000; ++i) plates.add({1.0, rating.float_C, rating.float_V, 0.0, 1.0});
    Exposure exposure;
    exposure.hours = 1000.0;
    exposure.dwell = {{rating.float_C, 1.0, 1000.0}};
    exposure.plates = plates.use();
    Aged aged;
    weighted(kind)->age(aged, exposure, rating.float_years * kHoursPerYear / 1000.0);
    EXPECT_NEAR(aged.corrosion, 1.0, 1e-9) << kind;
    EXPECT_NEAR(aged.calendar_loss, 0.2, 1e-9) << kind;
    EXPECT_NEAR(aged.resistance_growth, 0.2, 1e-9) << kind;
  }
}

// Only the weighted law sees that a bank is never filled: counting by depth gives the same life.
TEST(LeadLaws, OnlyTheWeightedOneSeesPartialCharge) {
  for (const char* kind : kKinds) {
    Day full;
    Day partial;
    partial.end_soc = 0.94;
    const Exposure a = month(kind, full, 90);
    const Exposure b = month(kind, partial, 90);
    EXPECT_NEAR(years(*depth_law(kind), a) / years(*depth_law(kind), b), 1.0, 0.02) << kind;
    EXPECT_GT(years(*weighted(kind), a), 1.25 * years(*weighted(kind), b)) << kind;
  }
}

TEST(WeightedThroughput, KnowsItsReach) {
  const auto law = weighted("flooded");
  Exposure exposure = month("flooded", {});
  EXPECT_EQ(law->reach(exposure, {}), Reach::kInside);
  Aged old;
  old.hours = 11.0 * kHoursPerYear;
  EXPECT_EQ(law->reach(exposure, old), Reach::kExtrapolated);
  Day never;
  never.end_soc = 0.9;
  EXPECT_EQ(law->reach(month("flooded", never, 40), {}), Reach::kExtrapolated);
  Day hot;
  hot.temperature_C = 48.0;
  EXPECT_EQ(law->reach(month("flooded", hot), {}), Reach::kOutside);
  exposure.plates = {};
  EXPECT_EQ(law->reach(exposure, {}), Reach::kOutside);
  // Without a record of the plates the law is hopeful, but not silent.
  Aged known;
  Aged blind;
  law->age(known, month("flooded", {}), 24.0);
  law->age(blind, exposure, 24.0);
  EXPECT_GT(known.cycle_loss, blind.cycle_loss);
  EXPECT_GT(blind.corrosion, 0.0);
}

}  // namespace
}  // namespace voltwright::ageing
