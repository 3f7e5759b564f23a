// What was measured in 885 days of storage, and how far each law misses it. The misses are stated, not tuned
// away: a law that comes nearer fails here too, until the method page says so. Measurements: bib naumann2018,
// data set.
#include <cmath>
#include <cstdio>

#include "tests/published/ageing/catalogue_laws.h"

namespace voltwright::published {
namespace {

const ageing::StorageTable& measured() {
  const auto& records = ageing_catalogue().storage;
  const auto found = std::find_if(records.begin(), records.end(),
                                  [](const auto& one) { return one.id == "lfp-storage-measured"; });
  if (found == records.end()) throw std::out_of_range("lfp-storage-measured");
  return found->table;
}

struct Target {
  double temperature_C;
  double soc;
  double days;
  double measured_percent;
  double published_percent;  // Naumann 2018 as published
  double table_percent;      // the measured rates, read as a root of time
};

// Loss measured, by the published law, by the table that is the default. Tolerance: half a unit of the last
// digit.
TEST(StorageTargets, MeasuredBesideTheLaws) {
  const Target targets[] = {{25, 0.5, 365, 2.85, 4.25, 2.94},    {25, 1.0, 365, 7.39, 6.77, 7.35},
                            {40, 0.5, 885, 9.24, 9.22, 8.79},    {40, 1.0, 885, 13.61, 14.68, 13.57},
                            {60, 0.5, 885, 20.05, 13.68, 20.19}, {10, 0.5, 885, 3.04, 4.59, 2.92}};
  for (const Target& target : targets) {
    const double law_percent =
        100.0 * rest_loss("lfp-naumann", target.temperature_C, target.soc, target.days);
    const double table_percent =
        100.0 * rest_loss("lfp-measured", target.temperature_C, target.soc, target.days);
    std::printf("%g degC, %g %%, %g days: measured %.2f, published law %.2f, table %.2f %%\n",
                target.temperature_C, 100.0 * target.soc, target.days, target.measured_percent, law_percent,
                table_percent);
    EXPECT_NEAR(law_percent, target.published_percent, 0.0055);
    EXPECT_NEAR(table_percent, target.table_percent, 0.0055);
    EXPECT_NEAR(
        ageing::over_measured(law("lfp-naumann"), measured(), target.temperature_C, target.soc, target.days) *
            target.measured_percent,
        law_percent, 1e-9);
  }
}

// The first year at 25 degC and half charge: the published laws exceed the measurement by 49 and 38 %.
TEST(StorageTargets, FirstYearIsExceeded) {
  const auto ratio = [](const char* id) {
    return ageing::over_measured(law(id), measured(), 25.0, 0.5, 365.0);
  };
  EXPECT_NEAR(ratio("lfp-naumann"), 1.49, 0.005);
  EXPECT_NEAR(ratio("lfp-schimpe"), 1.38, 0.005);
  EXPECT_NEAR(ratio("lfp-refit"), 1.32, 0.005);
  EXPECT_NEAR(ratio("lfp-measured"), 1.03, 0.005);
}

struct Misses {
  const char* id;
  double coldest_C;
  double hottest_C;
  double bias_points;
  double rms_points;
};

// Over the 85 check-ups of the record (after 30, 100, 365, 730 and 885 days), in points of capacity. All 578
// check-ups of the data set, which are closer together at the start, give root mean squares of 1.46
// (published), 1.71 (Schimpe), 1.05 (fitted to all) and, of the fit up to 40 degC over its 476, 0.68.
TEST(StorageTargets, MissesOverAllConditions) {
  const Misses rows[] = {
      {"lfp-measured", 0, 60, -0.04, 0.53}, {"lfp-naumann", 0, 60, -0.22, 1.58},
      {"lfp-naumann", 60, 60, -2.66, 3.37}, {"lfp-refit", 0, 40, 0.01, 0.67},
      {"lfp-schimpe", 0, 60, -0.54, 1.96},
  };
  for (const Misses& row : rows) {
    const auto error = ageing::storage_error(law(row.id), measured(), row.coldest_C, row.hottest_C);
    std::printf("%s, %g to %g degC, %d check-ups: bias %.2f, rms %.2f, worst %.2f points\n", row.id,
                row.coldest_C, row.hottest_C, error.check_ups, error.bias_points, error.rms_points,
                error.worst_points);
    EXPECT_NEAR(error.bias_points, row.bias_points, 0.0055) << row.id;
    EXPECT_NEAR(error.rms_points, row.rms_points, 0.0055) << row.id;
  }
}

// Ten years at 6 degC and half charge left 96 to 98 % of another lot of the cell (bib vachenauer2025,
// second-hand): every root of time is too pessimistic there, by 1.4 to 4 times.
TEST(StorageTargets, TenColdYears) {
  const double days = 10 * kYear_days;
  EXPECT_NEAR(100.0 * rest_loss("lfp-naumann", 6, 0.5, days), 8.4, 0.05);
  EXPECT_NEAR(100.0 * rest_loss("lfp-schimpe", 6, 0.5, days), 7.1, 0.05);
  EXPECT_NEAR(100.0 * rest_loss("lfp-refit", 6, 0.5, days), 6.5, 0.05);
  EXPECT_NEAR(100.0 * rest_loss("lfp-measured", 6, 0.5, days), 5.4, 0.05);
}

// Resistance after 885 days at half charge: measured 5.53 % at 25 degC and 17.79 % at 40 degC, law 4.1
// and 16.3 %.
TEST(StorageTargets, Resistance) {
  const auto growth = [](double temperature_C) {
    return 100.0 * ageing::stored(law("lfp-measured"), temperature_C, 0.5, 885.0).resistance_growth;
  };
  EXPECT_NEAR(growth(25), 4.1, 0.05);
  EXPECT_NEAR(growth(40), 16.3, 0.05);
  EXPECT_NEAR(growth(25) / 5.53, 0.74, 0.01);
  EXPECT_NEAR(growth(40) / 17.79, 0.92, 0.01);
}

// Another iron-phosphate cell, 1.5 Ah, full at 60 degC for 120 days (bib geisbauer2022): 13.0 to 19.8 % lost;
// the measured cell lost 10.0 %. Cells differ by a factor that no law of one cell shows.
TEST(StorageTargets, AnotherCellKeptFullInTheHeat) {
  const double table_percent = 100.0 * rest_loss("lfp-measured", 60, 1.0, 120);
  EXPECT_NEAR(table_percent, 8.8, 0.05);
  EXPECT_LT(table_percent, 13.0);
}

// Half charge instead of full halves the first year at 25 degC and more (measured -61 %); 87.5 instead of 100
// % at 40 degC saves nothing in the first year (8.71 against 8.66 %). Read off the measured table; the
// published law claims a gain that the data do not show.
TEST(StorageTargets, WhatAChargeCeilingGains) {
  EXPECT_NEAR(rest_loss("lfp-measured", 25, 0.5, 365) / rest_loss("lfp-measured", 25, 1.0, 365), 0.39, 0.015);
  EXPECT_NEAR(rest_loss("lfp-measured", 40, 0.875, 365) / rest_loss("lfp-measured", 40, 1.0, 365), 1.0, 0.05);
  EXPECT_LT(rest_loss("lfp-naumann", 40, 0.875, 365) / rest_loss("lfp-naumann", 40, 1.0, 365), 0.80);
}

}  // namespace
}  // namespace voltwright::published
