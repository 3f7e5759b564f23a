// Batteries in parallel that differ, stepped together: who opens first, what the rest then carry, what flows
// between them, and what must not be joined at all. Where no source is named, a value follows from Ohm's law,
// conservation of charge or the threshold that the case itself sets.
#include "engine/bank/group.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace voltwright::bank {
namespace {

/// Four cells with a straight voltage curve from 12.0 to 13.6 V and 4 mohm at 100 Ah, and no other losses, so
/// that every current can be worked by hand.
cell::Chemistry straight() {
  cell::Chemistry c;
  c.id = "straight";
  c.ocv_V = {{0.0, 3.0}, {1.0, 3.4}};
  c.resistance.ohmic_ohm_Ah = 0.1;
  c.resistance.activation_kJ_mol = 0.0;
  c.self_discharge_per_month = 0.0;
  return c;
}

Member member(double capacity_Ah = 100.0) {
  Member m;
  m.battery.name = "A " + std::to_string(static_cast<int>(capacity_Ah)) + " Ah battery";
  m.battery.chemistry = "straight";
  m.battery.capacity_Ah = capacity_Ah;
  m.battery.mass_kg = {10.0, 10.0, 10.0};
  m.battery.continuous_A = 100.0;
  m.battery.peak_A = 200.0;
  m.battery.peak_s = 3.0;
  m.guard.electronic = 1.0;
  m.guard.continuous_A = 100.0;
  m.guard.peak_A = 200.0;
  m.guard.peak_s = 3.0;
  m.guard.charge_limit_A = 100.0;
  m.charge = 0.9;
  m.temperature_C = 25.0;
  return m;
}

struct Bench {
  cell::Chemistry chemistry = straight();
  cell::Tables tables = cell::make_tables(chemistry);

  Group group(std::vector<Member> members, double step_s, const Wiring* wiring = nullptr) const {
    GroupSetup setup;
    setup.wiring = wiring != nullptr ? *wiring : bus_bars(std::vector<double>(members.size(), 0.0));
    setup.members = std::move(members);
    setup.step_s = step_s;
    return make_group(setup, chemistry, tables).value();
  }
};

/// Seconds until a steady current opens a member by the inverse-time rule of the protection page, from rest
/// or from an overload already gathered: (1 - overload) 3 s (200^2 - 100^2) / (I^2 - 100^2).
double opens_after_s(double current_A, double overload = 0.0) {
  return (1.0 - overload) * 3.0 * 3e4 / (current_A * current_A - 1e4);
}

std::string warnings_of(const GroupSetup& setup) {
  std::string text;
  for (const base::Problem& p : check_group(setup, straight())) {
    EXPECT_EQ(p.severity, base::Severity::kWarning);
    text += base::to_text(p) + "\n";
  }
  return text;
}

GroupSetup setup_of(std::vector<Member> members) {
  GroupSetup setup;
  setup.wiring = bus_bars(std::vector<double>(members.size(), 0.0));
  setup.members = std::move(members);
  return setup;
}

bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// Marine insurance and installation standards permit no mixed chemistries side by side; a converter between
// separate banks is the remedy (a sheet on wiring practice).
TEST(CheckGroup, RefusesMixedChemistriesAndVoltages) {
  GroupSetup mixed = setup_of({member(), member()});
  mixed.members[1].battery.chemistry = "agm";
  const auto refused = make_group(mixed, straight(), cell::make_tables(straight()));
  ASSERT_FALSE(refused.ok());
  ASSERT_EQ(refused.problems().size(), 1U);
  EXPECT_EQ(refused.problems()[0].severity, base::Severity::kError);
  EXPECT_EQ(refused.problems()[0].given, "agm");
  EXPECT_TRUE(says(refused.problems()[0].remedy, "DC-DC"));

  GroupSetup voltages = setup_of({member(), member()});
  voltages.members[1].in_series = 2;
  EXPECT_TRUE(base::has_error(check_group(voltages, straight())));
}

TEST(CheckGroup, RefusesWhatMakesNoSense) {
  EXPECT_TRUE(base::has_error(check_group(GroupSetup{}, straight())));
  GroupSetup wiring = setup_of({member(), member()});
  wiring.wiring = same_end(3, 1e-4);
  EXPECT_TRUE(base::has_error(check_group(wiring, straight())));
  for (const double bad : {-0.1, 1.1, std::nan("")}) {
    GroupSetup charge = setup_of({member()});
    charge.members[0].charge = bad;
    EXPECT_TRUE(base::has_error(check_group(charge, straight())));
    GroupSetup age = setup_of({member()});
    age.members[0].lost_capacity = bad;
    EXPECT_TRUE(base::has_error(check_group(age, straight())));
  }
  GroupSetup lead = setup_of({member(), member()});
  lead.wiring.lead_ohm[0] = -1e-3;
  EXPECT_TRUE(base::has_error(check_group(lead, straight())));
  GroupSetup step = setup_of({member()});
  step.step_s = 0.0;
  EXPECT_TRUE(base::has_error(check_group(step, straight())));
}

// A case of practice: 100 and 200 Ah with 100 A allowed of each give 150 A, as the large one carries two
// thirds.
TEST(CheckGroup, WarnsWithTheSharesOfDifferentSizes) {
  EXPECT_EQ(warnings_of(setup_of({member(), member()})), "");
  const std::string text = warnings_of(setup_of({member(100.0), member(200.0)}));
  EXPECT_TRUE(says(text, "differ in size: of 100 A they carry 33 and 67 A")) << text;
  EXPECT_TRUE(says(text, "at 150 A of the bank and not at 200 A")) << text;
  GroupSetup aged = setup_of({member(), member()});
  aged.members[1].resistance_factor = 1.5;
  aged.members[1].lost_capacity = 0.2;
  const std::string age = warnings_of(aged);
  EXPECT_TRUE(says(age, "differ in age: of 100 A they carry 60 and 40 A")) << age;
}

TEST(CheckGroup, WarnsOfUnevenWiringAndOfJoiningAtDifferentCharge) {
  GroupSetup row = setup_of({member(), member(), member(), member()});
  row.wiring = same_end(4, 4e-4);
  EXPECT_TRUE(says(warnings_of(row), "opposite ends"));
  row.wiring = diagonal(4, 1e-4);
  EXPECT_EQ(warnings_of(row), "");
  // 1.6 V of curve times 0.8 over two times 4 mohm: 160 A.
  GroupSetup apart = setup_of({member(), member()});
  apart.members[1].charge = 0.1;
  const std::string text = warnings_of(apart);
  EXPECT_TRUE(says(text, "160 A flow into")) << text;
  EXPECT_TRUE(says(text, "160 A flow out of")) << text;
}

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

// A case of practice: an air conditioner with a soft start draws 240 A for a tenth of a second; a battery
// whose protection opens at 200 A trips, two carry 120 A each. With a peak of 250 A one just holds.
TEST(Group, StartTripsOneBatteryAndNotTwo) {
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
TEST(Group, ThreeCarryWhatOneCannot) {
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
TEST(Group, CascadeOpensOneAfterTheOther) {
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
TEST(Group, OverloadGathersAsInTheGuard) {
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
TEST(Group, ColdBatteryTakesNoChargeButGives) {
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
TEST(Group, WeakBatteryEmptiesFirst) {
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

TEST(Group, VoltageOpensOneDirectionOnly) {
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
TEST(Group, FullestCellOpensItsBatteryEarly) {
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
TEST(Group, FrozenBatteryCarriesNothing) {
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

// An empty battery joined to a full one takes more than it may be charged with and opens.
TEST(Group, JoiningOpensTheBatteryThatIsChargedTooFast) {
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
TEST(Group, WithoutElectronicsTheLoadsAreCutOff) {
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
