// A directly coupled module against the published explicit curve.
#include "engine/sky/coupled_module.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace voltwright::sky {
namespace {

Module module_of_36_cells(double power_per_K) {
  Module module;
  module.peak = units::watts(100.1);
  module.open_circuit = units::volts(22.0);
  module.short_circuit = units::amperes(6.0);
  module.at_peak_voltage = units::volts(18.0);
  module.at_peak_current = units::amperes(5.56);
  module.power_per_K = power_per_K;
  return module;
}

TEST(CoupledModule, IsTheExplicitCurveAtTheLabel) {
  // Formula of Rauschenbach 1980 recomputed independently: 5.9809 A at 13.2 V, 78.95 W of 100.10 W, 0.789.
  const CoupledModule module(module_of_36_cells(-0.004));
  const CurvePoint point = module.at(1000.0, 25.0, 13.2);
  EXPECT_NEAR(point.current_A, 5.9809, 1e-3);
  EXPECT_NEAR(13.2 * point.current_A / module.peak_W(1000.0, 25.0), 0.789, 1e-3);
}

TEST(CoupledModule, SlopeIsTheDerivative) {
  const CoupledModule module(module_of_36_cells(-0.004));
  for (const double v : {5.0, 13.2, 15.0}) {
    const double ahead_A = module.at(800.0, 60.0, v + 1e-5).current_A;
    const double behind_A = module.at(800.0, 60.0, v - 1e-5).current_A;
    EXPECT_NEAR(module.at(800.0, 60.0, v).slope_A_V, (ahead_A - behind_A) / 2e-5, 1e-4) << v;
  }
}

TEST(CoupledModule, PeakIsThatOfThePowerModel) {
  for (const double per_K : {-0.005, -0.004, -0.0025}) {
    const CoupledModule module(module_of_36_cells(per_K));
    for (const double light : {100.0, 200.0, 500.0, 1000.0}) {
      for (const double cell_C : {-20.0, 25.0, 60.0, 85.0}) {
        const double peak_W = module.peak_W(light, cell_C);
        double best_W = 0.0;
        for (int i = 0; i <= 30000; ++i) {
          best_W = std::max(best_W, 0.001 * i * module.at(light, cell_C, 0.001 * i).current_A);
        }
        EXPECT_NEAR(best_W / peak_W, 1.0, 1e-5) << light << " " << cell_C;
        EXPECT_LE(best_W, peak_W * (1.0 + 1e-9));
      }
    }
  }
}

TEST(CoupledModule, UnsoundDataSheetGivesNothing) {
  Module module = module_of_36_cells(-0.004);
  module.at_peak_voltage = units::volts(23.0);
  EXPECT_EQ(CoupledModule(module).at(1000.0, 25.0, 12.0).current_A, 0.0);
}

}  // namespace
}  // namespace voltwright::sky
