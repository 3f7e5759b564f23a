// Who of a group opens first, when and why, and what the rest then carry. Where no source is named, a value
// follows from Ohm's law, conservation of charge or the threshold that the case itself sets.
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "tests/unit/bank/straight_group.h"

namespace voltwright::bank {
namespace {

/// Seconds until a steady current opens a member by the inverse-time rule of the protection page, from rest
/// or from an overload already gathered: (1 - overload) 3 s (200^2 - 100^2) / (I^2 - 100^2).
double opens_after_s(double current_A, double overload = 0.0) {
  return (1.0 - overload) * 3.0 * 3e4 / (current_A * current_A - 1e4);
}

// A case of practice: an air conditioner with a soft start draws 240 A for a tenth of a second; a battery
// whose protection opens at 200 A trips, two carry 120 A each. With a peak of 250 A one just holds.
TEST(GroupTrip, StartTripsOneBatteryAndNotTwo) {
  const Bench bench;
  Group one = bench.group({member()}, 0.1);
  const GroupReport alone = step(one, 240.0, 25.0);
  EXPECT_FALSE(alone.carried);
  EXPECT_EQ(alone.total_A, 0.0);
  ASSERT_EQ(alone.trips.size(), 1U);
  EXPECT_EQ(alone.trips[0].reason, TripReason::kPeakCurrent);
  EXPECT_EQ(alone.trips[0].time_s, 0.0);
  EXPECT_FALSE(alone.trips[0].carried);
  Group two = bench.group({member(), member()}, 0.1);
  const GroupReport shared = step(two, 240.0, 25.0);
  EXPECT_TRUE(shared.carried);
  EXPECT_TRUE(shared.trips.empty());
  EXPECT_NEAR(shared.current_A[0], 120.0, 1e-9);
  Member strong = member();
  strong.guard.peak_A = 250.0;
  Group held = bench.group({strong}, 0.1);
  EXPECT_TRUE(step(held, 240.0, 25.0).carried);
}

// A case of practice: 142 A of air conditioner; one 100 A battery cannot, three of 100 Ah last 300 / 142
// = 2.11 h.
TEST(GroupTrip, ThreeCarryWhatOneCannot) {
  const Bench bench;
  for (const double step_s : {0.5, 1.0, 60.0}) {
    Group one = bench.group({member()}, step_s);
    while (!one.first_trip) step(one, 142.0, 25.0);
    EXPECT_EQ(one.first_trip->reason, TripReason::kLongCurrent);
    EXPECT_NEAR(one.first_trip->time_s, opens_after_s(142.0), 1e-9);
    EXPECT_NEAR(one.first_trip->current_A, 142.0, 1e-9);
  }
  std::vector<Member> full(3, member());
  for (Member& m : full) m.charge = 1.0;
  Group three = bench.group(full, 60.0);
  while (!three.first_trip) step(three, 142.0, 25.0);
  EXPECT_EQ(three.first_trip->reason, TripReason::kEmpty);
  EXPECT_NEAR(three.first_trip->time_s / 3600.0, 300.0 / 142.0, 1.0 / 60.0);
}

// Conductances 1/4, 1/5, 1/5 mohm: of 390 A the first carries 150 A and the others 120 A each, all gather
// overload; when the first opens the others carry 195 A each, the second opens, and the last is above its
// peak at once.
TEST(GroupTrip, CascadeOpensOneAfterTheOther) {
  const Bench bench;
  const Wiring wiring = bus_bars({0.0, 1e-3, 1e-3});
  const double first_s = opens_after_s(150.0);
  const double gathered = first_s / opens_after_s(120.0);
  const double second_s = first_s + opens_after_s(195.0, gathered);
  for (const double step_s : {0.25, 1.0, 10.0}) {
    Group g = bench.group({member(), member(), member()}, step_s, &wiring);
    for (GroupBattery& b : g.batteries) b.parameters.step_s = 1e-6;  // no fall of voltage within the step
    std::vector<Trip> trips;
    GroupReport last;
    for (double t = 0.0; t < 19.9; t += step_s) {
      last = step(g, 390.0, 25.0);
      trips.insert(trips.end(), last.trips.begin(), last.trips.end());
    }
    ASSERT_EQ(trips.size(), 3U) << step_s;
    EXPECT_EQ(trips[0].battery, 0U);
    EXPECT_EQ(trips[0].reason, TripReason::kLongCurrent);
    EXPECT_NEAR(trips[0].time_s, first_s, 1e-4);
    EXPECT_NEAR(trips[0].current_A, 150.0, 1e-3);
    EXPECT_NEAR(trips[0].then_A[1], 195.0, 1e-3);
    EXPECT_EQ(trips[0].then_A[0], 0.0);
    EXPECT_TRUE(trips[0].carried);
    EXPECT_NEAR(trips[1].time_s, second_s, 1e-4);
    EXPECT_EQ(trips[1].reason, TripReason::kLongCurrent);
    EXPECT_NEAR(trips[1].then_A[trips[2].battery], 390.0, 1e-3);
    EXPECT_EQ(trips[2].reason, TripReason::kPeakCurrent);
    EXPECT_NEAR(trips[2].time_s, second_s, 1e-4);
    EXPECT_FALSE(trips[2].carried);
    EXPECT_EQ(g.first_trip->battery, 0U);
    EXPECT_FALSE(last.carried);
    EXPECT_EQ(last.total_A, 0.0);
    for (const double a : last.current_A) EXPECT_EQ(a, 0.0);
    reset_over_current(g);
    EXPECT_TRUE(step(g, 100.0, 25.0).carried);
  }
}

// Overload gathers across steps and is forgotten below the continuous current, as the guard does for one
// bank: stepped alone, group and guard open at the same moment. Opened, it tries again after a minute.
TEST(GroupTrip, OverloadGathersAsInTheGuard) {
  const Bench bench;
  Group g = bench.group({member()}, 1.0);
  GuardState<double> alone;
  int opened_after_s = 0;
  for (int second = 1; second <= 400 && opened_after_s == 0; ++second) {
    const double current_A = second % 7 < 5 ? 150.0 : 20.0;
    const GroupReport r = step(g, current_A, 25.0);
    watch<double>(member().guard, alone, {13.0, 13.0, 13.0, 0.9, 0.9, 0.0, current_A, 1.0});
    if (r.trips.empty()) {
      ASSERT_NEAR(g.batteries[0].latches.overload, alone.overload, 1e-9) << second;
      ASSERT_LT(alone.over_current, 0.5);
    } else {
      opened_after_s = second;
      ASSERT_GT(alone.over_current, 0.5);
    }
  }
  ASSERT_GT(opened_after_s, 7) << "the sample is meant to gather overload over several rounds";
  int waits_s = 0;
  while (!step(g, 50.0, 25.0).carried) ++waits_s;
  EXPECT_NEAR(waits_s, kRetry_s, 1.0);
}

// Protection with its release: at -5 degC no charge, but discharge; the warm battery takes the whole charge.
TEST(GroupTrip, ColdBatteryTakesNoChargeButGives) {
  const Bench bench;
  std::vector<Member> members = {member(), member()};
  members[1].temperature_C = -5.0;
  Group g = bench.group(members, 60.0);
  const GroupReport charging = step(g, -40.0, -5.0);
  ASSERT_EQ(charging.trips.size(), 1U);
  EXPECT_EQ(charging.trips[0].reason, TripReason::kChargeCold);
  EXPECT_EQ(charging.trips[0].battery, 1U);
  EXPECT_NEAR(charging.trips[0].then_A[0], -40.0, 1e-9);
  EXPECT_NEAR(charging.current_A[0], -40.0, 1e-9);
  EXPECT_EQ(charging.current_A[1], 0.0);
  const GroupReport giving = step(g, 40.0, -5.0);
  EXPECT_GT(giving.current_A[1], 15.0);
  std::vector<Member> all_cold(2, members[1]);
  Group frozen = bench.group(all_cold, 60.0);
  EXPECT_FALSE(step(frozen, -40.0, -5.0).carried);
  EXPECT_EQ(terminal(frozen, 40.0).charge_ohm, Branch::kBlocked);
  EXPECT_TRUE(step(frozen, 40.0, -5.0).carried);
}

// An old battery of 60 % capacity but the resistance of a new one gives its share until it is empty, the
// others then carry the rest. By charge: the currents differ only as the voltages fall apart.
TEST(GroupTrip, WeakBatteryEmptiesFirst) {
  const Bench bench;
  std::vector<Member> members = {member(), member(), member()};
  members[2].lost_capacity = 0.4;
  members[2].guard.floor_charge = 0.2;
  members[2].charge = 0.5;
  Group g = bench.group(members, 60.0);
  while (!g.first_trip) ASSERT_TRUE(step(g, 90.0, 25.0).carried);
  EXPECT_EQ(g.first_trip->battery, 2U);
  EXPECT_EQ(g.first_trip->reason, TripReason::kEmpty);
  EXPECT_NEAR(g.first_trip->then_A[0], 45.0, 0.5);
  EXPECT_EQ(g.first_trip->then_A[2], 0.0);
  EXPECT_NEAR(std::accumulate(g.first_trip->then_A.begin(), g.first_trip->then_A.end(), 0.0), 90.0, 1e-9);
  const GroupReport next = step(g, 90.0, 25.0);
  EXPECT_NEAR(next.current_A[0], g.first_trip->then_A[0], 1e-9) << "what was foretold is what happens";
  // Charged again it comes back by itself, as its release says.
  for (int minute = 0; minute < 240 && g.batteries[2].latches.empty > 0.5; ++minute) step(g, -60.0, 25.0);
  EXPECT_LT(g.batteries[2].latches.empty, 0.5);
  EXPECT_GT(step(g, 90.0, 25.0).current_A[2], 0.0);
}

TEST(GroupTrip, VoltageOpensOneDirectionOnly) {
  const Bench bench;
  std::vector<Member> members = {member(), member()};
  members[0].guard.over_voltage_V = 13.7;
  members[0].charge = members[1].charge = 0.99;
  Group g = bench.group(members, 60.0);
  while (!g.first_trip) step(g, -80.0, 25.0);
  EXPECT_EQ(g.first_trip->reason, TripReason::kOverVoltage);
  EXPECT_EQ(g.first_trip->battery, 0U);
  EXPECT_GT(g.first_trip->voltage_V, 13.7);
  EXPECT_NEAR(g.first_trip->then_A[1], -80.0, 1e-9);
  EXPECT_EQ(step(g, -80.0, 25.0).current_A[0], 0.0);
  EXPECT_GT(step(g, 80.0, 25.0).current_A[0], 30.0);

  std::vector<Member> low = {member(), member()};
  low[1].guard.under_voltage_V = 12.5;
  Group falling = bench.group(low, 60.0);
  while (!falling.first_trip) step(falling, 60.0, 25.0);
  EXPECT_EQ(falling.first_trip->reason, TripReason::kUnderVoltage);
  EXPECT_EQ(falling.first_trip->battery, 1U);
  EXPECT_LT(falling.first_trip->voltage_V, 12.5);
}

// One cell ahead of the others ends the charge of its battery early; the battery beside it takes the rest.
TEST(GroupTrip, FullestCellOpensItsBatteryEarly) {
  const Bench bench;
  std::vector<Member> members = {member(), member()};
  for (Member& m : members) {
    m.guard.over_voltage_V = 13.7;
    m.charge = 0.7;
  }
  members[1].ahead = 0.1;  // 0.16 V for four cells on the straight curve
  Group g = bench.group(members, 60.0);
  while (!g.first_trip) ASSERT_TRUE(step(g, -80.0, 25.0).carried);
  EXPECT_EQ(g.first_trip->reason, TripReason::kOverVoltage);
  EXPECT_EQ(g.first_trip->battery, 1U);
  EXPECT_NEAR(g.first_trip->voltage_V, 13.7 - 0.16, 0.02);
  EXPECT_NEAR(step(g, -80.0, 25.0).current_A[0], -80.0, 1e-9);
}

// A frozen electrolyte carries nothing, electronics or not; the battery that is charged enough not to freeze
// does.
TEST(GroupTrip, FrozenBatteryCarriesNothing) {
  Bench bench;
  bench.chemistry.freezing_C = {{0.0, -5.0}, {1.0, -60.0}};
  bench.tables = cell::make_tables(bench.chemistry);
  std::vector<Member> members = {member(), member()};
  for (Member& m : members) {
    m.guard.electronic = 0.0;
    m.guard.discharge_min_C = m.guard.charge_min_C = -40.0;
    m.guard.continuous_A = Guard<double>{}.continuous_A;
    m.guard.peak_A = Guard<double>{}.peak_A;
    m.temperature_C = -20.0;
  }
  members[1].charge = 0.1;
  Group g = bench.group(members, 60.0);
  const GroupReport r = step(g, 30.0, -20.0);
  ASSERT_EQ(r.trips.size(), 1U);
  EXPECT_EQ(r.trips[0].reason, TripReason::kFrozen);
  EXPECT_EQ(r.trips[0].battery, 1U);
  EXPECT_TRUE(r.carried);
  EXPECT_NEAR(r.current_A[0], 30.0, 1e-9);
  EXPECT_EQ(r.current_A[1], 0.0);
}

// An empty battery joined to a full one takes more than it may be charged with and opens.
TEST(GroupTrip, JoiningOpensTheBatteryThatIsChargedTooFast) {
  const Bench bench;
  std::vector<Member> members = {member(), member()};
  members[1].charge = 0.5;
  members[1].guard.charge_limit_A = 50.0;
  Group g = bench.group(members, 1.0);
  for (int s = 0; s < 5; ++s) step(g, 0.0, 25.0);
  ASSERT_TRUE(g.first_trip);
  EXPECT_EQ(g.first_trip->reason, TripReason::kChargeCurrent);
  EXPECT_EQ(g.first_trip->battery, 1U);
  EXPECT_NEAR(g.first_trip->time_s, 3.0, 1e-9);
}

// Nothing opens a lead-acid battery by itself; the loads' cut-off holds for the whole group.
TEST(GroupTrip, WithoutElectronicsTheLoadsAreCutOff) {
  const Bench bench;
  std::vector<Member> members = {member(), member()};
  for (Member& m : members) {
    m.guard.electronic = 0.0;
    m.guard.continuous_A = Guard<double>{}.continuous_A;
    m.guard.peak_A = Guard<double>{}.peak_A;
  }
  members[1].charge = 0.6;
  members[1].guard.floor_charge = 0.5;
  Group g = bench.group(members, 60.0);
  while (!g.first_trip) step(g, 500.0, 25.0);
  EXPECT_EQ(g.first_trip->reason, TripReason::kEmpty) << "no current opened it before";
  EXPECT_FALSE(g.first_trip->opened);
  EXPECT_FALSE(g.first_trip->carried);
  const GroupReport off = step(g, 100.0, 25.0);
  EXPECT_FALSE(off.carried);
  EXPECT_NEAR(off.current_A[0] + off.current_A[1], 0.0, 1e-9);
  EXPECT_LT(off.current_A[1], 0.0) << "the fuller battery goes on charging the emptier one";
  EXPECT_EQ(terminal(g, 100.0).discharge_ohm, Branch::kBlocked);
  EXPECT_TRUE(step(g, -20.0, 25.0).carried);
}

}  // namespace
}  // namespace voltwright::bank
