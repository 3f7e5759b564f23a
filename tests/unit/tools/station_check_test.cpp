// What the cleaning of the station normals leaves out, keeps and marks, on stations made up for it.
#include "tools/station_check.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace voltwright::tools {
namespace {

Months all(double value) {
  Months months;
  months.fill(value);
  return months;
}

/// Six stations around 48 N 10 E, 40 km apart, alike in everything.
std::vector<Station> alike() {
  std::vector<Station> stations;
  for (int i = 0; i < 6; ++i) {
    Station s;
    s.wmo = std::to_string(10000 + i);
    s.name = "Village " + std::to_string(i);
    s.site = {48.0 + 0.3 * (i % 2), 10.0 + 0.5 * (i / 2), 400.0};
    s.temperature_C = all(10.0);
    s.temperature_C[6] = 18.0;
    s.temperature_C[0] = 0.0;
    s.range_K = all(9.0);
    s.sunshine_h = all(150.0);
    stations.push_back(s);
  }
  return stations;
}

TEST(StationCheck, LeavesAlikeStationsAlone) {
  std::vector<Station> stations = alike();
  EXPECT_TRUE(clean(stations).empty());
  EXPECT_TRUE(std::all_of(stations.begin(), stations.end(), [](const Station& s) { return s.has_sunshine; }));
}

TEST(StationCheck, LeavesOutTheMonthThatStandsOut) {
  // 460 of some 484 hours of July daylight instead of 150: clearness +0.32 in July, +0.03 in the year.
  std::vector<Station> stations = alike();
  stations[2].sunshine_h[6] = 460.0;
  const auto remarks = clean(stations);
  ASSERT_EQ(remarks.size(), 1U);
  EXPECT_EQ(remarks[0].wmo, "10002");
  EXPECT_EQ(remarks[0].part, "sunshine");
  EXPECT_FALSE(remarks[0].kept);
  EXPECT_NE(remarks[0].reason.find("month 7 clearness"), std::string::npos) << remarks[0].reason;
  EXPECT_FALSE(stations[2].has_sunshine);
  EXPECT_FALSE(stations[2].dropped);
}

TEST(StationCheck, ABadStationDoesNotCondemnItsNeighbours) {
  std::vector<Station> stations = alike();
  for (auto& t : stations[0].temperature_C) t = t.value_or(0.0) + 20.0;
  const auto remarks = clean(stations);
  ASSERT_EQ(remarks.size(), 1U);
  EXPECT_EQ(remarks[0].wmo, "10000");
  EXPECT_TRUE(stations[0].dropped);
}

TEST(StationCheck, HeightIsNoFault) {
  std::vector<Station> stations = alike();
  stations[1].site.elevation_m = 1400.0;
  for (auto& t : stations[1].temperature_C) t = t.value_or(0.0) - 6.5;
  EXPECT_TRUE(clean(stations).empty());
}

TEST(StationCheck, KeepsAndMarksWhatIsNearALimit) {
  // Year mean 3.5 K too warm, the limit is 4 K.
  std::vector<Station> stations = alike();
  for (auto& t : stations[3].temperature_C) t = t.value_or(0.0) + 3.5;
  const auto remarks = clean(stations);
  ASSERT_EQ(remarks.size(), 1U);
  EXPECT_TRUE(remarks[0].kept);
  EXPECT_EQ(remarks[0].wmo, "10003");
  EXPECT_FALSE(stations[3].dropped);
}

TEST(StationCheck, KeepsAndMarksIsolatedStations) {
  std::vector<Station> stations = alike();
  Station far = stations[0];
  far.wmo = "10009";
  far.site = {51.5, 10.0, 400.0};  // some 390 km north
  for (auto& t : far.temperature_C) t = t.value_or(0.0) - 12.0;
  stations.push_back(far);
  Station alone = stations[0];
  alone.wmo = "10010";
  alone.site = {30.0, -40.0, 0.0};
  stations.push_back(alone);
  const auto remarks = clean(stations);
  ASSERT_EQ(remarks.size(), 2U);
  EXPECT_TRUE(remarks[0].kept);
  EXPECT_NE(remarks[0].reason.find("isolated; within 600 km"), std::string::npos) << remarks[0].reason;
  EXPECT_NE(remarks[1].reason.find("isolated: fewer than three"), std::string::npos) << remarks[1].reason;
  EXPECT_FALSE(stations.back().dropped);
}

TEST(StationCheck, RefusesWhatIsImpossibleOnItsOwn) {
  std::vector<Station> stations = alike();
  stations[4].sunshine_h[11] = 400.0;  // more than the days of December have
  stations[5].temperature_C[3] = std::nullopt;
  const auto remarks = clean(stations);
  ASSERT_EQ(remarks.size(), 2U);
  EXPECT_NE(remarks[0].reason.find("of the day length in month 12"), std::string::npos) << remarks[0].reason;
  EXPECT_EQ(remarks[1].part, "station");
}

}  // namespace
}  // namespace voltwright::tools
