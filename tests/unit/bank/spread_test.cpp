// Cells in series that differ: the weakest of a batch, cells at different charge, the cell that ends the
// charge, and how long a bleeding resistor takes.
#include "engine/bank/spread.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace voltwright::bank {
namespace {

/// Open-circuit curve of the catalogue's iron-phosphate cell, its lower part thinned out, with its
/// resistances.
cell::Chemistry iron_phosphate() {
  cell::Chemistry c;
  c.ocv_V = {{0.0, 2.0},      {0.01, 2.837}, {0.05, 3.1365},  {0.1, 3.1882},   {0.2, 3.2296},
             {0.3, 3.2674},   {0.5, 3.2781}, {0.7, 3.3057},   {0.9, 3.3218},   {0.95, 3.3227},
             {0.98, 3.3235},  {0.99, 3.334}, {0.992, 3.3445}, {0.994, 3.3653}, {0.996, 3.4063},
             {0.998, 3.4876}, {1.0, 3.6486}};
  c.resistance.ohmic_ohm_Ah = 0.066;
  c.resistance.fast_ohm_Ah = 0.034;
  c.resistance.slow_ohm_Ah = 0.022;
  return c;
}

// Expected values of normal order statistics: tables of Harter 1961 (2: 0.56419, 3: 0.84628, 4: 1.02938,
// 5: 1.16296, 8: 1.42360, 10: 1.53875, 16: 1.76599, 20: 1.86748; from memory). Two: 1 / sqrt(pi), three: 3 /
// (2 sqrt(pi)).
TEST(ExpectedExtreme, PublishedOrderStatistics) {
  for (const auto& [count, wanted] : {std::pair<int, double>{2, 0.56419},
                                      {3, 0.84628},
                                      {4, 1.02938},
                                      {5, 1.16296},
                                      {8, 1.42360},
                                      {10, 1.53875},
                                      {16, 1.76599},
                                      {20, 1.86748}}) {
    EXPECT_NEAR(expected_extreme(count), wanted, 0.6e-5) << count;
  }
  EXPECT_NEAR(expected_extreme(1), 0.0, 1e-14);
  EXPECT_NEAR(expected_extreme(2), 1.0 / std::sqrt(std::numbers::pi), 1e-14);
  EXPECT_NEAR(expected_extreme(3), 1.5 / std::sqrt(std::numbers::pi), 1e-14);
}

// Variance of the larger of two: 1 - 1 / pi (exact).
TEST(ExpectedExtreme, Deviation) {
  EXPECT_NEAR(extreme_deviation(1), 1.0, 1e-13);
  EXPECT_NEAR(extreme_deviation(2), std::sqrt(1.0 - 1.0 / std::numbers::pi), 1e-13);
  EXPECT_LT(extreme_deviation(16), extreme_deviation(4));
}

// Drawn strings agree with the integral within four of their own standard errors, and that error with the
// deviation.
TEST(WeakestCell, DrawnStringsAgree) {
  for (const int cells : {1, 4, 8, 16}) {
    const CellCapacities c{100.0, 2.0, cells};
    constexpr std::size_t kStrings = 40000;
    const DrawnMinimum drawn =
        drawn_minimum_Ah(c, kStrings, base::RandomStream(31, static_cast<std::uint64_t>(cells)));
    EXPECT_NEAR(drawn.mean_Ah, expected_minimum_Ah(c), 4.0 * drawn.standard_error_Ah) << cells;
    EXPECT_NEAR(drawn.standard_error_Ah, 2.0 * extreme_deviation(cells) / std::sqrt(double{kStrings}),
                0.03 * drawn.standard_error_Ah);
  }
  // Four cells of 100 Ah that scatter by 2 Ah: 97.94 Ah; sixteen: 96.47 Ah.
  EXPECT_NEAR(expected_minimum_Ah({100.0, 2.0, 4}), 97.941, 0.001);
  EXPECT_NEAR(expected_minimum_Ah({100.0, 2.0, 16}), 96.468, 0.001);
}

// One cell: the normal distribution, 2.275 % below two sigma. N cells: the chance that not all are above.
TEST(WeakestCell, ChanceOfOneBelow) {
  EXPECT_NEAR(chance_weakest_below({100.0, 1.0, 1}, 98.0), 0.022750, 1e-6);
  EXPECT_NEAR(chance_weakest_below({100.0, 1.0, 16}, 98.0), 1.0 - std::pow(1.0 - 0.0227501, 16.0), 1e-6);
  EXPECT_NEAR(chance_weakest_below({100.0, 1.0, 4}, 92.0) / (4.0 * 6.22096e-16), 1.0, 1e-5);
  int below = 0;
  constexpr int kStrings = 20000;
  base::RandomStream random(32);
  for (int i = 0; i < kStrings; ++i) {
    bool one = false;
    for (int k = 0; k < 8; ++k) one = (100.0 + random.normal() < 99.0) || one;
    if (one) ++below;
  }
  const double p = chance_weakest_below({100.0, 1.0, 8}, 99.0);
  EXPECT_NEAR(below / double{kStrings}, p, 4.0 * std::sqrt(p * (1.0 - p) / kStrings));
}

// One current flows through all cells: by counting ampere-hours from the first full to the first empty.
TEST(UsableCharge, WeakestAndUnlevelCells) {
  EXPECT_EQ(usable_Ah({}), 0.0);
  EXPECT_NEAR(usable_Ah({{100.0, 1.0}, {100.0, 1.0}, {90.0, 1.0}}), 90.0, 1e-12);
  EXPECT_NEAR(usable_Ah({{100.0, 0.3}, {100.0, 0.3}}), 100.0, 1e-12);
  // One is 10 % ahead: it is full when the others lack 10 Ah, and these are empty 10 Ah before it.
  EXPECT_NEAR(usable_Ah({{100.0, 0.6}, {100.0, 0.5}, {100.0, 0.5}}), 90.0, 1e-12);
  // A weak cell may hide in the room of the others: level at the middle, nothing more is lost than its size.
  EXPECT_NEAR(usable_Ah({{80.0, 0.5}, {100.0, 0.5}}), 80.0, 1e-12);
  base::RandomStream random(33);
  for (int trial = 0; trial < 1000; ++trial) {
    std::vector<StringCell> cells;
    double least = std::numeric_limits<double>::infinity();
    for (int k = 0; k < 4; ++k) {
      cells.push_back({90.0 + 20.0 * random.uniform(), random.uniform()});
      least = std::min(least, cells.back().capacity_Ah);
    }
    EXPECT_LE(usable_Ah(cells), least + 1e-12) << "never more than the weakest cell";
    EXPECT_GE(usable_Ah(cells), 0.0);
  }
}

// A level string opens at the stated voltage; the further one cell is ahead, the sooner, and the less is
// charged.
TEST(Opening, SoonerTheFurtherOneCellIsAhead) {
  const cell::Chemistry lfp = iron_phosphate();
  double last_V = std::numeric_limits<double>::infinity();
  for (const double ahead : {0.0, 0.001, 0.002, 0.005, 0.01, 0.02, 0.1}) {
    const Opening o = opening_at(lfp, {4, ahead, 0.2, 1.0}, 3.8);
    EXPECT_NEAR(o.voltages.fullest_V, 3.8, 1e-9);
    EXPECT_NEAR(o.voltages.string_V, o.voltages.fullest_V + 3.0 * o.voltages.others_V, 1e-12);
    EXPECT_LT(o.voltages.string_V, last_V);
    last_V = o.voltages.string_V;
    EXPECT_NEAR(o.lost_share, ahead * 4.0 / 3.0, 1e-15);
  }
  EXPECT_NEAR(opening_at(lfp, {4, 0.0, 0.2, 1.0}, 3.8).voltages.string_V, 4.0 * 3.8, 1e-8);
  // By counting: four cells of 100 Ah, one ahead, lose what the share says.
  const double rest = 0.5 - 0.03;
  EXPECT_NEAR(usable_Ah({{100.0, 0.5 + 0.09}, {100.0, rest}, {100.0, rest}, {100.0, rest}}),
              100.0 * (1.0 - opening_at(lfp, {4, 0.09, 0.2, 1.0}, 3.8).lost_share), 1e-9);
}

// A case of practice: a used 45 Ah iron-phosphate battery whose protection opened at 14.2 to 14.3 V
// although 15.6 V (four times 3.9 V) are stated, after 13 Ah from empty. Level cells would open at 15.6 V. As
// the curve turns up only within the last percent, a cell that is half a percent ahead already opens at 14.2
// to 14.3 V, and any that is further ahead below that.
TEST(Opening, StatedVoltageIsNeverReachedWithOneCellAhead) {
  const cell::Chemistry lfp = iron_phosphate();
  const auto opens_V = [&](double ahead) {
    return opening_at(lfp, {4, ahead, 0.1, 1.0}, 3.9).voltages.string_V;
  };
  EXPECT_NEAR(opens_V(0.0), 15.6, 1e-6);
  EXPECT_GT(opens_V(0.003), 14.3);
  EXPECT_LT(opens_V(0.0055), 14.2);
  EXPECT_LT(opens_V(0.05), 14.0);
  // At 14.25 V the other three stand at 3.45 V, 0.45 V below the one that opens.
  double low = 0.0;
  double high = 0.05;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (opens_V(middle) > 14.25 ? low : high) = middle;
  }
  EXPECT_NEAR(opening_at(lfp, {4, low, 0.1, 1.0}, 3.9).voltages.others_V, 3.45, 1e-6);
  EXPECT_GT(low, 0.004);
  EXPECT_LT(low, 0.006);
  // 13 of 45 Ah are 29 %; so much passes if the weakest cell holds 13 Ah, whatever the others hold.
  EXPECT_NEAR(usable_Ah({{13.0, 0.0}, {45.0, 0.0}, {45.0, 0.0}, {45.0, 0.0}}) / 45.0, 0.289, 0.001);
  // 13.349 V at rest after 20 h is 3.337 V a cell, that of a nearly full one, and says nothing of its size.
  EXPECT_GT(13.349 / 4.0, 3.3235);
  EXPECT_LT(13.349 / 4.0, 3.3445);
}

// Voltage of a charged cell: at half charge the curve plus 0.122 ohm Ah times the rate (Ohm's law).
TEST(ChargingVoltage, CurvePlusResistance) {
  const cell::Chemistry lfp = iron_phosphate();
  EXPECT_NEAR(charging_V(lfp, 0.5, 0.2, 1.0), 3.2781 + 0.2 * 0.122, 1e-12);
  EXPECT_NEAR(charging_V(lfp, 0.5, 0.2, 3.0), 3.2781 + 0.6 * 0.122, 1e-12);
  cell::Chemistry two_branches = lfp;
  two_branches.hysteresis.half_gap_mV = {{0.0, 10.0}, {1.0, 10.0}};
  EXPECT_NEAR(charging_V(two_branches, 0.5, 0.2, 1.0), 3.2781 + 0.010 + 0.2 * 0.122, 1e-12);
  EXPECT_NEAR(charging_V(lfp, 1.001, 0.0, 1.0), 3.6486 + 0.001 * (3.6486 - 3.4876) / 0.002, 1e-9);
  double last_V = 0.0;
  for (int i = 0; i <= 1010; ++i) {
    const double now_V = charging_V(lfp, i / 1000.0, 0.3, 1.0);
    EXPECT_GE(now_V, last_V);
    last_V = now_V;
  }
}

// A cell that is 10 Ah above the others needs 10 Ah / 0.05 A = 200 h of bleeding. With the iron-phosphate
// curve the time above 3.4 V is minutes in a charge without holding, so that it takes thousands of charges;
// an hour of holding makes it about 200.
TEST(Bleeding, TakesLongAndNeedsHolding) {
  const cell::Chemistry lfp = iron_phosphate();
  const Ahead string{4, 0.075, 0.2, 1.0};
  const Bleeding plain = bleeding(lfp, string, 100.0, 3.4, 3.65, 0.0, 0.05);
  EXPECT_NEAR(plain.difference_Ah, 10.0, 1e-9);
  EXPECT_NEAR(plain.hours, 200.0, 1e-9);
  EXPECT_GT(plain.hours_a_charge * 60.0, 0.5);
  EXPECT_LT(plain.hours_a_charge * 60.0, 3.0);
  EXPECT_GT(plain.charges, 4000.0);
  const Bleeding held = bleeding(lfp, string, 100.0, 3.4, 3.65, 1.0, 0.05);
  EXPECT_NEAR(held.charges, 200.0 / (1.0 + plain.hours_a_charge), 1e-9);
  EXPECT_NEAR(held.charges, 200.0, 10.0);
  EXPECT_NEAR(bleeding(lfp, string, 100.0, 3.4, 3.65, 1.0, 0.5).hours, 20.0, 1e-9);
  EXPECT_EQ(bleeding(lfp, {4, 0.0, 0.2, 1.0}, 100.0, 3.4, 3.65, 1.0, 0.05).charges, 0.0);
  const Bleeding never = bleeding(lfp, string, 100.0, 3.7, 3.65, 1.0, 0.05);
  EXPECT_EQ(never.charges, std::numeric_limits<double>::infinity());
}

}  // namespace
}  // namespace voltwright::bank
