// Series resistance and two relaxation pairs, as in Chen and Rincon-Mora 2006 and Plett 2004. Voltages after
// a step are in tests/published/cells/checks.json; here the mean over a step.
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

// Pairs charged to 0.10 and 0.05 V, R0 8 mohm, 5 mohm 20 s, 4 mohm 300 s: the mean voltage over the step is
// the mean of the exact course of the voltage: Simpson's rule over 600 parts; tolerance 1e-9 V.
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
