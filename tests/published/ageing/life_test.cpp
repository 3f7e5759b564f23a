// Calendar life against temperature; cycle life against depth is in tests/published/cells/checks.json.
#include "engine/ageing/life.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/ageing/depth_law.h"

namespace voltwright::ageing {
namespace {

constexpr double kHoursPerYear = 8766.0;

/// Ten years at 20 degC.
cell::LifeFigures ten_years_at_20(double halving_K) {
  const double at_25 = 10.0 * std::exp2(-5.0 / halving_K);
  cell::LifeFigures life;
  life.cycles = {1000.0, 1000.0, 1000.0};
  life.depth = 0.5;
  life.depth_exponent = 1.0;
  life.calendar_years = {at_25, at_25, at_25};
  life.halving_K = halving_K;
  return life;
}

double years_at(const cell::LifeFigures& life, double temperature_C) {
  return 1.0 / (calendar_wear_per_h(life, temperature_C) * kHoursPerYear);
}

// Lead-acid life halves for every 10 K above 25 degC (two independent texts): 0.5 at 35, 0.25 at 45 degC.
// Exact.
TEST(CalendarLife, HalvesEveryTenKelvin) {
  cell::LifeFigures life;
  life.calendar_years = {5.0, 8.0, 12.0};
  life.halving_K = 10.0;
  const double at_25 = calendar_wear_per_h(life, 25.0);
  EXPECT_DOUBLE_EQ(at_25 * 8.0 * 8766.0, 1.0);
  EXPECT_DOUBLE_EQ(calendar_wear_per_h(life, 35.0), 2.0 * at_25);
  EXPECT_DOUBLE_EQ(calendar_wear_per_h(life, 45.0), 4.0 * at_25);
}

// L = 10 years x 2^((20 - T) / 10), and per 15 K; computed from the formula of several published rules.
TEST(CalendarLife, OfTenYearsAtTwentyDegrees) {
  const cell::LifeFigures life = ten_years_at_20(10.0);
  EXPECT_NEAR(years_at(life, 25.0), 7.0711, 5e-5);
  EXPECT_NEAR(years_at(life, 30.0), 5.0, 1e-12);
  EXPECT_NEAR(years_at(life, 35.0), 3.5355, 5e-5);
  EXPECT_NEAR(years_at(life, 40.0), 2.5, 1e-12);
  EXPECT_NEAR(years_at(life, 45.0), 1.7678, 5e-5);
  EXPECT_NEAR(years_at(ten_years_at_20(15.0), 25.0), 7.9370, 5e-5);
  EXPECT_NEAR(years_at(ten_years_at_20(15.0), 35.0), 5.0, 1e-12);
}

// The speed is averaged, not the temperature: months of 20 + 10 sin wear 1.12377 times as fast as 20
// degC, 8.8986 years of ten (computed from the formula).
TEST(CalendarLife, OfASinusoidalYear) {
  const cell::LifeFigures life = ten_years_at_20(10.0);
  std::vector<Dwell> year;
  for (int i = 0; i < 12; ++i) {
    const double angle = 2.0 * std::numbers::pi * (i + 0.5) / 12.0;
    year.push_back({20.0 + 10.0 * std::sin(angle), 1.0, kHoursPerYear / 12.0});
  }
  EXPECT_NEAR(calendar_share(life, year) * 10.0, 1.12377, 1e-5);
  EXPECT_NEAR(1.0 / calendar_share(life, year), 8.8986, 5e-5);
}

// Cycles and time added: 7.0711 years in float and 365 cycles a year of 1000 make 1.9746 years (Spiers and
// Rasinkoski 1996 take the lesser of the two, 2.7 years; adding them is more careful).
TEST(CalendarLife, AddsToCycles) {
  const cell::LifeFigures life = ten_years_at_20(10.0);
  Exposure year;
  year.hours = kHoursPerYear;
  year.dwell = {{25.0, 0.9, kHoursPerYear}};
  year.swings = {{0.5, 0.75, 365.0}};
  EXPECT_NEAR(years_of_life(wear_of(life, year, Spread::kTypical), 1.0), 1.9746, 5e-5);
  Aged aged;
  DepthLaw(life).age(aged, year, 1.9746);
  EXPECT_NEAR(aged.capacity(), 0.8, 1e-5);
}

}  // namespace
}  // namespace voltwright::ageing
