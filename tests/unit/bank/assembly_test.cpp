#include "engine/bank/assembly.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::bank {
namespace {

Battery battery() {
  Battery b;
  b.nominal_V = 12.8;
  b.capacity_Ah = 100.0;
  b.cells_in_series = 4;
  b.mass_kg = {10.0, 12.0, 14.0};
  b.volume_L = {9.0, 11.0, 13.0};
  b.price = {200.0, 250.0, 300.0};
  b.continuous_A = 100.0;
  b.peak_A = 200.0;
  b.charge_A = 50.0;
  b.extra_resistance_ohm = 0.002;
  b.over_voltage_V = 14.8;
  b.under_voltage_V = 10.0;
  b.under_voltage_release_V = 11.0;
  return b;
}

TEST(BankFigures, SeriesAddsVoltageParallelAddsCurrent) {
  const BankFigures f = bank_figures(battery(), {2, 3, 0.0});
  EXPECT_DOUBLE_EQ(f.nominal_V, 25.6);
  EXPECT_DOUBLE_EQ(f.capacity_Ah, 300.0);
  EXPECT_DOUBLE_EQ(f.nominal_Wh, 25.6 * 300.0);
  EXPECT_DOUBLE_EQ(f.mass_kg.typical, 72.0);
  EXPECT_DOUBLE_EQ(f.volume_L.max, 78.0);
  EXPECT_DOUBLE_EQ(f.price.min, 1200.0);
  EXPECT_DOUBLE_EQ(f.continuous_A, 300.0);
  EXPECT_DOUBLE_EQ(f.peak_A, 600.0);
  EXPECT_DOUBLE_EQ(f.charge_A, 150.0);
  EXPECT_DOUBLE_EQ(f.over_voltage_V, 29.6);
  EXPECT_DOUBLE_EQ(f.under_voltage_V, 20.0);
  EXPECT_DOUBLE_EQ(f.under_voltage_release_V, 22.0);
}

TEST(BankFigures, WearTakesCapacityOnly) {
  const BankFigures f = bank_figures(battery(), {1, 2, 0.25});
  EXPECT_DOUBLE_EQ(f.capacity_Ah, 150.0);
  EXPECT_DOUBLE_EQ(f.continuous_A, 200.0);
}

TEST(Assemble, ScalesResistanceWithSize) {
  cell::Chemistry c;
  c.resistance.ohmic_ohm_Ah = 0.066;
  c.resistance.fast_ohm_Ah = 0.034;
  c.resistance.fast_tau_s = 20.0;
  c.resistance.slow_ohm_Ah = 0.022;
  c.resistance.slow_tau_s = 400.0;
  const cell::Tables tables = cell::make_tables(c);
  const auto p = assemble(battery(), c, tables, {2, 4, 0.1}, 0.0015, 1.2, 60.0);
  EXPECT_DOUBLE_EQ(p.cells, 8.0);
  EXPECT_DOUBLE_EQ(p.capacity_Ah, 360.0);
  EXPECT_DOUBLE_EQ(p.ohmic_ohm, 0.066 * 8.0 / 400.0);
  EXPECT_DOUBLE_EQ(p.fixed_ohm, 0.002 * 2.0 / 4.0 + 0.0015);
  EXPECT_DOUBLE_EQ(p.cable_ohm, 0.0015);
  EXPECT_DOUBLE_EQ(p.fast_keep, std::exp(-3.0));
  EXPECT_DOUBLE_EQ(p.fast_mean, (1.0 - std::exp(-3.0)) / 3.0);
  EXPECT_NEAR(p.slow_mean, (1.0 - std::exp(-0.15)) / 0.15, 1e-15);
  EXPECT_DOUBLE_EQ(p.heat_capacity_J_K, 12.0 * 8.0 * c.specific_heat_J_kgK);
  EXPECT_DOUBLE_EQ(p.bank_keep, std::exp(-60.0 * 1.2 / p.heat_capacity_J_K));
  EXPECT_DOUBLE_EQ(p.self_discharge_A, 0.02 * 400.0 / 730.5);
}

// A cube of 1 m: 6 m2 at 8 W/m2K.
TEST(FreeStandingLoss, GrowsWithTheSurface) {
  EXPECT_NEAR(free_standing_loss_W_K(1000.0), 48.0, 1e-9);
  EXPECT_NEAR(free_standing_loss_W_K(8000.0) / free_standing_loss_W_K(1000.0), 4.0, 1e-12);
}

}  // namespace
}  // namespace voltwright::bank
