// Loads minute by minute. Expected values are counted by hand; sums of single-precision minutes to 1e-5.
#include "engine/demand/minutes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <vector>

#include "engine/demand/cooling.h"
#include "engine/demand/inverter.h"

namespace voltwright::demand {
namespace {

constexpr int kDay_min = 1440;

/// Whole days from midnight in one room temperature.
struct Days {
  std::vector<std::int32_t> second, day;
  std::vector<std::uint8_t> driving;
  std::vector<float> room_C;
  bool occupied = true;

  explicit Days(int count, float room = 25.0F) {
    for (int i = 0; i < count * kDay_min; ++i) {
      second.push_back(i % kDay_min * 60);
      day.push_back(i / kDay_min);
      driving.push_back(second.back() >= 9 * 3600 && second.back() < 11 * 3600 ? 1 : 0);
      room_C.push_back(room);
    }
  }
  DemandMinutes draw(const std::vector<Load>& loads, const Inverter* inverter = nullptr, std::uint64_t seed = 1,
                     std::uint64_t season = 0) const {
    return demand_minutes(loads, inverter, {second, day, driving, room_C, occupied}, seed, season);
  }
};

double energy_Wh(const std::vector<float>& power_W) {
  return std::accumulate(power_W.begin(), power_W.end(), 0.0) / 60.0;
}
std::vector<int> minutes_on(const std::vector<float>& power_W) {
  std::vector<int> on;
  for (std::size_t i = 0; i < power_W.size(); ++i) {
    if (power_W[i] > 0.0F) on.push_back(static_cast<int>(i));
  }
  return on;
}

Load load_of(double power_W, Pattern pattern) {
  Load load;
  load.power = units::watts(power_W);
  load.pattern = pattern;
  return load;
}

TEST(DemandMinutes, AlwaysOnTimesItsCount) {
  Load load = load_of(5.0, Pattern::kAlwaysOn);
  load.count = 3.0;
  EXPECT_NEAR(energy_Wh(Days(2).draw({load}).direct_W), 2 * 24 * 15.0, 1e-4);
}

TEST(DemandMinutes, WindowOverMidnight) {
  Load load = load_of(10.0, Pattern::kWindow);
  load.window = {22 * 3600, 6 * 3600};
  const auto demand = Days(1).draw({load});
  EXPECT_NEAR(energy_Wh(demand.direct_W), 80.0, 1e-4);
  EXPECT_GT(demand.direct_W[5 * 60 + 59], 0.0F);
  EXPECT_EQ(demand.direct_W[6 * 60], 0.0F);
  EXPECT_EQ(demand.direct_W[22 * 60 - 1], 0.0F);
  EXPECT_GT(demand.direct_W[22 * 60], 0.0F);
}

TEST(DemandMinutes, HoursAcrossMidnight) {
  Load load = load_of(60.0, Pattern::kHours);
  load.hours_per_day = units::hours(4.0);
  load.window.from_s = 22 * 3600;
  const auto demand = Days(3).draw({load});
  EXPECT_NEAR(energy_Wh(demand.direct_W), 3 * 240.0, 1e-3);
  EXPECT_GT(demand.direct_W[kDay_min + 1 * 60 + 59], 0.0F);
  EXPECT_EQ(demand.direct_W[kDay_min + 2 * 60], 0.0F);
}

// A part of a minute runs at part of the power.
TEST(DemandMinutes, SecondsCount) {
  Load load = load_of(60.0, Pattern::kHours);
  load.hours_per_day = units::seconds(90.0);
  load.window.from_s = 3600 + 30;
  const auto demand = Days(1).draw({load});
  EXPECT_NEAR(static_cast<double>(demand.direct_W[60]), 30.0, 1e-4);
  EXPECT_NEAR(static_cast<double>(demand.direct_W[61]), 60.0, 1e-4);
  EXPECT_EQ(demand.direct_W[62], 0.0F);
}

// 2.4 events of 10 min a day at random inside a window: over 2,000 days the mean energy is right within five standard
// errors of the number of events, and none lies outside the window.
TEST(DemandMinutes, EventsAverageOverManyDays) {
  Load load = load_of(120.0, Pattern::kEvents);
  load.events_per_day = 2.4;
  load.event_length = units::seconds(600.0);
  load.window = {7 * 3600, 10 * 3600};
  const auto demand = Days(2000).draw({load});
  const double events = energy_Wh(demand.direct_W) / 20.0 / 2000.0;
  EXPECT_NEAR(events, 2.4, 5.0 * 0.49 / std::sqrt(2000.0));
  for (const int i : minutes_on(demand.direct_W)) {
    EXPECT_GE(i % kDay_min, 7 * 60);
    EXPECT_LT(i % kDay_min, 10 * 60);
  }
}

TEST(DemandMinutes, EventsDependOnSeedAndSeasonAlone) {
  Load load = load_of(120.0, Pattern::kEvents);
  load.events_per_day = 3.0;
  load.event_length = units::seconds(300.0);
  const Days days(5);
  EXPECT_EQ(days.draw({load}, nullptr, 4, 2).direct_W, days.draw({load}, nullptr, 4, 2).direct_W);
  EXPECT_NE(days.draw({load}, nullptr, 4, 2).direct_W, days.draw({load}, nullptr, 4, 3).direct_W);
  EXPECT_NE(days.draw({load}, nullptr, 4, 2).direct_W, days.draw({load}, nullptr, 5, 2).direct_W);
  // A second load before it moves it to another stream, but a day's events do not depend on the days before.
  const Days longer(6);
  const auto five = days.draw({load}).direct_W;
  const auto six = longer.draw({load}).direct_W;
  EXPECT_TRUE(std::equal(five.begin(), five.end(), six.begin()));
}

TEST(DemandMinutes, StandbyFillsTheTimeBetween) {
  Load load = load_of(50.0, Pattern::kHours);
  load.standby = units::watts(2.0);
  load.hours_per_day = units::hours(3.0);
  EXPECT_NEAR(energy_Wh(Days(1).draw({load}).direct_W), 3 * 50.0 + 21 * 2.0, 1e-4);
}

TEST(DemandMinutes, PresenceOfPeopleAndTheRoad) {
  Days days(1);
  const auto energy = [&](Presence presence) {
    Load load = load_of(10.0, Pattern::kAlwaysOn);
    load.presence = presence;
    return energy_Wh(days.draw({load}).direct_W);
  };
  EXPECT_NEAR(energy(Presence::kOccupied), 240.0, 1e-4);
  EXPECT_NEAR(energy(Presence::kDriving), 20.0, 1e-4);
  EXPECT_NEAR(energy(Presence::kParked), 220.0, 1e-4);
  days.occupied = false;
  EXPECT_EQ(energy(Presence::kOccupied), 0.0);
  EXPECT_EQ(energy(Presence::kParked), 0.0);
  EXPECT_NEAR(energy(Presence::kAlways), 240.0, 1e-4);
}

TEST(DemandMinutes, SurgeStandsInTheFirstMinuteOnly) {
  Load load = load_of(100.0, Pattern::kWindow);
  load.window = {8 * 3600, 9 * 3600};
  load.surge_factor = 4.0;
  const auto demand = Days(2).draw({load});
  EXPECT_EQ(minutes_on(demand.surge_direct_W), (std::vector<int>{8 * 60, kDay_min + 8 * 60}));
  EXPECT_NEAR(static_cast<double>(demand.surge_direct_W[8 * 60]), 300.0, 1e-3);
}

// Two loads that start in one minute: the larger start counts, as they do not start in the same instant.
TEST(DemandMinutes, TheLargestStartCounts) {
  Load small = load_of(100.0, Pattern::kWindow);
  small.window = {8 * 3600, 9 * 3600};
  small.surge_factor = 3.0;
  Load large = small;
  large.power = units::watts(200.0);
  EXPECT_NEAR(static_cast<double>(Days(1).draw({small, large}).surge_direct_W[480]), 400.0, 1e-3);
}

// A compressor runs in spells of twelve minutes or more and takes the energy that the heat leak asks for.
TEST(DemandMinutes, CompressorTakesTheCoolingEnergy) {
  Load load = load_of(50.0, Pattern::kTemperature);
  load.cooling.heat_leak = units::watts_per_kelvin(0.8);
  load.cooling.cop_at_25C = 1.5;
  for (const float room_C : {15.0F, 25.0F, 35.0F}) {
    const auto demand = Days(20, room_C).draw({load});
    const double expected_Wh = 20 * 24 * cooling_power_W(load.cooling, static_cast<double>(room_C));
    // One run may still be owed at the end.
    EXPECT_NEAR(energy_Wh(demand.direct_W), expected_Wh, 50.0 * 12.0 / 60.0 + 1e-3) << room_C;
    const auto on = minutes_on(demand.direct_W);
    int spell = 1;
    for (std::size_t i = 1; i < on.size(); ++i) {
      if (on[i] == on[i - 1] + 1) {
        ++spell;
      } else {
        EXPECT_GE(spell, 12);
        spell = 1;
      }
    }
  }
}

TEST(DemandMinutes, CompressorAtItsLimitRunsAllTheTime) {
  Load load = load_of(10.0, Pattern::kTemperature);
  load.cooling.heat_leak = units::watts_per_kelvin(3.0);
  const auto demand = Days(2, 45.0F).draw({load});
  EXPECT_LE(energy_Wh(demand.direct_W), 48 * 10.0 + 1e-3);
  EXPECT_GE(energy_Wh(demand.direct_W), 47 * 10.0);
}

TEST(DemandMinutes, InverterAddsItsLosses) {
  Load load = load_of(500.0, Pattern::kWindow);
  load.window = {8 * 3600, 9 * 3600};
  load.feed = Feed::kInverter;
  load.surge_factor = 2.0;
  Inverter inverter;
  inverter.rated = units::watts(2000.0);
  inverter.idle = units::watts(16.0);
  const auto demand = Days(1).draw({load}, &inverter);
  EXPECT_NEAR(static_cast<double>(demand.inverter_W[480]), inverter_input_W(inverter, 500.0), 1e-3);
  EXPECT_NEAR(static_cast<double>(demand.inverter_W[0]), 16.0, 1e-4);
  EXPECT_NEAR(static_cast<double>(demand.surge_inverter_W[480]),
              inverter_input_W(inverter, 1000.0) - inverter_input_W(inverter, 500.0), 1e-3);
  EXPECT_EQ(energy_Wh(demand.direct_W), 0.0);
  EXPECT_EQ(energy_Wh(Days(1).draw({load}, nullptr).inverter_W), 0.0) << "no inverter, no alternating current";
}

TEST(DemandMinutes, EssentialPartOfTheInverter) {
  Load comfort = load_of(300.0, Pattern::kAlwaysOn);
  comfort.feed = Feed::kInverter;
  comfort.need = Need::kComfort;
  Load essential = load_of(100.0, Pattern::kAlwaysOn);
  essential.feed = Feed::kInverter;
  Inverter inverter;
  inverter.rated = units::watts(1000.0);
  inverter.idle = units::watts(10.0);
  const auto demand = Days(1).draw({comfort, essential}, &inverter);
  EXPECT_NEAR(static_cast<double>(demand.essential_inverter_W[5] / demand.inverter_W[5]), 0.25, 1e-6);
}

}  // namespace
}  // namespace voltwright::demand
