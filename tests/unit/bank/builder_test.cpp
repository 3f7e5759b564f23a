#include "engine/bank/builder.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "engine/bank/electrochemistry.h"

namespace voltwright::bank {
namespace {

cell::Chemistry kind() {
  cell::Chemistry c;
  c.id = "plain";
  c.nominal_V = 3.2;
  c.ocv_V = {{0.0, 2.0}, {0.5, 3.2}, {1.0, 3.4}};
  c.limits.min_V = 2.5;
  c.limits.max_V = 3.65;
  c.stages.absorption_V = 3.5;
  c.resistance.ohmic_ohm_Ah = 0.02;
  return c;
}

cell::CellFormat box() {
  cell::CellFormat f;
  f.id = "box-100ah";
  f.name = "Box, 100 Ah";
  f.chemistry = "plain";
  f.form = cell::FormFactor::kPrismatic;
  f.size = {0.0, 40.0, 100.0, 200.0};
  f.capacity_Ah = 100.0;
  f.mass_kg = {1.9, 2.0, 2.2};
  f.ohmic_ohm = {0.0002, 0.0005, 0.0008};
  f.continuous_A = 100.0;
  f.peak_A = 300.0;
  f.peak_s = 10.0;
  f.charge_A = 50.0;
  return f;
}

cell::CellFormat round() {
  cell::CellFormat f = box();
  f.id = "round-2ah";
  f.form = cell::FormFactor::kCylindrical;
  f.size = {20.0, 0.0, 0.0, 70.0};
  f.capacity_Ah = 2.0;
  f.mass_kg = {0.04, 0.045, 0.05};
  f.ohmic_ohm = {0.02, 0.03, 0.04};
  f.continuous_A = 4.0;
  f.peak_A = 10.0;
  f.charge_A = 1.0;
  return f;
}

/// Nothing but cells.
Overheads bare() {
  Overheads o;
  o.cylinder_gap_mm = o.prismatic_gap_share = o.pouch_gap_share = 0.0;
  o.clearance_mm = o.headroom_mm = o.wall_mm = 0.0;
  o.busbar_share = o.protection_ohm = o.protection_kg = 0.0;
  o.joint_ohm = 0.0;
  o.protection_continuous_A = o.protection_peak_A = 1e9;
  return o;
}

Composition made(const cell::CellFormat& format, int series, int parallel, const Overheads& overheads) {
  return compose(format, kind(), series, parallel, overheads).value();
}

TEST(Compose, BareCellsAddUp) {
  const Composition c = made(box(), 4, 2, bare());
  EXPECT_DOUBLE_EQ(c.empty_V, 10.0);
  EXPECT_DOUBLE_EQ(c.nominal_V, 12.8);
  EXPECT_DOUBLE_EQ(c.full_V, 13.6);
  EXPECT_DOUBLE_EQ(c.charge_V, 14.0);
  EXPECT_DOUBLE_EQ(c.highest_V, 14.6);
  // (2.0 + 3.2) / 2 and (3.2 + 3.4) / 2 over half the charge each: 2.95 V a cell.
  EXPECT_NEAR(c.mean_V, 11.8, 1e-12);
  EXPECT_DOUBLE_EQ(c.capacity_Ah, 200.0);
  EXPECT_DOUBLE_EQ(c.nominal_Wh, 2560.0);
  EXPECT_NEAR(c.rest_Wh, 2360.0, 1e-9);
  EXPECT_DOUBLE_EQ(c.mass_kg.min, 15.2);
  EXPECT_DOUBLE_EQ(c.mass_kg.typical, 16.0);
  EXPECT_DOUBLE_EQ(c.mass_kg.max, 17.6);
  EXPECT_NEAR(c.volume_L, 8 * 0.8, 1e-12);
  EXPECT_NEAR(c.cells_share, 1.0, 1e-12);
  EXPECT_NEAR(c.Wh_per_kg, 160.0, 1e-9);
  EXPECT_NEAR(c.Wh_per_L, 400.0, 1e-9);
  EXPECT_NEAR(c.resistance_ohm, 0.0005 * 4 / 2, 1e-15);
  EXPECT_NEAR(c.short_circuit_A.max, 13.6 / (0.0002 * 2), 1e-6);
  EXPECT_NEAR(c.short_circuit_A.typical, 13.6 / 0.001, 1e-6);
  EXPECT_LT(c.short_circuit_A.min, c.short_circuit_A.typical);
}

TEST(Compose, OverheadsAreCounted) {
  Overheads o = bare();
  o.prismatic_gap_share = 0.05;
  o.clearance_mm = 10.0;
  o.headroom_mm = 40.0;
  o.wall_mm = 5.0;
  o.wall_kg_L = 1.2;
  o.busbar_share = 0.05;
  o.protection_kg = 0.5;
  o.protection_ohm = 0.002;
  o.joint_ohm = 1e-5;
  const Composition c = made(box(), 4, 1, o);
  // Four of 42 mm face to face: 168 x 100 x 200 mm; 20 mm of clearance, 40 mm of headroom, 10 mm of wall.
  EXPECT_EQ(c.arrangement.rows, 1);
  EXPECT_EQ(c.arrangement.columns, 4);
  EXPECT_NEAR(c.outside.length_mm, 198.0, 1e-9);
  EXPECT_NEAR(c.outside.width_mm, 130.0, 1e-9);
  EXPECT_NEAR(c.outside.height_mm, 250.0, 1e-9);
  const double wall_L = (198.0 * 130.0 * 250.0 - 188.0 * 120.0 * 240.0) * 1e-6;
  EXPECT_NEAR(c.case_kg, wall_L * 1.2, 1e-9);
  EXPECT_NEAR(c.mass_kg.typical, 8.0 + 0.4 + 0.5 + wall_L * 1.2, 1e-9);
  EXPECT_NEAR(c.resistance_ohm, 4 * (0.0005 + 2e-5) + 0.002, 1e-15);
  // No credit for the protection in a short circuit.
  EXPECT_NEAR(c.short_circuit_A.max, 13.6 / (4 * (0.0002 + 2e-5)), 1e-6);
  o.case_kg = 1.5;
  EXPECT_NEAR(made(box(), 4, 1, o).mass_kg.typical, 8.0 + 0.4 + 0.5 + 1.5, 1e-9);
}

TEST(Compose, TheLeastCurrentBindsAndSaysWhich) {
  Overheads o;
  Composition c = made(box(), 4, 2, o);
  EXPECT_DOUBLE_EQ(c.continuous.current_A, 200.0);  // 1.0 per hour of 200 Ah, as much as the cells
  EXPECT_EQ(c.continuous.binding, Binding::kCells);
  EXPECT_DOUBLE_EQ(c.peak.current_A, 400.0);  // twice that; the cells give 600 A
  EXPECT_EQ(c.peak.binding, Binding::kProtection);
  EXPECT_DOUBLE_EQ(c.charge.current_A, 100.0);
  EXPECT_EQ(c.charge.binding, Binding::kCells);
  o.busbar_continuous_A = 90.0;
  c = made(box(), 4, 2, o);
  EXPECT_DOUBLE_EQ(c.continuous.current_A, 90.0);
  EXPECT_EQ(c.continuous.binding, Binding::kBusbars);
  EXPECT_DOUBLE_EQ(c.peak.current_A, 180.0);
  EXPECT_EQ(c.peak.binding, Binding::kBusbars);
  EXPECT_EQ(c.charge.binding, Binding::kBusbars);
  o.protection_peak_A = 80.0;  // bounds the continuous current too
  c = made(box(), 4, 2, o);
  EXPECT_DOUBLE_EQ(c.continuous.current_A, 80.0);
  EXPECT_EQ(c.continuous.binding, Binding::kProtection);
  EXPECT_DOUBLE_EQ(c.battery.peak_A, 80.0);
}

TEST(Compose, RefusesWhatCannotBe) {
  const auto refused = [](const cell::CellFormat& format, int series, int parallel, const Overheads& o) {
    const auto result = compose(format, kind(), series, parallel, o);
    return result ? std::string() : result.problems().front().field;
  };
  EXPECT_EQ(refused(box(), 0, 1, {}), "series");
  EXPECT_EQ(refused(box(), kMostInSeries + 1, 1, {}), "series");
  EXPECT_EQ(refused(box(), 4, -3, {}), "parallel");
  EXPECT_EQ(refused(box(), 4, kMostInParallel + 1, {}), "parallel");
  EXPECT_EQ(refused(box(), kMostInSeries, kMostInParallel, {}), "");
  Overheads o;
  o.wall_mm = -1.0;
  EXPECT_EQ(refused(box(), 4, 1, o), "wall_mm");
  o = {};
  o.case_kg = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(refused(box(), 4, 1, o), "case_kg");
  o = {};
  o.protection_continuous_A = 100.0;
  o.protection_peak_A = 50.0;
  EXPECT_EQ(refused(box(), 4, 1, o), "protection_peak_A");
  cell::CellFormat other = box();
  other.chemistry = "other";
  EXPECT_EQ(refused(other, 4, 1, {}), "chemistry");
  other = box();
  other.size.width_mm = 0.0;
  EXPECT_EQ(refused(other, 4, 1, {}), "width_mm");
}

TEST(Compose, EveryErrorComesAtOnce) {
  Overheads o;
  o.headroom_mm = -1.0;
  o.joint_ohm = -1.0;
  const auto result = compose(box(), kind(), 0, 0, o);
  ASSERT_FALSE(result);
  EXPECT_EQ(result.problems().size(), 4U);
}

TEST(Compose, FindsWhatStandsOutsideTheHouseWindow) {
  // Four cells: 2.625 V a cell is the cut-off; the curve reaches it at (2.625 - 2.0) / 2.4 of the charge.
  const Composition c = made(box(), 4, 1, {});
  EXPECT_DOUBLE_EQ(c.house.system.system_V, 12.0);
  EXPECT_NEAR(c.house.lost_below, 0.625 / 2.4, 1e-12);
  EXPECT_DOUBLE_EQ(c.house.lost_above, 0.0);
  ASSERT_EQ(c.findings.size(), 1U);
  EXPECT_EQ(c.findings[0].severity, base::Severity::kWarning);
  EXPECT_NE(c.findings[0].what.find("26 %"), std::string::npos);
  // Five: 3.1 V a cell is the most that 12 V appliances bear, far down the curve; 24 V lies out of reach.
  const Composition five = made(box(), 5, 1, {});
  EXPECT_DOUBLE_EQ(five.house.system.system_V, 12.0);
  EXPECT_NEAR(five.house.lost_above, 1.0 - 1.1 / 2.4, 1e-12);
  // One cell: nothing runs on it.
  const Composition one = made(box(), 1, 1, {});
  EXPECT_DOUBLE_EQ(one.house.system.system_V, 0.0);
  ASSERT_EQ(one.findings.size(), 1U);
  EXPECT_EQ(one.findings[0].field, "series");
}

TEST(Compose, TheBatteryIsSimulatedWithTheComposedResistance) {
  const cell::Chemistry c = kind();
  const Composition whole = made(box(), 4, 1, {});
  const cell::Tables tables = cell::make_tables(c);
  const auto p = assemble(whole.battery, c, tables, {1, 1, 0.0}, 0.0, 1.0, 60.0);
  EXPECT_NEAR(p.ohmic_ohm + p.fixed_ohm, whole.resistance_ohm, 1e-15);
  State<double> s;
  s.temperature_C = 25.0;
  const auto t = terminal<double>(p, s);
  EXPECT_NEAR(t.instant_V, whole.full_V, 1e-9);
  EXPECT_NEAR(t.instant_ohm, whole.resistance_ohm, 1e-12);
  // Parts better than the chemistry's cells cannot be taken off: that is said.
  cell::Chemistry poor = kind();
  poor.resistance.ohmic_ohm_Ah = 1.0;
  const Composition clamped = compose(box(), poor, 4, 1, {}).value();
  EXPECT_DOUBLE_EQ(clamped.battery.extra_resistance_ohm, 0.0);
  EXPECT_EQ(clamped.findings.back().field, "resistance");
}

TEST(Arrange, TakesTheLeastFloor) {
  const auto of = [](int count) { return arrange(box(), count, Packing::kSquare, 0.0); };
  EXPECT_EQ(of(1).rows, 1);
  // 16 boxes of 40 x 100 mm: 8 x 2 are 320 x 200 mm; 4 x 4 would be 160 x 400.
  EXPECT_EQ(of(16).rows, 2);
  EXPECT_EQ(of(16).columns, 8);
  // Seven of one row leave no place free.
  EXPECT_EQ(of(7).rows * of(7).columns, 7);
  for (int count = 1; count <= 60; ++count) {
    const Arrangement a = of(count);
    EXPECT_GE(a.rows * a.columns, count);
    EXPECT_LT((a.rows - 1) * a.columns, count);
  }
}

TEST(Arrange, CylindersInSquaresAndHexagons) {
  const Arrangement square = arrange(round(), 9, Packing::kSquare, 0.0);
  EXPECT_EQ(square.rows, 3);
  EXPECT_NEAR(square.block.length_mm, 60.0, 1e-12);
  EXPECT_NEAR(square.block.width_mm, 60.0, 1e-12);
  const Arrangement hexagons = arrange(round(), 1000, Packing::kHexagonal, 0.0);
  const double floor_mm2 = hexagons.block.length_mm * hexagons.block.width_mm;
  const double covered_mm2 = 1000.0 * std::numbers::pi * 100.0;
  // The edges of a finite block keep it a little under the share of an endless one.
  EXPECT_LT(covered_mm2 / floor_mm2, covered_share(Packing::kHexagonal, 20.0, 0.0));
  EXPECT_GT(covered_mm2 / floor_mm2, 0.95 * covered_share(Packing::kHexagonal, 20.0, 0.0));
}

TEST(ShareBelow, CountsEveryPieceOfTheCurve) {
  const base::Curve curve = {{-0.2, 1.0}, {0.0, 2.0}, {0.5, 3.0}, {1.0, 4.0}};
  EXPECT_DOUBLE_EQ(share_below(curve, 1.9), 0.0);  // what lies below empty does not count
  EXPECT_DOUBLE_EQ(share_below(curve, 2.5), 0.25);
  EXPECT_DOUBLE_EQ(share_below(curve, 5.0), 1.0);
  const base::Curve dip = {{0.0, 3.0}, {0.4, 2.0}, {0.8, 3.0}, {1.0, 3.5}};
  EXPECT_NEAR(share_below(dip, 2.5), 0.4, 1e-12);
  const base::Curve flat = {{0.0, 3.0}, {1.0, 3.0}};
  EXPECT_DOUBLE_EQ(share_below(flat, 3.0), 0.0);
  EXPECT_DOUBLE_EQ(share_below(flat, 3.1), 1.0);
  EXPECT_DOUBLE_EQ(share_below({}, 3.0), 0.0);
}

}  // namespace
}  // namespace voltwright::bank
