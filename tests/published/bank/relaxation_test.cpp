// Series resistance and two relaxation pairs. The values follow from the exact solution of the pair's differential
// equation for a constant current, v' = a v + R (1 - a) I with a = exp(-dt / tau), as in Chen and Rincon-Mora 2006
// and Plett 2004, and were worked out independently of this program.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/published/bank/plain_bank.h"

namespace voltwright::published {
namespace {

constexpr double kFlat_V = 13.2;

/// Constants in ohm for a bank of 1 Ah, so that ohm and ohm * Ah are the same number.
PlainBank bank_of(double ohmic, double fast, double fast_tau_s, double slow, double slow_tau_s) {
  cell::Chemistry c = plain_chemistry(kFlat_V);
  c.resistance.ohmic_ohm_Ah = ohmic;
  c.resistance.fast_ohm_Ah = fast;
  c.resistance.fast_tau_s = fast_tau_s;
  c.resistance.slow_ohm_Ah = slow;
  c.resistance.slow_tau_s = slow_tau_s;
  return {c, 1.0};
}

// R1 1 mohm, 30 s; R2 1.5 mohm, 600 s; R0 2 mohm; 50 A from rest: after 60 s 0.0432332358 V, 0.0071371936 V and a
// drop of 0.1503704 V, in one step or in six. Tolerance: the digits given.
TEST(Relaxation, SixtySecondsAtFiftyAmperes) {
  const PlainBank plain = bank_of(0.002, 0.001, 30.0, 0.0015, 600.0);
  for (const double step_s : {10.0, 60.0}) {
    const auto p = plain.parameters(step_s);
    bank::State<double> s;
    for (double t = 0.0; t < 59.0; t += step_s) run(p, s, 50.0);
    EXPECT_NEAR(s.fast_V, 0.0432332358, 1e-9);
    EXPECT_NEAR(s.slow_V, 0.0071371936, 1e-9);
    const auto t = bank::terminal<double>(p, s);
    EXPECT_NEAR(kFlat_V - (t.instant_V - t.instant_ohm * 50.0), 0.1503704, 1e-7);
  }
}

// Huria et al. 2012, nickel-manganese-cobalt pouch cell, half charge, 20 degC: R0 8.2 mohm, R1 1.6 mohm, 29 s; 27 A
// for 30 s lower the voltage by 0.2492 V. Tolerance 1 mV, the digits of the table.
TEST(Relaxation, PouchCellPulse) {
  const PlainBank plain = bank_of(0.0082, 0.0016, 29.0, 0.0, 400.0);
  const auto p = plain.parameters(30.0);
  bank::State<double> s;
  run(p, s, 27.0);
  const auto t = bank::terminal<double>(p, s);
  EXPECT_NEAR(kFlat_V - (t.instant_V - t.instant_ohm * 27.0), 0.2492, 1e-3);
}

// Open-circuit voltage 13.2 V, pairs charged to 0.10 and 0.05 V, R0 8 mohm, 5 mohm 20 s, 4 mohm 300 s, step 60 s: at the
// end of the step the bank looks like 13.154085 V behind 13.476 mohm. Tolerance: the digits given.
TEST(Relaxation, EndOfStepForm) {
  const PlainBank plain = bank_of(0.008, 0.005, 20.0, 0.004, 300.0);
  const auto p = plain.parameters(60.0);
  for (const double current_A : {0.0, 47.970741, -77.6124}) {
    bank::State<double> s;
    s.fast_V = 0.10;
    s.slow_V = 0.05;
    run(p, s, current_A);
    const auto t = bank::terminal<double>(p, s);
    EXPECT_NEAR(t.instant_V - t.instant_ohm * current_A, 13.154085 - 0.013476 * current_A, 4e-5);
  }
}

// The same bank's mean voltage over the step is the mean of the exact course of the voltage: Simpson's rule over
// 600 parts; tolerance 1e-9 V.
TEST(Relaxation, MeanOverTheStep) {
  const PlainBank plain = bank_of(0.008, 0.005, 20.0, 0.004, 300.0);
  const auto p = plain.parameters(60.0);
  bank::State<double> s;
  s.fast_V = 0.10;
  s.slow_V = 0.05;
  const double current_A = 47.0;
  const auto voltage = [&](double at_s) {
    const double a = std::exp(-at_s / 20.0);
    const double b = std::exp(-at_s / 300.0);
    return kFlat_V - 0.008 * current_A - (0.10 * a + 0.005 * current_A * (1.0 - a)) -
           (0.05 * b + 0.004 * current_A * (1.0 - b));
  };
  constexpr int kParts = 600;
  double sum = voltage(0.0) + voltage(60.0);
  for (int i = 1; i < kParts; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * voltage(60.0 * i / kParts);
  const auto t = bank::terminal<double>(p, s);
  EXPECT_NEAR(t.source_V - t.discharge_ohm * current_A, sum / (3.0 * kParts), 1e-9);
}

}  // namespace
}  // namespace voltwright::published
