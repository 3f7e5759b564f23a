// The record of manganese-rich cells against pulses and rests of a measured pouch cell at 25 and 10 degC
// (GitHub batterysim/equiv-circ-model, MIT licence): 30 A for 30 s at ten charges, 18 min of 10 A between
// them, an hour of rest before each. State of charge counts in 30.6 Ah from full.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/published/replay/measured_log.h"
#include "tests/published/replay/pouch_cell.h"

namespace voltwright::published {
namespace {

constexpr double kPulse_A = 30.0;
constexpr double kTolerance_V = 0.015;

/// Voltage below rest over the current, mean over the second that ends at `seconds`.
double apparent_ohm(const RecordCell& cell, double charge, double temperature_C, double seconds) {
  const auto p = cell.parameters();
  const bank::State<double> state = RecordCell::rested(charge, temperature_C, 0.0);
  const double rest_V = bank::terminal<double>(p, state).source_V;
  const bank::LabRun run = bank::discharge_at_current(p, state, kPulse_A, 0.0, temperature_C, seconds);
  return (rest_V - run.points.back().bank_V) / kPulse_A;
}

struct Row {
  double charge, at_25C_mohm, at_10C_mohm;
};

// Resistance after 10 s of 30 A; tolerance 15 mV, that is 0.5 mohm. The row at 6 % holds it too.
TEST(PouchPulse, TenSeconds) {
  const RecordCell cell("lmo", kPouchCell);
  for (const Row& row : {Row{1.0, 2.600, 3.933},
                         {0.896, 2.133, 3.367},
                         {0.792, 2.200, 3.400},
                         {0.688, 2.000, 3.200},
                         {0.584, 2.033, 3.200},
                         {0.480, 2.033, 3.200},
                         {0.376, 2.033, 3.167},
                         {0.272, 2.033, 3.233},
                         {0.168, 2.067, 3.267},
                         {0.064, 2.533, 3.900}}) {
    for (const auto& [temperature_C, mohm] : {std::pair{25.0, row.at_25C_mohm}, {10.0, row.at_10C_mohm}}) {
      const double computed_mohm = 1e3 * apparent_ohm(cell, row.charge, temperature_C, 10.0);
      print_residual(temperature_C > 20.0 ? "10 s at 25 degC, charge" : "10 s at 10 degC, charge", row.charge,
                     mohm, computed_mohm, "mohm");
      EXPECT_NEAR(computed_mohm, mohm, 1e3 * kTolerance_V / kPulse_A) << row.charge << ", " << temperature_C;
    }
  }
}

// The course of the pulse at 48 % charge, 25 degC; the engine's value is the mean over the second before.
TEST(PouchPulse, CourseAtHalfCharge) {
  const RecordCell cell("lmo", kPouchCell);
  for (const auto& [seconds, mohm] : {std::pair{4.0, 1.800},
                                      {7.0, 1.900},
                                      {10.0, 2.000},
                                      {13.0, 2.100},
                                      {16.0, 2.167},
                                      {19.0, 2.233},
                                      {22.0, 2.333},
                                      {25.0, 2.400},
                                      {28.0, 2.467}}) {
    const double computed_mohm = 1e3 * apparent_ohm(cell, 0.48, 25.0, seconds);
    print_residual("48 % charge, after s", seconds, mohm, computed_mohm, "mohm");
    EXPECT_NEAR(computed_mohm, mohm, 1e3 * kTolerance_V / kPulse_A);
  }
  EXPECT_NEAR(1e3 * apparent_ohm(cell, 0.48, 25.0, 30.0), 2.500, 1e3 * kTolerance_V / kPulse_A);
  EXPECT_NEAR(1e3 * apparent_ohm(cell, 0.48, 10.0, 30.0), 3.833, 1e3 * kTolerance_V / kPulse_A);
}

// R(10 degC) / R(25 degC) after 10 s at half charge, measured 1.574; tolerance 0.03, the 1 mV
// of the two readings. R(40 degC) / R(25 degC) was read as 0.95 from a file that may be of another specimen;
// the discharges that warm the cell ask for less than that and more than 0.75, which a law of 35 kJ/mol
// gives.
TEST(PouchPulse, ColdAndWarm) {
  const RecordCell cell("lmo", kPouchCell);
  const double at_25C = apparent_ohm(cell, 0.48, 25.0, 10.0);
  const double cold = apparent_ohm(cell, 0.48, 10.0, 10.0) / at_25C;
  const double warm = apparent_ohm(cell, 0.48, 40.0, 10.0) / at_25C;
  print_residual("R(10)/R(25)", 0.48, 1.574, cold, "");
  print_residual("R(40)/R(25)", 0.48, 0.951, warm, "");
  EXPECT_NEAR(cold, 1.574, 0.03);
  EXPECT_GT(warm, 0.75);
  EXPECT_LT(warm, 0.951);
}

// After 18 min at 10 A the cell was let rest: 3.867 V on load, 3.895 after 60 s, 3.905 after 540 s, 3.909 V
// after an hour, at 48 % charge and 25 degC.
TEST(PouchPulse, RestAfterTenAmperes) {
  const RecordCell cell("lmo", kPouchCell);
  const auto p = cell.parameters();
  const auto loaded = bank::discharge_at_current(p, RecordCell::rested(0.48 + 3.0 / 30.6, 25.0, 0.0), 10.0,
                                                 0.0, 25.0, 1080.0);
  print_residual("on load", 0.0, 3.867, loaded.points.back().bank_V, "V");
  EXPECT_NEAR(loaded.points.back().bank_V, 3.867, kTolerance_V);
  for (const auto& [seconds, volt] :
       {std::pair{60.0, 3.895}, {120.0, 3.898}, {540.0, 3.905}, {1740.0, 3.908}, {3600.0, 3.909}}) {
    const auto rest = bank::discharge_at_current(p, loaded.state, 0.0, 0.0, 25.0, seconds);
    print_residual("rest after s", seconds, volt, rest.points.back().bank_V, "V");
    EXPECT_NEAR(rest.points.back().bank_V, volt, kTolerance_V);
  }
}

constexpr int kPulseStep = 6;
constexpr int kRestStep = 10;

// Every row of the pulse tests from the first pulse on: pulse voltages after 10 s and at the end, and the end
// of each rest, above 10 % charge. What a first second misses is not looked at (a pair faster than 5 s).
TEST(PouchPulse, MeasuredRows) {
  const RecordCell cell("lmo", kPouchCell);
  for (const auto& [file, temperature_C] :
       {std::pair{"cell-low-current-hppc-25c-2.csv", 25.0}, {"cell-low-current-hppc-10c.csv", 10.0}}) {
    const auto rows = read_log(file);
    if (!rows) GTEST_SKIP() << "the measured files are not here";
    const auto first =
        std::find_if(rows->begin(), rows->end(), [](const LogRow& r) { return r.step == kPulseStep; });
    ASSERT_NE(first, rows->begin());
    ASSERT_NE(first, rows->end());
    const std::vector<LogRow> driven(first, rows->end());
    const auto computed =
        replay(cell, RecordCell::rested(1.0, temperature_C, 0.0), driven, (first - 1)->time_s, temperature_C);
    int looked_at = 0;
    double began_s = 0.0;
    for (std::size_t i = 0; i < driven.size(); ++i) {
      const bool first_of_step = i == 0 || driven[i].step != driven[i - 1].step;
      const bool last_of_step = i + 1 == driven.size() || driven[i + 1].step != driven[i].step;
      if (first_of_step) began_s = driven[i].time_s;
      const bool after_10s = std::fabs(driven[i].time_s - began_s - 9.5) < 0.01;
      const bool pulse = driven[i].step == kPulseStep && (after_10s || last_of_step);
      const bool rest = driven[i].step == kRestStep && last_of_step;
      if (computed[i].charge < 0.1 || !(pulse || rest)) continue;
      ++looked_at;
      print_residual(rest ? "end of a rest, charge" : "pulse, charge", computed[i].charge,
                     driven[i].voltage_V, computed[i].voltage_V, "V");
      EXPECT_NEAR(computed[i].voltage_V, driven[i].voltage_V, kTolerance_V)
          << file << ' ' << driven[i].time_s;
    }
    EXPECT_GE(looked_at, 25);
  }
}

}  // namespace
}  // namespace voltwright::published
