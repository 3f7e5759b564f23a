// Open-circuit voltages against published tables. Values are per cell; lead-acid tables are per 12 V block.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

struct Point {
  double soc;
  double volt;
};

void expect_points(const char* id, std::initializer_list<Point> points, double scale, double tolerance) {
  for (const Point& p : points) {
    EXPECT_NEAR(scale * curve_at(chemistry(id).ocv_V, p.soc), p.volt, tolerance) << id << " at " << p.soc;
  }
}

// Faraday Institution, BPX example cells (2022), electrode functions evaluated; tolerance 0.2 mV at the
// points.
TEST(OpenCircuit, IronPhosphateCellOfBpx) {
  expect_points("lfp", {{0.0, 2.0}, {0.2, 3.2296}, {0.5, 3.2781}, {0.9, 3.3218}, {1.0, 3.6486}}, 1.0, 2e-4);
  // Mean of the function 3.2605 V; straight lines between the points lose 0.4 mV of it.
  EXPECT_NEAR(mean_of(chemistry("lfp").ocv_V), 3.2605, 5e-4);
}

TEST(OpenCircuit, NickelManganeseCobaltCellOfBpx) {
  expect_points("nmc", {{0.0, 2.7}, {0.2, 3.5309}, {0.5, 3.6729}, {0.8, 3.9346}, {1.0, 4.2018}}, 1.0, 2e-4);
  EXPECT_NEAR(mean_of(chemistry("nmc").ocv_V), 3.7100, 2e-3);
}

// Measured C/20 voltage of the same cell (BPX, validation block): 15 mV above 20 % charge.
TEST(OpenCircuit, NickelManganeseCobaltAgainstMeasurement) {
  expect_points("nmc",
                {{0.8668, 4.0219}, {0.7335, 3.8719}, {0.6003, 3.7317}, {0.4670, 3.6575}, {0.3338, 3.6088}},
                1.0, 0.015);
}

// Sunil, Pattipati and Balasingam 2025, nickel-rich cell P at C/32: breakpoints as printed.
TEST(OpenCircuit, NickelRichBreakpoints) {
  expect_points("nca", {{0.6, 3.8388}, {0.05, 3.1630}, {0.8342, 4.0637}, {1.0, 4.1932}}, 1.0, 1e-4);
}

// Chen and Rincon-Mora 2006: Voc(0.5) 3.80336, Voc(1) 4.10290, Voc(0.1) 3.67457 V.
TEST(OpenCircuit, CobaltOxideFormula) {
  expect_points("lco", {{0.5, 3.80336}, {1.0, 4.10290}, {0.1, 3.67457}}, 1.0, 1e-5);
}

// Pouch cell data (GitHub batterysim/equiv-circ-model), one hour of rest at 25 degC: 1 mV.
TEST(OpenCircuit, ManganeseRichPouchCell) {
  expect_points("lmo", {{0.48, 3.909}, {0.896, 4.086}, {0.168, 3.723}}, 1.0, 1e-3);
}

// Table of GitHub age-series/ElectricalAge2 at 26.7 degC, flooded: 1 mV per block.
TEST(OpenCircuit, FloodedBlock) {
  expect_points("flooded", {{1.0, 12.650}, {0.75, 12.450}, {0.5, 12.240}, {0.25, 12.060}, {0.0, 11.890}}, 6.0,
                1e-3);
}

// The same table, gel: the fall of 0.4 V between half and a quarter must survive.
TEST(OpenCircuit, GelBlock) {
  expect_points("gel", {{1.0, 12.800}, {0.75, 12.600}, {0.5, 12.400}, {0.25, 12.000}, {0.0, 11.800}}, 6.0,
                1e-3);
}

// AGM 12.80 to 12.90 V full and 12.30 to 12.40 V at half charge, rested (from memory).
TEST(OpenCircuit, AbsorbentGlassMatBlock) {
  EXPECT_NEAR(6.0 * curve_at(chemistry("agm").ocv_V, 1.0), 12.85, 0.05);
  EXPECT_NEAR(6.0 * curve_at(chemistry("agm").ocv_V, 0.5), 12.35, 0.0501);
}

// Four iron-phosphate cells hold 13.04 V on average: 100 Ah are 1.304 kWh and not the 1.28 of the label.
TEST(OpenCircuit, FourIronPhosphateCells) {
  EXPECT_NEAR(4.0 * mean_of(chemistry("lfp").ocv_V), 13.042, 2e-3);
}

// Measured dU/dT of the BPX iron-phosphate cell: negative below 60 %, positive above 70 %.
TEST(OpenCircuit, EntropyOfIronPhosphate) {
  EXPECT_NEAR(curve_at(chemistry("lfp").entropic_mV_per_K, 0.5), -0.039, 1e-3);
  EXPECT_NEAR(curve_at(chemistry("lfp").entropic_mV_per_K, 0.9), 0.067, 1e-3);
}

}  // namespace
}  // namespace voltwright::published
