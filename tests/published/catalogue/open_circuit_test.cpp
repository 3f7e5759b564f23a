// Open-circuit voltages against published tables; iron-phosphate and nickel-manganese-cobalt stand in
// tests/published/replay/. Values are per cell; lead-acid tables are per 12 V block.
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

// Sunil, Pattipati and Balasingam 2025, nickel-rich cell P at C/32: breakpoints as printed.
TEST(OpenCircuit, NickelRichBreakpoints) {
  expect_points("nca", {{0.6, 3.8388}, {0.05, 3.1630}, {0.8342, 4.0637}, {1.0, 4.1932}}, 1.0, 1e-4);
}

// Chen and Rincon-Mora 2006: Voc(0.5) 3.80336, Voc(1) 4.10290, Voc(0.1) 3.67457 V.
TEST(OpenCircuit, CobaltOxideFormula) {
  expect_points("lco", {{0.5, 3.80336}, {1.0, 4.10290}, {0.1, 3.67457}}, 1.0, 1e-5);
}

// Pouch cell data (GitHub batterysim/equiv-circ-model), one hour of rest at 25 degC. The curve was fitted to
// these and to whole discharges: 7 mV.
TEST(OpenCircuit, ManganeseRichPouchCell) {
  expect_points("lmo",
                {{1.0, 4.182},
                 {0.896, 4.086},
                 {0.792, 4.048},
                 {0.688, 3.984},
                 {0.584, 3.949},
                 {0.48, 3.909},
                 {0.376, 3.869},
                 {0.272, 3.802},
                 {0.168, 3.723},
                 {0.064, 3.531}},
                1.0, 7e-3);
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

// Measured dU/dT of the BPX iron-phosphate cell: negative below 60 %, positive above 70 %.
TEST(OpenCircuit, EntropyOfIronPhosphate) {
  EXPECT_NEAR(curve_at(chemistry("lfp").entropic_mV_per_K, 0.5), -0.039, 1e-3);
  EXPECT_NEAR(curve_at(chemistry("lfp").entropic_mV_per_K, 0.9), 0.067, 1e-3);
}

}  // namespace
}  // namespace voltwright::published
