// Stays, drives and legs found in tracks made in code.
#include "files/track_legs.h"

#include <gtest/gtest.h>

#include "files/track_moves.h"

namespace voltwright::files {
namespace {

constexpr std::int64_t kMonday_s = 1'780'272'000;  // 2026-06-01 00:00 UTC, worked out with the calendar
constexpr double kDegree_km = 111.195;             // 6371.0088 km * pi / 180

const Gazetteer& gazetteer() {
  static const Gazetteer built_in = Gazetteer::built_in().value();
  return built_in;
}

/// A recorder that can stand and drive north.
class Recorder {
 public:
  Recorder(double latitude_deg, double longitude_deg) : latitude_(latitude_deg), longitude_(longitude_deg) {}

  void stand(int minutes, int every_min = 1) { go(minutes, 0.0, every_min); }
  void go(int minutes, double km_h, int every_min = 1) {
    for (int m = 0; m < minutes; m += every_min) {
      add();
      utc_s_ += 60 * every_min;
      latitude_ += km_h / kDegree_km * every_min / 60.0;
    }
  }
  void switched_off(int minutes) { utc_s_ += 60 * minutes; }
  Track done() {
    add();
    return track_;
  }

 private:
  void add() {
    track_.points.push_back(
        {static_cast<int>(track_.points.size()) + 1, utc_s_, latitude_, longitude_, 50.0});
  }
  double latitude_;
  double longitude_;
  std::int64_t utc_s_ = kMonday_s;
  Track track_;
};

TEST(TrackMoves, StayDriveStay) {
  Recorder recorder(50.0, 8.0);
  recorder.stand(180);
  recorder.go(120, 60.0);
  recorder.stand(240);
  const Moves moves = moves_of(recorder.done().points);
  ASSERT_EQ(moves.stays.size(), 2U);
  ASSERT_EQ(moves.drives.size(), 1U);
  // The last point within 1 km belongs to the stay: a minute at 60 km/h at either end.
  EXPECT_NEAR(static_cast<double>(moves.drives[0].to_utc_s - moves.drives[0].from_utc_s), 7200.0, 120.0);
  EXPECT_NEAR(moves.drives[0].length_km, 120.0, 2.1);
  EXPECT_NEAR(moves.stays[0].site.latitude_deg, 50.0, 1e-4);
  EXPECT_NEAR(moves.stays[1].site.latitude_deg, 50.0 + 120.0 / kDegree_km, 1e-4);
  EXPECT_EQ(moves.gaps, 0U);
  EXPECT_NEAR(site_at(moves, kMonday_s + 240 * 60).latitude_deg, 50.0 + 60.0 / kDegree_km, 0.02);
}

TEST(TrackMoves, ShortStopsAndWalkingPaceAreNoStaysAndNoDrives) {
  Recorder recorder(50.0, 8.0);
  recorder.go(60, 4.0);
  recorder.stand(100);
  recorder.go(60, 4.0);
  const Moves moves = moves_of(recorder.done().points);
  EXPECT_TRUE(moves.stays.empty());
  EXPECT_TRUE(moves.drives.empty());
}

TEST(TrackMoves, ThinnedToOnePointAMinute) {
  std::vector<TrackPoint> points;
  for (int s = 0; s <= 600; s += 5) points.push_back({s + 1, kMonday_s + s, 50.0, 8.0, std::nullopt});
  EXPECT_EQ(moves_of(points).points.size(), 11U);
}

TEST(TrackMoves, AGapDrivesAtSixtyOverADetour) {
  Recorder recorder(50.0, 8.0);
  recorder.stand(180);
  const Track first = recorder.done();
  Track track = first;
  TrackPoint far = track.points.back();
  far.utc_s += 10 * 3600;
  far.latitude_deg += 100.0 / kDegree_km;
  track.points.push_back(far);
  const Moves moves = moves_of(track.points);
  EXPECT_EQ(moves.gaps, 1U);
  ASSERT_EQ(moves.drives.size(), 1U);
  // 130 km at 60 km/h.
  EXPECT_NEAR(static_cast<double>(moves.drives[0].to_utc_s - moves.drives[0].from_utc_s), 7800.0, 5.0);
}

TEST(TrackLegs, DaysBecomeLegs) {
  Recorder recorder(59.91, 10.75);  // Oslo, two hours ahead of UTC in June
  recorder.stand(2 * 1440 + 6 * 60, 5);
  recorder.go(150, 80.0);
  recorder.stand(1440, 5);
  const auto found = track_journey(recorder.done(), "track.gpx", gazetteer());
  ASSERT_TRUE(found.ok());
  const TrackJourney& journey = found.value();
  ASSERT_EQ(journey.legs.size(), 3U);
  EXPECT_EQ(journey.first_day, 20605);  // 2026-06-01
  EXPECT_EQ(journey.legs[0].label, "Oslo");
  EXPECT_EQ(journey.legs[0].zone, "Europe/Oslo");
  EXPECT_EQ(journey.legs[0].days, 2);
  EXPECT_EQ(journey.legs[0].drive_min, 0);
  EXPECT_EQ(journey.legs[1].days, 1);
  ASSERT_TRUE(journey.legs[1].to.has_value());
  EXPECT_NEAR(journey.legs[1].to->latitude_deg, 59.91 + 200.0 / kDegree_km, 0.01);
  EXPECT_EQ(journey.legs[1].drive_min, 150);
  EXPECT_EQ(journey.legs[1].drive_from_s, 8 * 3600);
  EXPECT_EQ(journey.legs[2].days, 1);
  EXPECT_FALSE(journey.legs[2].to.has_value());
  const std::string text = legs_toml(journey);
  EXPECT_NE(text.find("drive = \"150 min/day\"\ndrive_from = \"08:00\""), std::string::npos) << text;
  EXPECT_NE(text.find("from = 2026-06-01"), std::string::npos) << text;
}

TEST(TrackLegs, AJumpIsAWarningAndADecadeAProblem) {
  Recorder recorder(50.0, 8.0);
  recorder.stand(30);
  Track track = recorder.done();
  TrackPoint far = track.points.back();
  far.utc_s += 60;
  far.latitude_deg += 2.0;
  far.line += 1;
  track.points.push_back(far);
  const auto jump = track_journey(track, "track.gpx", gazetteer());
  ASSERT_TRUE(jump.ok());
  ASSERT_EQ(jump.value().warnings.size(), 1U);
  EXPECT_EQ(jump.value().warnings[0].where.line, far.line);
  track.points.back().utc_s += std::int64_t{3700} * 86400;
  EXPECT_FALSE(track_journey(track, "track.gpx", gazetteer()).ok());
}

}  // namespace
}  // namespace voltwright::files
