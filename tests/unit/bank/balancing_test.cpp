// The fullest cell of a string, and how bleeding levels it.
#include "engine/bank/balancing.h"

#include <gtest/gtest.h>

namespace voltwright::bank {
namespace {

struct String {
  cell::Chemistry chemistry;
  cell::Tables tables;
  Parameters<double> parameters;
  State<double> state;

  String() {
    chemistry.ocv_V = {{0.0, 3.0}, {1.0, 3.6}};
    tables = cell::make_tables(chemistry);
    parameters.tables = &tables;
    parameters.cells = 4.0;
    parameters.capacity_Ah = 100.0;
    parameters.balance_V = 3.45;
    parameters.bleed_A = 0.1;
    parameters.step_s = 3600.0;
  }
};

TEST(FullestCell, StandsAsHighAsItIsAhead) {
  String s;
  s.state.charge = 0.5;
  EXPECT_EQ(fullest_cell_V<double>(s.parameters, s.state, 13.3), 13.3);
  s.state.ahead = 0.1;
  // 0.1 of charge is 0.06 V of this straight curve; times four cells.
  EXPECT_NEAR(fullest_cell_V<double>(s.parameters, s.state, 13.3), 13.3 + 0.24, 1e-9);
  s.state.charge = 0.95;
  EXPECT_NEAR(fullest_cell_V<double>(s.parameters, s.state, 13.3), 13.3 + 0.24, 1e-9) << "beyond full too";
}

// 0.1 A for an hour is 0.1 Ah of 100 Ah; below the balancing voltage nothing is bled, and level stays level.
TEST(Bleeding, LevelsTheFullestCell) {
  String s;
  s.state.ahead = 0.0015;
  bleed<double>(s.parameters, s.state, 4.0 * 3.44);
  EXPECT_EQ(s.state.ahead, 0.0015);
  bleed<double>(s.parameters, s.state, 4.0 * 3.46);
  EXPECT_NEAR(s.state.ahead, 0.0005, 1e-12);
  bleed<double>(s.parameters, s.state, 4.0 * 3.46);
  EXPECT_EQ(s.state.ahead, 0.0);
}

}  // namespace
}  // namespace voltwright::bank
