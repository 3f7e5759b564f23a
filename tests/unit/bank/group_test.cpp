// Batteries in parallel that differ, stepped together: shares, what flows between them, the group as one
// bank. Where no source is named, a value follows from Ohm's law, conservation of charge or the threshold
// that the case itself sets.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/unit/bank/straight_group.h"

namespace voltwright::bank {
namespace {

// The same case through the stepped model. 100 Ah and 200 Ah of one make: resistance goes with 1 / Ah.
TEST(Group, LargerBatteryReachesItsLimitFirst) {
  const Bench bench;
  Group g = bench.group({member(100.0), member(200.0)}, 1.0);
  EXPECT_NEAR(limits_of(g).discharge_A, 150.0, 1e-6);
  EXPECT_NEAR(limits_of(g).charge_A, 150.0, 1e-6);
  const GroupReport r = step(g, 100.0, 25.0);
  EXPECT_NEAR(r.current_A[0], 33.33, 0.005);
  EXPECT_NEAR(r.current_A[1], 66.67, 0.005);
  EXPECT_TRUE(r.trips.empty());
  // Both empty together: one bank of 300 Ah.
  for (int i = 0; i < 3600; ++i) step(g, 100.0, 25.0);
  EXPECT_NEAR(g.batteries[0].state.charge, g.batteries[1].state.charge, 1e-9);
}

// Joined at different charge, batteries settle to the same with nothing connected. (E1 - E2) / (R1 + R2) at
// first: 0.2 of a curve of 1.6 V over 8 mohm, 40 A. Alike, nothing flows.
TEST(Group, CirculatesOnlyWhenBatteriesDiffer) {
  const Bench bench;
  std::vector<Member> members = {member(), member()};
  members[1].charge = 0.7;
  Group g = bench.group(members, 60.0);
  EXPECT_NEAR(joining_A(g)[0], 40.0, 0.05);
  EXPECT_NEAR(joining_A(g)[1], -40.0, 0.05);
  double last_A = 1e9;
  for (int minute = 0; minute < 600; ++minute) {
    const GroupReport r = step(g, 0.0, 25.0);
    EXPECT_NEAR(r.current_A[0] + r.current_A[1], 0.0, 1e-9);
    EXPECT_LE(r.current_A[0], last_A + 1e-11);
    last_A = r.current_A[0];
  }
  EXPECT_NEAR(g.batteries[0].state.charge, g.batteries[1].state.charge, 1e-3);
  EXPECT_NEAR(g.batteries[0].state.charge + g.batteries[1].state.charge, 1.6, 1e-9);
  Group alike = bench.group({member(), member(), member()}, 60.0);
  for (const double a : step(alike, 0.0, 25.0).current_A) EXPECT_EQ(a, 0.0);
}

// What the bus is told before the step is what the step does.
TEST(Group, TerminalForetellsTheBus) {
  const Bench bench;
  std::vector<Member> members = {member(60.0), member(100.0), member(200.0)};
  for (Member& m : members) {
    m.guard.continuous_A = m.guard.charge_limit_A = 1000.0;
    m.guard.peak_A = 2000.0;
  }
  members[0].charge = 0.5;
  const Wiring wiring = same_end(3, 2e-4);
  Group g = bench.group(members, 60.0, &wiring);
  for (const double total_A : {120.0, -70.0, 0.0}) {
    const GroupTerminal t = terminal(g, total_A == 0.0 ? 50.0 : std::fabs(total_A));
    const double foretold_V = t.source_V - (total_A < 0.0 ? t.charge_ohm : t.discharge_ohm) * total_A;
    EXPECT_NEAR(step(g, total_A, 25.0).bus_V, foretold_V, 1e-10);
  }
}

// A small camper with two batteries of 5 mohm: 13.3 V over 2.5 mohm is about 5 kA (a case of practice); a
// path of 1 mohm more takes it down by Ohm's law.
TEST(Group, ProspectiveShortCircuit) {
  const Bench bench;
  std::vector<Member> members = {member(), member()};
  for (Member& m : members) m.battery.extra_resistance_ohm = 1e-3;
  members[0].charge = 0.2;  // the current is that of full batteries all the same
  const Group g = bench.group(members, 60.0);
  EXPECT_NEAR(prospective_short_circuit_A(g, 25.0, 0.0), 13.6 / 2.5e-3, 1.0);
  EXPECT_NEAR(prospective_short_circuit_A(g, 25.0, 1e-3), 13.6 / 3.5e-3, 1.0);
  EXPECT_NEAR(prospective_short_circuit_A(g.batteries[0].parameters, 25.0, 0.0), 13.6 / 5e-3, 1.0);
}

}  // namespace
}  // namespace voltwright::bank
