// Calendar life against temperature; cycle life against depth is in tests/published/cells/checks.json.
#include "engine/ageing/life.h"

#include <gtest/gtest.h>

namespace voltwright::published {
namespace {

// Lead-acid life halves for every 10 K above 25 degC (two independent texts): 0.5 at 35, 0.25 at 45 degC.
// Exact.
TEST(CalendarLife, HalvesEveryTenKelvin) {
  cell::LifeFigures life;
  life.calendar_years = {5.0, 8.0, 12.0};
  life.halving_K = 10.0;
  const double at_25 = ageing::calendar_wear_per_h(life, 25.0);
  EXPECT_DOUBLE_EQ(at_25 * 8.0 * 8766.0, 1.0);
  EXPECT_DOUBLE_EQ(ageing::calendar_wear_per_h(life, 35.0), 2.0 * at_25);
  EXPECT_DOUBLE_EQ(ageing::calendar_wear_per_h(life, 45.0), 4.0 * at_25);
}

}  // namespace
}  // namespace voltwright::published
