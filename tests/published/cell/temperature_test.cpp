// How resistance and self-discharge follow the temperature.
#include <gtest/gtest.h>

#include "engine/cell/tables.h"

namespace voltwright::cell {
namespace {

// The half-kelvin grid against the law: the largest error of a straight line between grid points at the
// coldest place is below 0.05 %.
TEST(ResistanceAgainstTemperature, GridIsFineEnough) {
  Chemistry c;
  c.resistance.activation_kJ_mol = 20.0;
  const Tables tables = make_tables(c);
  const Tables* at = &tables;
  for (double t = -40.0; t <= 60.0; t += 0.13) {
    const double exact = resistance_factor(c.resistance, t);
    EXPECT_NEAR(base::look_up<double>(at, &Tables::resistance_factor, t).value, exact, 5e-4 * exact) << t;
  }
}

// Self-discharge doubles every 10 K (battery management programs after IEEE 485; 5 % a month at 25 degC for
// lead-acid).
TEST(SelfDischarge, DoublesEveryTenKelvin) {
  const Tables tables = make_tables(Chemistry{});
  const Tables* at = &tables;
  const auto factor = [&](double t) {
    return base::look_up<double>(at, &Tables::self_discharge_factor, t).value;
  };
  EXPECT_NEAR(factor(25.0), 1.0, 1e-12);
  EXPECT_NEAR(factor(35.0), 2.0, 1e-12);
  EXPECT_NEAR(factor(5.0), 0.25, 1e-12);
}

}  // namespace
}  // namespace voltwright::cell
