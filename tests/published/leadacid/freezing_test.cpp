// Freezing point of the electrolyte against charge: the records against published tables of density against
// charge and of freezing point against density.
#include <gtest/gtest.h>

#include <cstdio>
#include <iterator>

#include "tests/published/leadacid/driven_bank.h"

namespace voltwright::published {
namespace {

struct Density {
  double charge;
  double kg_per_L;  // specific gravity at 26.7 degC
};

// Density of the acid of a flooded battery at 26.7 degC (bib:leadOcvTable; a second table has the same).
constexpr Density kDensity[] = {{0.0, 1.120}, {0.25, 1.155}, {0.5, 1.190}, {0.75, 1.225}, {1.0, 1.265}};

struct Freezing {
  double kg_per_L;
  double fahrenheit;
};

// bib:acidFreezing and bib:acidFreezingManual.
constexpr Freezing kCourse[] = {{1.000, 32.0},  {1.100, 19.0},  {1.150, 5.0},
                                {1.200, -16.0}, {1.250, -62.0}, {1.280, -90.0}};
constexpr Freezing kManual[] = {{1.050, 27.0},  {1.100, 18.0},  {1.150, 5.0},
                                {1.200, -17.0}, {1.225, -35.0}, {1.265, -75.0}};

double celsius(double fahrenheit) { return (fahrenheit - 32.0) / 1.8; }

cell::Curve curve_of(const Freezing* first, const Freezing* last) {
  cell::Curve curve;
  for (const Freezing* row = first; row != last; ++row)
    curve.push_back({row->kg_per_L, celsius(row->fahrenheit)});
  return curve;
}

double density_at(double charge) {
  cell::Curve curve;
  for (const Density& row : kDensity) curve.push_back({row.charge, row.kg_per_L});
  return curve_at(curve, charge);
}

// The two tables agree where both have a row: 0.6 K.
TEST(LeadAcidFreezing, TablesAgree) {
  const auto course = curve_of(std::begin(kCourse), std::end(kCourse));
  for (const Freezing& row : kManual) {
    if (row.kg_per_L > 1.21 || row.kg_per_L < 1.09) continue;
    EXPECT_NEAR(curve_at(course, row.kg_per_L), celsius(row.fahrenheit), 0.6) << row.kg_per_L;
  }
}

// Flooded: through both tables at every charge. Straight lines between the rows of a table lie below the true
// curve, by up to 2.5 K to a density of 1.225 and 3.5 K beyond, where it bends most; the tables differ by as
// much there.
TEST(LeadAcidFreezing, FloodedRecord) {
  const auto course = curve_of(std::begin(kCourse), std::end(kCourse));
  const auto manual = curve_of(std::begin(kManual), std::end(kManual));
  const auto& record = chemistry("flooded").freezing_C;
  for (int i = 0; i <= 20; ++i) {
    const double charge = i / 20.0;
    const double density = density_at(charge);
    const double tolerance_K = charge <= 0.75 ? 2.5 : 3.5;
    const double freezes_C = curve_at(record, charge);
    if (i % 5 == 0) {
      std::printf("  charge %.2f: density %.3f, freezes at %.1f degC (tables %.1f and %.1f)\n", charge,
                  density, freezes_C, curve_at(course, density), curve_at(manual, density));
    }
    EXPECT_NEAR(freezes_C, curve_at(manual, density), tolerance_K) << charge;
    EXPECT_NEAR(freezes_C, curve_at(course, density), tolerance_K) << charge;
  }
  EXPECT_NEAR(curve_at(record, 1.0), celsius(-75.0), 0.5);
  EXPECT_NEAR(curve_at(record, 0.75), celsius(-35.0), 0.5);
}

// Valve-regulated: assumed, on the warm side of flooded. Every kind freezes later the fuller it is; none
// freezes above -3 degC however empty. An empty battery is lost at -10 degC, a half-full one is safe at -20:
// the sheet of a flooded battery asks for 60 % below freezing (bib:floodedSheet).
TEST(LeadAcidFreezing, EveryKind) {
  for (const char* id : {"agm", "gel", "flooded"}) {
    const auto& record = chemistry(id).freezing_C;
    double last_C = 0.0;
    for (int i = -15; i <= 100; ++i) {
      const double freezes_C = curve_at(record, i / 100.0);
      EXPECT_LE(freezes_C, last_C) << id << " at " << i;
      EXPECT_LE(freezes_C, -3.0) << id;
      EXPECT_GE(freezes_C, curve_at(chemistry("flooded").freezing_C, i / 100.0) - 1e-9) << id;
      last_C = freezes_C;
    }
    EXPECT_GE(curve_at(record, 0.0), -10.1) << id;
    EXPECT_LE(curve_at(record, 0.6), -25.0) << id;
  }
}

}  // namespace
}  // namespace voltwright::published
