// What must hold for a battery composed of any cell of the catalogue, whatever the counts.
#include "engine/bank/builder.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "engine/base/random.h"
#include "files/catalogue.h"

namespace voltwright::laws {
namespace {

const files::Catalogue& catalogue() {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return kCatalogue;
}

std::vector<std::string> cells() {
  std::vector<std::string> ids;
  for (const cell::CellFormat& f : catalogue().cells) ids.push_back(f.id);
  return ids;
}

/// Cells alone, so that nothing but their number counts.
bank::Overheads bare() {
  bank::Overheads o;
  o.case_kg = 0.0;
  o.busbar_share = o.protection_kg = o.protection_ohm = 0.0;
  o.protection_continuous_A = o.protection_peak_A = 1e9;
  return o;
}

class EveryCell : public ::testing::TestWithParam<std::string> {
 protected:
  bank::Composition of(int series, int parallel, const bank::Overheads& overheads) const {
    const cell::CellFormat& f = *catalogue().cell(GetParam());
    return bank::compose(f, *catalogue().chemistry(f.chemistry), series, parallel, overheads).value();
  }
};

TEST_P(EveryCell, BareFiguresFollowTheCounts) {
  const bank::Composition one = of(1, 1, bare());
  base::RandomStream random(7);
  for (int i = 0; i < 50; ++i) {
    const int n = 1 + static_cast<int>(random.uniform() * 20.0);
    const int m = 1 + static_cast<int>(random.uniform() * 100.0);
    const bank::Composition c = of(n, m, bare());
    const double count = static_cast<double>(n) * m;
    const auto close = [&](double value, double expected) {
      EXPECT_NEAR(value, expected, 1e-12 * expected) << n << "s" << m << "p";
    };
    close(c.mass_kg.typical, count * one.mass_kg.typical);
    close(c.mass_kg.max, count * one.mass_kg.max);
    close(c.nominal_Wh, count * one.nominal_Wh);
    close(c.rest_Wh, count * one.rest_Wh);
    close(c.capacity_Ah, m * one.capacity_Ah);
    close(c.continuous.current_A, m * one.continuous.current_A);
    close(c.peak.current_A, m * one.peak.current_A);
    close(c.charge.current_A, m * one.charge.current_A);
    for (const auto voltage :
         {&bank::Composition::empty_V, &bank::Composition::nominal_V, &bank::Composition::mean_V,
          &bank::Composition::full_V, &bank::Composition::charge_V, &bank::Composition::highest_V}) {
      close(c.*voltage, n * (one.*voltage));
    }
    close(c.resistance_ohm, one.resistance_ohm * n / m);
    close(c.short_circuit_A.max, one.short_circuit_A.max * m);
  }
}

// 240 cells in any of their splits: the energy, mass and room are one and the same, with every overhead but
// the one that follows the current.
TEST_P(EveryCell, EnergyDoesNotDependOnTheSplit) {
  const bank::Composition first = of(1, 240, {});
  for (const int n : {2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 20, 24, 30}) {
    const bank::Composition c = of(n, 240 / n, {});
    EXPECT_NEAR(c.nominal_Wh, first.nominal_Wh, 1e-9 * first.nominal_Wh) << n;
    EXPECT_NEAR(c.rest_Wh, first.rest_Wh, 1e-9 * first.rest_Wh) << n;
    EXPECT_NEAR(c.mass_kg.typical, first.mass_kg.typical, 1e-9 * first.mass_kg.typical) << n;
    EXPECT_NEAR(c.volume_L, first.volume_L, 1e-9 * first.volume_L) << n;
  }
}

TEST_P(EveryCell, LimitsAndRoomAreInOrder) {
  for (const int n : {1, 2, 4, 8, 16, 24}) {
    for (const int m : {1, 2, 7, 40}) {
      const bank::Composition c = of(n, m, {});
      EXPECT_LE(c.continuous.current_A, c.peak.current_A);
      EXPECT_LT(c.empty_V, c.nominal_V);
      EXPECT_LT(c.nominal_V, c.highest_V);
      EXPECT_LT(c.charge_V, c.battery.over_voltage_V);
      EXPECT_LT(c.battery.under_voltage_V, c.battery.under_voltage_release_V);
      EXPECT_GT(c.cells_share, 0.0);
      EXPECT_LT(c.cells_share, 1.0);
      EXPECT_GE(c.arrangement.rows * c.arrangement.columns, n * m);
      EXPECT_LE(c.short_circuit_A.min, c.short_circuit_A.typical);
      EXPECT_LE(c.short_circuit_A.typical, c.short_circuit_A.max);
      EXPECT_GT(c.short_circuit_A.min, c.peak.current_A);
      EXPECT_GE(c.battery.extra_resistance_ohm, 0.0);
      EXPECT_GE(c.house.lost_below, 0.0);
      EXPECT_GE(c.house.lost_above, 0.0);
      EXPECT_LE(c.house.lost_below + c.house.lost_above, 1.0);
    }
  }
}

// A heavier, bigger or more resistive part never makes the battery lighter, smaller or less resistive.
TEST_P(EveryCell, EveryOverheadCosts) {
  const bank::Composition plain = of(4, 3, {});
  bank::Overheads o;
  o.wall_mm += 1.0;
  EXPECT_GT(of(4, 3, o).mass_kg.typical, plain.mass_kg.typical);
  EXPECT_GT(of(4, 3, o).volume_L, plain.volume_L);
  o = {};
  o.headroom_mm += 10.0;
  EXPECT_GT(of(4, 3, o).volume_L, plain.volume_L);
  o = {};
  o.joint_ohm = 0.01;
  EXPECT_GT(of(4, 3, o).resistance_ohm, plain.resistance_ohm);
  EXPECT_LT(of(4, 3, o).short_circuit_A.max, plain.short_circuit_A.max);
  o = {};
  o.protection_continuous_A = 0.5;
  EXPECT_EQ(of(4, 3, o).continuous.binding, bank::Binding::kProtection);
  EXPECT_DOUBLE_EQ(of(4, 3, o).continuous.current_A, 0.5);
}

/// Test names may hold letters and digits alone.
std::string cell_name(const ::testing::TestParamInfo<std::string>& cell) {
  std::string name;
  for (const char c : cell.param) {
    if (c != '-') name += c;
  }
  return name;
}

INSTANTIATE_TEST_SUITE_P(Catalogue, EveryCell, ::testing::ValuesIn(cells()), cell_name);

}  // namespace
}  // namespace voltwright::laws
