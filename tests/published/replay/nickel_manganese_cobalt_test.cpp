// The record of nickel-manganese-cobalt cells against the measured discharges of a 12.5 Ah pouch cell at
// 25 degC (GitHub FaradayInstitution/BPX, validation block of the NMC example).
#include <gtest/gtest.h>

#include <vector>

#include "tests/published/replay/record_cell.h"

namespace voltwright::published {
namespace {

/// 13.03 Ah at C/20; 0.128 L at 1847 kg/m3 and 0.0379 m2 as the example states, at 12 W/m2K in still air.
constexpr Specimen kPouch{13.03, 0.2364, 12.0 * 0.0379};
constexpr double kTolerance_V = 0.015;

bank::LabRun discharge(const RecordCell& cell, double current_A, double seconds) {
  return bank::discharge_at_current(cell.parameters(), RecordCell::rested(1.0, 25.0, 0.0), current_A, 2.5,
                                    25.0, seconds);
}

struct Sample {
  double time_s, volt;
};

void expect_samples(const RecordCell& cell, double current_A, const std::vector<Sample>& samples) {
  const bank::LabRun run = discharge(cell, current_A, samples.back().time_s + 1.0);
  for (const Sample& s : samples) {
    const double computed_V = run.voltage_at(current_A * s.time_s / 3600.0);
    print_residual("voltage after s", s.time_s, s.volt, computed_V, "V");
    EXPECT_NEAR(computed_V, s.volt, kTolerance_V) << s.time_s;
  }
}

// C/20, 0.625 A, 5 to 95 % charge.
TEST(NickelManganeseCobalt, SlowDischarge) {
  const RecordCell cell("nmc", kPouch);
  expect_samples(cell, 0.625,
                 {{5000.0, 4.0995},
                  {10000.0, 4.0219},
                  {15000.0, 3.9473},
                  {20000.0, 3.8719},
                  {25000.0, 3.7948},
                  {30000.0, 3.7317},
                  {35000.0, 3.6886},
                  {40000.0, 3.6575},
                  {45000.0, 3.6330},
                  {50000.0, 3.6088},
                  {55000.0, 3.5789},
                  {60000.0, 3.5386},
                  {65000.0, 3.4920},
                  {70000.0, 3.4422}});
}

// 1C, 12.5 A, 5 to 95 % charge.
TEST(NickelManganeseCobalt, OneC) {
  const RecordCell cell("nmc", kPouch);
  expect_samples(cell, 12.5,
                 {{200.0, 4.0107},
                  {400.0, 3.9427},
                  {600.0, 3.8763},
                  {800.0, 3.8113},
                  {1000.0, 3.7505},
                  {1200.0, 3.6955},
                  {1400.0, 3.6468},
                  {1600.0, 3.6042},
                  {1800.0, 3.5686},
                  {2000.0, 3.5383},
                  {2200.0, 3.5103},
                  {2400.0, 3.4850},
                  {2600.0, 3.4610},
                  {2800.0, 3.4353},
                  {3000.0, 3.4071},
                  {3200.0, 3.3720},
                  {3400.0, 3.3122},
                  {3500.0, 3.2570}});
}

// Whole polarisation at 1C: the open-circuit voltage of the example's electrode functions less the voltage on
// load, over 12.5 A: 8.66, 9.51 and 9.94 mohm. Tolerance 0.2 mohm, that is 2.5 mV.
TEST(NickelManganeseCobalt, Polarisation) {
  const RecordCell cell("nmc", kPouch);
  const bank::LabRun run = discharge(cell, 12.5, 3100.0);
  struct Row {
    double time_s, open_circuit_V, mohm;
  };
  for (const Row& row : {Row{1000.0, 3.8588, 8.66}, {2000.0, 3.6572, 9.51}, {3000.0, 3.5313, 9.94}}) {
    const double computed_mohm =
        1e3 * (row.open_circuit_V - run.voltage_at(12.5 * row.time_s / 3600.0)) / 12.5;
    print_residual("polarisation after s", row.time_s, row.mohm, computed_mohm, "mohm");
    EXPECT_NEAR(computed_mohm, row.mohm, 0.2);
  }
}

// Another pouch cell of the kind, 27 Ah (Huria and others 2012): settled resistance at 5 degC over that at
// 20 degC, mean of 10 to 90 % charge, 1.44; tolerance 5 %. At 40 degC it was 0.96 and the law gives 0.82: the
// measured cell has a floor that one activation energy cannot give together with the cold.
TEST(NickelManganeseCobalt, Cold) {
  const cell::Resistance& r = chemistry("nmc").resistance;
  const double at_20C = cell::resistance_factor(r, 20.0);
  print_residual("R(5)/R(20)", 5.0, 1.44, cell::resistance_factor(r, 5.0) / at_20C, "");
  print_residual("R(40)/R(20)", 40.0, 0.96, cell::resistance_factor(r, 40.0) / at_20C, "");
  EXPECT_NEAR(cell::resistance_factor(r, 5.0) / at_20C, 1.44, 0.07);
  EXPECT_LT(cell::resistance_factor(r, 40.0) / at_20C, 0.96);
}

}  // namespace
}  // namespace voltwright::published
