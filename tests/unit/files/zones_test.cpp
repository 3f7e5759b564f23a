// Source of the expected changes: IANA time-zone database (rules EU, Lord_Howe, zone Asia/Kathmandu).
#include "files/zones.h"

#include <gtest/gtest.h>

namespace voltwright::files {
namespace {

std::int64_t midnight(const std::string& zone, int year, int month, int day) {
  const base::Result<std::int64_t> result = local_midnight_utc(zone, year, month, day);
  EXPECT_TRUE(result.ok()) << zone;
  return result.ok() ? result.value() : 0;
}

std::int64_t hours_of_day(const std::string& zone, int year, int month, int day) {
  return (midnight(zone, year, month, day + 1) - midnight(zone, year, month, day)) / 3600;
}

TEST(Zones, DaysOfClockChange) {
  EXPECT_EQ(hours_of_day("Europe/Madrid", 2026, 3, 29), 23);
  EXPECT_EQ(hours_of_day("Europe/Madrid", 2026, 10, 25), 25);
  EXPECT_EQ(hours_of_day("Europe/Madrid", 2026, 6, 1), 24);
}

TEST(Zones, LordHoweShiftsHalfAnHour) {
  const std::int64_t from = midnight("Australia/Lord_Howe", 2026, 1, 1);
  const std::int64_t to = midnight("Australia/Lord_Howe", 2026, 7, 1);
  const base::Result<journey::CivilClock> clock = civil_clock("Australia/Lord_Howe", from, to);
  ASSERT_TRUE(clock.ok());
  EXPECT_EQ(clock.value().offset_s(from), 11 * 3600);
  EXPECT_EQ(clock.value().offset_s(to), 10 * 3600 + 1800);
}

TEST(Zones, KathmanduIsFiveHoursFortyFive) {
  const base::Result<journey::CivilClock> clock = civil_clock("Asia/Kathmandu", 0, 2'000'000'000);
  ASSERT_TRUE(clock.ok());
  EXPECT_EQ(clock.value().offset_s(1'800'000'000), 5 * 3600 + 45 * 60);
}

TEST(Zones, ClockChangesAtTheInstant) {
  // 2026-03-29 01:00 UTC: Madrid goes from one to two hours east of Greenwich.
  constexpr std::int64_t kChange_s = 1774746000;
  const base::Result<journey::CivilClock> clock =
      civil_clock("Europe/Madrid", kChange_s - 864000, kChange_s + 864000);
  ASSERT_TRUE(clock.ok());
  EXPECT_EQ(clock.value().offset_s(kChange_s - 1), 3600);
  EXPECT_EQ(clock.value().offset_s(kChange_s), 7200);
  EXPECT_EQ(clock.value().offset_s(kChange_s - 10'000'000), 3600);
}

TEST(Zones, NauticalZones) {
  EXPECT_EQ(midnight("Etc/GMT+3", 2026, 1, 1), 1767225600 + 3 * 3600);
  EXPECT_EQ(midnight("Etc/GMT-12", 2026, 1, 1), 1767225600 - 12 * 3600);
}

TEST(Zones, MidnightThatIsSkipped) {
  // Chile sets clocks from 24:00 of 5 September 2026 to 01:00: the day begins at 04:00 UTC.
  const std::int64_t before = midnight("America/Santiago", 2026, 9, 5);
  EXPECT_EQ(midnight("America/Santiago", 2026, 9, 6) - before, 86400);
  EXPECT_EQ(midnight("America/Santiago", 2026, 9, 7) - before, 86400 + 23 * 3600);
}

TEST(Zones, UnknownZoneIsAProblemWithNearNames) {
  const base::Result<journey::CivilClock> clock = civil_clock("Europe/Olso", 0, 1);
  ASSERT_FALSE(clock.ok());
  EXPECT_NE(clock.problems().front().remedy.find("Europe/Oslo"), std::string::npos);
  for (const char* zone : {"", "/etc/passwd", "../../etc/passwd", "Europe", "posixrules/", "Mars/Olympus"}) {
    EXPECT_FALSE(civil_clock(zone, 0, 1).ok()) << zone;
  }
}

TEST(Zones, ImpossibleDaysAreProblems) {
  EXPECT_FALSE(local_midnight_utc("Europe/Oslo", 2026, 2, 29).ok());
  EXPECT_FALSE(local_midnight_utc("Europe/Oslo", 2026, 13, 1).ok());
  EXPECT_FALSE(local_midnight_utc("Europe/Oslo", 2026, -1, 1).ok());
  EXPECT_FALSE(local_midnight_utc("Europe/Oslo", 2026, 1, 257).ok());
  EXPECT_FALSE(local_midnight_utc("Europe/Oslo", 99999, 1, 1).ok());
}

}  // namespace
}  // namespace voltwright::files
