// The integrator by itself, against closed forms. Tolerances: its own relative 1e-9 summed over some hundred
// steps.
#include "tests/oracle/integrator.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

namespace voltwright::oracle {
namespace {

TEST(Integrator, FollowsStiffDecay) {
  // y' = -1000 (y - cos t): the fast part is gone at once; y = (1000^2 cos t + 1000 sin t) / (1000^2 + 1)
  // after it.
  constexpr double kFast = 1000.0;
  Integrator integrator({0.0}, {1e-12}, [](double t, std::span<const double> y, std::span<double> dydt) {
    dydt[0] = -kFast * (y[0] - std::cos(t));
  });
  for (const double t : {1.0, 2.0, 10.0}) {
    integrator.run_to(t);
    const double exact = (kFast * kFast * std::cos(t) + kFast * std::sin(t)) / (kFast * kFast + 1.0);
    EXPECT_NEAR(integrator.state()[0], exact, 1e-7);
  }
}

TEST(Integrator, StopsWhereAFunctionIsNought) {
  // A swing: cos t is nought at pi / 2 falling and at 3 pi / 2 rising.
  Integrator integrator(
      {1.0, 0.0}, {1e-12, 1e-12},
      [](double, std::span<const double> y, std::span<double> dydt) {
        dydt[0] = y[1];
        dydt[1] = -y[0];
      },
      1, [](double, std::span<const double> y, std::span<double> g) { g[0] = y[0]; });
  const Stop falling = integrator.run_to(10.0);
  EXPECT_NEAR(falling.t_s, 0.5 * std::numbers::pi, 1e-6);
  ASSERT_TRUE(falling.met(0));
  EXPECT_EQ(falling.crossed[0], -1);
  const Stop rising = integrator.run_to(10.0);
  EXPECT_NEAR(rising.t_s, 1.5 * std::numbers::pi, 1e-6);
  ASSERT_TRUE(rising.met(0));
  EXPECT_EQ(rising.crossed[0], 1);
  const Stop end = integrator.run_to(7.0);
  EXPECT_FALSE(end.met(0));
  EXPECT_EQ(end.t_s, 7.0);
}

TEST(Integrator, BeginsAnewAfterAJump) {
  double slope = 1.0;
  Integrator integrator({0.0}, {1e-12},
                        [&](double, std::span<const double>, std::span<double> dydt) { dydt[0] = slope; });
  integrator.run_to(5.0);
  slope = -2.0;
  integrator.state()[0] += 100.0;
  integrator.restart();
  integrator.run_to(8.0);
  EXPECT_NEAR(integrator.state()[0], 105.0 - 6.0, 1e-7);
  EXPECT_EQ(integrator.time_s(), 8.0);
  EXPECT_GT(integrator.steps(), 0);
}

TEST(Integrator, ErrorsBecomeExceptions) {
  Integrator blown({1.0}, {1e-12}, [](double, std::span<const double> y, std::span<double> dydt) {
    dydt[0] = y[0] * y[0];  // infinite at t = 1
  });
  EXPECT_THROW(blown.run_to(2.0), std::runtime_error);
  Integrator thrown({1.0}, {1e-12}, [](double, std::span<const double>, std::span<double>) {
    throw std::logic_error("of the right-hand side");
  });
  EXPECT_THROW(thrown.run_to(1.0), std::logic_error);
  const Slope still = [](double, std::span<const double>, std::span<double> dydt) { dydt[0] = 0.0; };
  EXPECT_THROW(Integrator({1.0}, {1e-9, 1e-9}, still), std::runtime_error);
}

}  // namespace
}  // namespace voltwright::oracle
