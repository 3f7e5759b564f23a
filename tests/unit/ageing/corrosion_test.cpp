// The layer that grows in two regimes at once: against small steps, and however it is divided.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/ageing/schiffer.h"

namespace voltwright::ageing {
namespace {

/// Small explicit steps in v = w^(5/3), whose rate is finite where w begins: v' = 5/3 (slow + fast w^(2/3)).
double in_small_steps(double layer, double slow, double fast, double times) {
  constexpr int kSteps = 200000;
  double v = std::pow(layer, 5.0 / 3.0);
  const double dt = times / kSteps;
  const auto rate = [&](double at) { return 5.0 / 3.0 * (slow + fast * std::pow(at, 0.4)); };
  for (int i = 0; i < kSteps; ++i) v += dt * rate(v + 0.5 * dt * rate(v));
  return std::pow(v, 0.6);
}

TEST(Corroded, AgainstSmallSteps) {
  for (const double slow : {1e-6, 1e-3, 0.1}) {
    for (const double fast : {1e-6, 1e-3, 0.1}) {
      for (const double layer : {0.0, 0.02, 0.9}) {
        const double exact = corroded(layer, slow, fast, 5.0);
        EXPECT_NEAR(exact, in_small_steps(layer, slow, fast, 5.0), 1e-5 * exact) << slow << ' ' << fast;
      }
    }
  }
}

TEST(Corroded, EndsOfTheRange) {
  EXPECT_DOUBLE_EQ(corroded(0.3, 0.0, 0.02, 10.0), 0.5);
  EXPECT_EQ(corroded(0.3, 0.0, 0.0, 10.0), 0.3);
  EXPECT_NEAR(corroded(0.3, 0.001, 0.02, 0.0), 0.3, 1e-15);
  EXPECT_EQ(corroded(0.0, 0.001, 0.02, 0.0), 0.0);
  // A vanishing part changes nothing.
  EXPECT_NEAR(corroded(0.1, 0.01, 1e-14, 20.0), corroded(0.1, 0.01, 0.0, 20.0), 1e-10);
  EXPECT_NEAR(corroded(0.1, 1e-14, 0.01, 20.0), corroded(0.1, 0.0, 0.01, 20.0), 1e-10);
}

TEST(Corroded, ChunksDoNotMatter) {
  for (const double slow : {0.0, 1e-7, 1e-3, 0.2}) {
    for (const double fast : {0.0, 1e-7, 1e-3, 0.2}) {
      double pieces = 0.0;
      for (int i = 0; i < 12; ++i) pieces = corroded(pieces, slow, fast, 0.25);
      const double whole = corroded(0.0, slow, fast, 3.0);
      EXPECT_NEAR(pieces, whole, 1e-12 * whole) << slow << ' ' << fast;
    }
  }
}

}  // namespace
}  // namespace voltwright::ageing
