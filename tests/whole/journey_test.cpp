// Journeys of many legs: across the date line both ways, in both hemispheres, moved to another date.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <string>

#include "files/gazetteer.h"
#include "files/plan.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

constexpr std::int64_t kDay_s = 86400;

std::string lamp() {
  return warm_cabin() + R"(
[[load]]
name = "Lamp"
power = "5 W"
hours = "4 h/day"
)";
}

std::string leg(const char* lat, const char* lon, const char* zone, const std::string& keys) {
  return std::string("\n[[leg]]\nlat = ") + lat + "\nlon = " + lon + "\nzone = \"" + zone + "\"\n" + keys;
}

std::string fiji(const std::string& keys) { return leg("-18.14", "178.44", "Pacific/Fiji", keys); }
std::string hawaii(const std::string& keys) { return leg("21.31", "-157.86", "Pacific/Honolulu", keys); }

base::Result<files::ReadPlan> read(const std::string& text, const std::string& start = "") {
  static const files::Gazetteer kNoPlaces;
  return files::read_plan(text, "journey.toml", catalogue(), kNoPlaces, start);
}

/// Minutes of all legs, after checking that each begins when the one before it ends.
std::int64_t whole_minutes(const std::vector<journey::Leg>& legs) {
  std::int64_t minutes = 0;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    EXPECT_GT(legs[i].end_utc_s, legs[i].start_utc_s) << i;
    if (i > 0) {
      EXPECT_EQ(legs[i].start_utc_s, legs[i - 1].end_utc_s) << i;
    }
    minutes += (legs[i].end_utc_s - legs[i].start_utc_s) / 60;
  }
  return minutes;
}

// Twenty times there and back over the date line, between 18 deg south and 21 deg north.
TEST(Journey, FortyLegsOverTheDateLineAndTheEquator) {
  std::string text = lamp() + fiji("from = 2027-03-01\ndays = 5\n");
  for (int i = 1; i < 40; ++i) text += i % 2 == 1 ? hawaii("days = 5\n") : fiji("days = 5\n");
  const Practice practice(text);
  const auto& legs = practice.plan().legs;
  ASSERT_EQ(legs.size(), 40U);
  const std::int64_t minutes = whole_minutes(legs);
  EXPECT_EQ(minutes * 60, legs.back().end_utc_s - legs.front().start_utc_s);
  // Forty times five days; the clocks of the two ends differ by 22 h, and no minute more is lost or won.
  EXPECT_NEAR(static_cast<double>(minutes) / 1440.0, 200.0, 1.0);
  for (const journey::Leg& one : legs) {
    EXPECT_NEAR(static_cast<double>(one.end_utc_s - one.start_utc_s), 5.0 * kDay_s, 2.0 * 3600.0 + 1.0);
  }
  const Told told = practice.tell("lfp-12v-100ah");
  EXPECT_EQ(static_cast<std::int64_t>(told.series.minutes.size()), minutes);
  EXPECT_EQ(told.fared.minutes, static_cast<double>(minutes));
}

TEST(Journey, ADateMayComeTwiceOrBeLeftOutOverTheDateLine) {
  const auto east =
      read(lamp() + fiji("from = 2027-03-01\nto = 2027-03-10\n") + hawaii("from = 2027-03-10\ndays = 3\n"));
  ASSERT_TRUE(east.ok());
  whole_minutes(east.value().plan.legs);
  const auto west =
      read(lamp() + hawaii("from = 2027-03-01\nto = 2027-03-10\n") + fiji("from = 2027-03-12\ndays = 3\n"));
  ASSERT_TRUE(west.ok());
  whole_minutes(west.value().plan.legs);
  // Elsewhere both stay problems.
  const auto gap =
      read(lamp() + fiji("from = 2027-03-01\nto = 2027-03-10\n") + fiji("from = 2027-03-12\ndays = 3\n"));
  EXPECT_FALSE(gap.ok());
}

TEST(Journey, ALegOfWhichTheDateLineLeavesNothingIsAProblem) {
  const auto gone =
      read(lamp() + leg("-14.28", "-170.70", "Pacific/Pago_Pago", "from = 2027-03-01\ndays = 1\n") +
           leg("1.87", "-157.43", "Pacific/Kiritimati", "from = 2027-03-02\ndays = 3\n"));
  ASSERT_FALSE(gone.ok());
  EXPECT_NE(gone.problems().front().what.find("begins before leg 1 has begun"), std::string::npos);
}

TEST(Journey, MovedByDaysKeepsEveryLegsDays) {
  const std::string text = lamp() +
                           leg("59.91", "10.75", "Europe/Oslo", "from = 2027-02-10\nto = 2027-03-10\n") +
                           leg("69.65", "18.96", "Europe/Oslo", "days = 10\n");
  const auto planned = read(text);
  const auto moved = read(text, "2028-02-10");
  ASSERT_TRUE(planned.ok());
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(planned.value().moved, "");
  EXPECT_NE(moved.value().moved.find("365 days later"), std::string::npos) << moved.value().moved;
  EXPECT_NE(moved.value().moved.find("29 February"), std::string::npos) << moved.value().moved;
  for (std::size_t i = 0; i < 2; ++i) {
    const journey::Leg& a = planned.value().plan.legs[i];
    const journey::Leg& b = moved.value().plan.legs[i];
    EXPECT_EQ(b.start_utc_s - a.start_utc_s, 365 * kDay_s) << i;
    EXPECT_EQ(b.end_utc_s - b.start_utc_s, a.end_utc_s - a.start_utc_s) << i;
  }
}

TEST(Journey, AYearOrMonthKeepsThePlannedDayIfThereIsOne) {
  const std::string leap = lamp() + leg("59.91", "10.75", "Etc/UTC", "from = 2028-02-29\ndays = 2\n");
  const auto start_day = [&](const std::string& start) {
    const auto moved = read(leap, start);
    EXPECT_TRUE(moved.ok()) << start;
    return moved.ok() ? moved.value().plan.legs[0].start_utc_s / kDay_s : 0;
  };
  EXPECT_EQ(start_day("2027"), 20877);     // 2027-02-28
  EXPECT_EQ(start_day("2027-06"), 20998);  // 2027-06-29
  EXPECT_EQ(start_day("2032"), 22704);     // 2032-02-29
  for (const char* wrong : {"2027-02-29", "27", "2027-13", "1969", "2101", "soon", "2027-05-01x"}) {
    EXPECT_FALSE(read(leap, wrong).ok()) << wrong;
  }
}

std::string sunny() {
  return lamp() + R"(
[[solar]]
name = "Roof"
flat = true
module = { peak = "175 W", open_circuit = "24.3 V", short_circuit = "9.4 A", at_peak_voltage = "20.1 V", at_peak_current = "8.7 A" }
controller = { kind = "mppt", output_limit = "30 A", input_limit = "100 V" }

[engine]
output_limit = "30 A"
)";
}

double solar_Wh(const season::Series& series) {
  double sum = 0.0;
  for (const season::Minute& m : series.minutes) sum += m.solar_W / 60.0;
  return sum;
}

// A leg cut in two at the same place is the same journey: not a minute of it differs.
TEST(Journey, CuttingALegInTwoChangesNothing) {
  const auto oslo = [](const std::string& keys) {
    return leg("59.91", "10.75", "Europe/Oslo", "drive = \"1 h/day\"\n" + keys);
  };
  const Told whole = Practice(sunny() + oslo("from = 2027-03-20\ndays = 20\n")).tell("lfp-12v-100ah");
  const Told cut =
      Practice(sunny() + oslo("from = 2027-03-20\ndays = 7\n") + oslo("days = 13\n")).tell("lfp-12v-100ah");
  EXPECT_EQ(whole.trace.charge, cut.trace.charge);
  EXPECT_EQ(whole.trace.solar_W, cut.trace.solar_W);
  EXPECT_EQ(whole.series.outside_C, cut.series.outside_C);
  EXPECT_GT(solar_Wh(whole.series), 0.0);
}

// Driven from 60 deg north to 40 deg north in one winter day: before the drive it is as at the start, after
// it as at the end.
TEST(Journey, ADriveTakesItsWeatherAlong) {
  const auto day = [](const char* lat, const std::string& keys) {
    return sunny() + leg(lat, "5.0", "Etc/UTC",
                         "from = 2027-12-10\ndays = 1\ndrive = \"8 h/day\"\n"
                         "drive_from = \"04:00\"\nelevation = \"100 m\"\n" +
                             keys);
  };
  const Practice north(day("60", ""));
  const Practice south(day("40", ""));
  const Practice drive(day("60", "to_lat = 40\nto_lon = 5.0\nto_elevation = \"100 m\"\n"));
  const season::Series a = north.draw(0);
  const season::Series b = south.draw(0);
  const season::Series way = drive.draw(0);
  ASSERT_EQ(way.minutes.size(), a.minutes.size());
  for (std::size_t i = 0; i < way.minutes.size(); ++i) {
    if (i < 240) {
      EXPECT_EQ(way.outside_C[i], a.outside_C[i]) << i;
    }
    if (i >= 720) {
      EXPECT_FLOAT_EQ(way.outside_C[i], b.outside_C[i]) << i;
    }
    EXPECT_GE(way.outside_C[i], std::min(a.outside_C[i], b.outside_C[i]) - 1e-4F) << i;
    EXPECT_LE(way.outside_C[i], std::max(a.outside_C[i], b.outside_C[i]) + 1e-4F) << i;
    if (i >= 720) {
      EXPECT_NEAR(way.minutes[i].solar_W, b.minutes[i].solar_W, 0.01) << i;
    }
  }
  EXPECT_GT(solar_Wh(way), solar_Wh(a));
  EXPECT_LT(solar_Wh(way), solar_Wh(b));
}

TEST(Journey, ALegThatLeadsElsewhereMustDrive) {
  const auto still =
      read(lamp() + leg("60", "5", "Etc/UTC", "from = 2027-03-01\ndays = 1\nto_lat = 61\nto_lon = 5\n"));
  ASSERT_FALSE(still.ok());
  EXPECT_NE(still.problems().front().what.find("does not drive"), std::string::npos);
  EXPECT_FALSE(read(lamp() + leg("60", "5", "Etc/UTC",
                                 "from = 2027-03-01\ndays = 1\nto_lat = 61\ndrive = \"1 h/day\"\n"))
                   .ok());
}

TEST(Journey, LegsComeFromATrackOrFromThePlan) {
  const auto track = read(lamp() + "\n[journey]\ntrack = \"summer.gpx\"\n");
  ASSERT_TRUE(track.ok());
  EXPECT_EQ(track.value().track, "summer.gpx");
  EXPECT_TRUE(track.value().plan.legs.empty());
  EXPECT_FALSE(
      read(lamp() + fiji("from = 2027-03-01\ndays = 5\n") + "\n[journey]\ntrack = \"a.gpx\"\n").ok());
  EXPECT_FALSE(read(lamp() + "\n[journey]\n").ok());
  EXPECT_FALSE(read(lamp() + "\n[journey]\ntrack = \"\"\n").ok());
}

}  // namespace
}  // namespace voltwright::whole
