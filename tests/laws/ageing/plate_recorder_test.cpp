// The weights that the plates gather along a course, against small steps of the equations and by counting.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/ageing/schiffer.h"
#include "tests/laws/ageing/plate_days.h"

namespace voltwright::ageing {
namespace {

// Five hours at the ten-hour rate from full, at 2.0 V and 20 degC: weight of partial charge 1 + (c_0 + c_min
// 0.1 t) t, layers f' = (1 / 30) 0.1 t exp(-3 f) - 0.0144 f. Small explicit steps of a second; the recorder
// gathers ten minutes.
TEST(PlateRecorder, OneDischargeAgainstSmallSteps) {
  PlateRecorder recorder(*lead("flooded").plate_wear, lead("flooded").ocv_V, 100.0);
  for (int i = 1; i <= 300; ++i) recorder.add({1.0 - 0.1 * i / 60.0, 20.0, 2.0, 0.1, 1.0 / 60.0});
  double layers = 0.0;
  double weighted = 0.0;
  const double h = 1.0 / 3600.0;
  for (double t = 0.5 * h; t < 5.0; t += h) {
    layers += h * (0.1 * t / 30.0 * std::exp(-3.0 * layers) - 0.0144 * layers);
    weighted += 0.1 * h * (1.0 + (6.614e-5 + 3.307e-3 * 0.1 * t) * t) * (1.0 + layers);
  }
  const PlateUse use = recorder.use();
  EXPECT_NEAR(use.drawn, 0.5, 1e-12);
  EXPECT_NEAR(use.weighted, weighted, 2e-3 * weighted);
  EXPECT_NEAR(use.hours, 5.0, 1e-9);
  EXPECT_NEAR(use.longest_without_full_h, 4.85, 0.1);  // from 98.5 % on
}

TEST(PlateRecorder, CountsFullAndBadCharges) {
  PlateDays good(lead("agm"));
  good.days(10, {});
  EXPECT_EQ(good.exposure().plates.full_charges, 10.0);
  EXPECT_EQ(good.exposure().plates.bad_charges, 0.0);
  EXPECT_LT(good.exposure().plates.longest_without_full_h, 12.0);
  PlateDays bad(lead("agm"));
  Day day;
  day.end_soc = 0.95;
  bad.days(11, day);
  // The first day begins full and the last charge has not been followed by a discharge.
  EXPECT_EQ(bad.exposure().plates.full_charges, 0.0);
  EXPECT_NEAR(bad.exposure().plates.bad_charges, 10.0, 0.05);
  EXPECT_GT(bad.exposure().plates.longest_without_full_h, 10.9 * 24.0);
}

// A flicker of the load while charging is not the end of a charge.
TEST(PlateRecorder, FlickerEndsNoCharge) {
  PlateRecorder recorder(*lead("agm").plate_wear, lead("agm").ocv_V, 100.0);
  double soc = 1.0;
  const auto run = [&](int minutes, double per_h) {
    for (int i = 0; i < minutes; ++i) {
      soc -= per_h / 60.0;
      recorder.add({soc, 25.0, 2.2, per_h, 1.0 / 60.0});
    }
  };
  run(300, 0.1);
  for (int i = 0; i < 20; ++i) {
    run(20, -0.075);
    run(10, 0.03);
  }
  EXPECT_GT(soc, 0.85);
  EXPECT_EQ(recorder.use().bad_charges, 0.0);
}

// Drawing the same charge costs more the longer a bank goes without a full charge, the deeper it stays, and
// the more slowly it begins.
TEST(PlateRecorder, WeightsGrowWithNeglect) {
  const auto weight = [](const Day& day) {
    PlateDays days(lead("flooded"));
    days.days(60, day);
    const PlateUse use = days.exposure().plates;
    return use.weighted / use.drawn;
  };
  Day day;
  const double daily_full = weight(day);
  EXPECT_GT(daily_full, 1.0);
  day.end_soc = 0.95;
  const double never_full = weight(day);
  day.end_soc = 0.7;
  const double low = weight(day);
  EXPECT_GT(never_full, 1.5 * daily_full);
  EXPECT_GT(low, daily_full);
  Day slow;
  slow.discharge_per_h = 0.0125;
  slow.depth = 0.2;
  Day quick = slow;
  quick.discharge_per_h = 0.2;
  EXPECT_GT(weight(slow), weight(quick));
}

}  // namespace
}  // namespace voltwright::ageing
