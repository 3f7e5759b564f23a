// Measured lives and fleets beside the laws; deviations are stated, not tuned away.
#include <cmath>
#include <cstdio>

#include "engine/ageing/schmalstieg.h"
#include "tests/published/ageing/catalogue_laws.h"

namespace voltwright::published {
namespace {

// Home stores in the field lose 2 to 3 points a year (bib figgener2024). At 20 degC and half charge with 200
// full cycles a year of 60 % at C/3, the published laws of storage and cycling lose 3.2, 2.5 and 2.0 points a
// year over 3, 5 and 8 years: within the band from the fourth year on.
TEST(CyclingTargets, HomeStore) {
  ageing::Exposure year;
  year.hours = 8760.0;
  year.dwell = {{20.0, 0.5, 8760.0}};
  year.swings = {{0.6, 0.5, 200.0 / 0.6, 1.0 / 3.0, 1.0 / 3.0, 20.0}};
  const double expected[][2] = {{3, 3.2}, {5, 2.5}, {8, 2.0}};
  for (const auto& [years, points_per_year] : expected) {
    ageing::Aged aged;
    law("lfp-naumann").age(aged, year, years);
    std::printf("%g years: %.2f points a year\n", years, 100.0 * (1.0 - aged.capacity()) / years);
    EXPECT_NEAR(100.0 * (1.0 - aged.capacity()) / years, points_per_year, 0.05);
  }
}

// 48 nickel-manganese-cobalt cells of the 2.05 Ah type reached 80 % after 608 full cycles of about 60 % depth
// (bib nmc48), past a knee near 87 %. The law, which has no knee, says 928 by the mean voltage of 20 to 80 %,
// 943 at 3.70 V, 1045 at 3.70 V for a rating of 1.85 Ah: 1.5 to 1.7 times too long. Were throughput counted
// one way only it would be twice that.
TEST(CyclingTargets, FortyEightCells) {
  ageing::Exposure cycle;
  cycle.swings = {{0.6, 0.5, 1.0, 1.0, 1.0, 35.0}};
  const double full_cycles = 0.6 * ageing::repetitions_until(law("nmc-schmalstieg"), cycle, 0.8, 1e6);
  std::printf("48 cells: measured 608, law %.0f full cycles to 80 %%, ratio %.2f\n", full_cycles,
              full_cycles / 608.0);
  EXPECT_NEAR(full_cycles, 928.3, 0.5);
  EXPECT_NEAR(full_cycles / 608.0, 1.53, 0.005);
  const double at_3V70 = 7.348e-3 * (3.70 - 3.667) * (3.70 - 3.667) + 7.60e-4 + 4.081e-3 * 0.6;
  EXPECT_NEAR(0.2 * 0.2 / (at_3V70 * at_3V70) / (2.0 * 2.05), 943.0, 0.5);
  EXPECT_NEAR(0.2 * 0.2 / (at_3V70 * at_3V70) / (2.0 * 1.85), 1045.0, 0.5);
}

// Ten years of one 80 % cycle a day at C/2, 25 degC around half charge (2920 full cycles): three laws, a
// factor of 1.9 between them.
TEST(CyclingTargets, SpreadBetweenLaws) {
  ageing::Exposure day;
  day.hours = 24.0;
  day.dwell = {{25.0, 0.5, 24.0}};
  day.swings = {{0.8, 0.5, 1.0, 0.5, 0.5, 25.0}};
  const auto lost = [&](const char* id) {
    ageing::Aged aged;
    law(id).age(aged, day, 3650.0);
    return 100.0 * (1.0 - aged.capacity());
  };
  EXPECT_NEAR(lost("lfp-naumann"), 21.26, 0.005);
  EXPECT_NEAR(lost("lfp-schimpe"), 15.37, 0.005);
  EXPECT_NEAR(lost("lfp-wang"), 11.22, 0.005);
}

// Common practice, no source: manganese oxide lasts shorter than nickel-manganese-cobalt. Handbook figures
// say so (300 to 700 against 1000 to 2000 cycles), the published laws say the opposite: one cycle of 80 % a
// day at 25 degC about half charge is carried 7 years by the one and less than 2 by the other. Cycle figures
// beside cycle figures keep the order.
TEST(CyclingTargets, ManganeseAgainstTheTrade) {
  ageing::Exposure day;
  day.hours = 24.0;
  day.dwell = {{25.0, 0.5, 24.0}};
  day.swings = {{0.8, 0.5, 1.0, 0.5, 0.5, 25.0}};
  const auto years = [&](const char* id) {
    return ageing::repetitions_until(law(id), day, 0.8, 1e5) / kYear_days;
  };
  std::printf("manganese oxide %.2f, nickel-manganese-cobalt %.2f years\n", years("lmo-xu"),
              years("nmc-schmalstieg"));
  EXPECT_NEAR(years("lmo-xu"), 6.85, 0.05);
  EXPECT_NEAR(years("nmc-schmalstieg"), 1.5, 0.1);
  EXPECT_LT(years("lmo-points"), years("nmc-points"));
}

}  // namespace
}  // namespace voltwright::published
