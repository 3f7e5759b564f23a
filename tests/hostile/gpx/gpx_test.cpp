// Broken GPX texts, made in code: each must give a problem at the right line or say what was left out.
#include "files/gpx.h"

#include <gtest/gtest.h>

#include "files/gpx_words.h"

namespace voltwright::files {
namespace {

std::string point(const char* lat, const char* lon, const std::string& inside) {
  return std::string("<trkpt lat=\"") + lat + "\" lon=\"" + lon + "\">" + inside + "</trkpt>\n";
}
std::string at(const char* clock) { return std::string("<time>2026-05-01T") + clock + "Z</time>"; }

/// Points begin in line 3.
std::string track(const std::string& points) {
  return "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\"><trk><trkseg>\n" + points + "</trkseg></trk></gpx>\n";
}

const std::string kFirst = point("59.9", "10.7", at("08:00:00"));
const std::string kLast = point("60.0", "10.8", at("09:00:00"));

void expect_refused(const std::string& text, int line, const char* part) {
  const auto read = read_gpx(text, "broken.gpx");
  ASSERT_FALSE(read.ok()) << part;
  const base::Problem& first = read.problems().front();
  EXPECT_EQ(first.where.line, line) << base::to_text(first);
  EXPECT_NE(base::to_text(first).find(part), std::string::npos) << base::to_text(first);
}

TEST(BrokenGpx, WholeTrackIsRead) {
  const auto read = read_gpx("\xEF\xBB\xBF" + track(kFirst + kLast), "good.gpx");
  ASSERT_TRUE(read.ok()) << base::to_text(read.problems().front());
  ASSERT_EQ(read.value().points.size(), 2U);
  EXPECT_EQ(read.value().points[0].line, 3);
  EXPECT_EQ(read.value().points[1].line, 4);
  EXPECT_DOUBLE_EQ(read.value().points[0].latitude_deg, 59.9);
  EXPECT_EQ(read.value().points[1].utc_s - read.value().points[0].utc_s, 3600);
  EXPECT_TRUE(read.value().warnings.empty());
}

TEST(BrokenGpx, NotXmlOrNotGpx) {
  expect_refused("", 1, "not well-formed");
  expect_refused("nothing here", 1, "not well-formed");
  expect_refused("<html>\n<body/>\n</html>", 1, "not a GPX file");
  expect_refused(track(kFirst + "<trkpt lat=\"1\""), 4, "not well-formed");
  expect_refused("\xFF\xFE<\0g\0", 1, "UTF-8");
  expect_refused(std::string(5000, '\0'), 1, "UTF-8");
}

TEST(BrokenGpx, DoctypeAndEntities) {
  expect_refused(
      "<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]>\n<gpx/>", 0,
      "DOCTYPE");
  expect_refused("<!DOCTYPE gpx SYSTEM \"file:///etc/hostname\"><gpx/>", 0, "DOCTYPE");
  expect_refused("<gpx><!DOCTYPE x></gpx>", 0, "DOCTYPE");
  // An entity nobody has declared stays a text, and no time can be made of it.
  expect_refused(track(point("1", "1", "<time>&lol;</time>")), 3, "time of a point");
}

TEST(BrokenGpx, NoTrack) {
  expect_refused("<gpx>\n<wpt lat=\"1\" lon=\"2\"/></gpx>", 1, "no track");
  expect_refused("<gpx><rte><rtept lat=\"1\" lon=\"2\"/></rte></gpx>", 1, "planned route");
  expect_refused("<gpx><trk><trkseg/></trk></gpx>", 1, "no track");
}

TEST(BrokenGpx, TooFewPoints) {
  expect_refused(track(kFirst), 3, "single point");
  expect_refused(track(kFirst + kFirst), 3, "single point");
  expect_refused(track(point("1", "1", "") + point("2", "2", "")), 3, "carry no times");
}

TEST(BrokenGpx, Coordinates) {
  expect_refused(track(kFirst + point("91", "0", at("09:00:00"))), 4, "out of range");
  expect_refused(track(kFirst + point("0", "-180.1", at("09:00:00"))), 4, "-180 to 180");
  expect_refused(track(kFirst + point("59,9", "10", at("09:00:00"))), 4, "not a number");
  expect_refused(track(kFirst + point("nan", "10", at("09:00:00"))), 4, "not a number");
  expect_refused(track(kFirst + point("", "10", at("09:00:00"))), 4, "not a number");
  expect_refused(track(kFirst + "<trkpt lat=\"1\">" + at("09:00:00") + "</trkpt>"), 4, "lacks a coordinate");
}

TEST(BrokenGpx, Times) {
  for (const char* wrong : {"2026-02-30T00:00:00Z", "2026-05-01", "1969-12-31T23:59:59Z",
                            "2026-05-01T24:00:00Z", "2026-05-01T08:00:00 CET", "2026-05-01T08:00:00.Z",
                            "2026-05-01T08:00:00+99:00", "-2026-05-01T08:00:00Z", "", "20260501T080000Z"}) {
    expect_refused(track(kFirst + point("1", "1", std::string("\n<time>") + wrong + "</time>")), 5,
                   "time of a point");
  }
  EXPECT_EQ(utc_of_text("1970-01-02T00:00:01.25Z"), 86401);
  EXPECT_EQ(utc_of_text(" 1970-01-02T02:00:00+02:00\n"), 86400);
  EXPECT_EQ(utc_of_text("1970-01-01T00:00:00"), 0);
}

TEST(BrokenGpx, BackwardsTime) {
  expect_refused(track(kLast + kFirst), 4, "backwards");
  // Whole segments out of order are put in order; overlapping ones are two devices.
  const auto swapped = read_gpx(track(kLast + "</trkseg><trkseg>\n" + kFirst), "swapped.gpx");
  ASSERT_TRUE(swapped.ok());
  EXPECT_LT(swapped.value().points[0].utc_s, swapped.value().points[1].utc_s);
  expect_refused(track(kFirst + kLast + "</trkseg><trkseg>\n" + point("1", "1", at("08:30:00"))), 6,
                 "overlap");
}

TEST(BrokenGpx, WhatIsLeftOutIsSaid) {
  const auto read = read_gpx(
      track(kFirst + point("1", "1", "") + point("60.0", "10.8", "<ele>high</ele>" + at("09:00:00"))),
      "part.gpx");
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read.value().points.size(), 2U);
  ASSERT_EQ(read.value().warnings.size(), 2U);
  EXPECT_EQ(read.value().warnings[0].where.line, 4);
  EXPECT_NE(read.value().warnings[0].what.find("1 points without a time"), std::string::npos);
  EXPECT_EQ(read.value().warnings[1].where.line, 5);
}

TEST(BrokenGpx, ForeignNamesAndExtensionsAreIgnored) {
  const std::string text =
      "<x:gpx xmlns:x=\"a\"><x:trk><x:name>&#65;&lt;</x:name><x:trkseg>"
      "<x:trkpt lat=\"1\" lon=\"2\"><x:time>2026-05-01T08:00:00Z</x:time><extensions><y:time>no</y:time>"
      "</extensions></x:trkpt><x:trkpt lat=\"1\" lon=\"2\"><time><![CDATA[2026-05-01T09:00:00Z]]></time>"
      "</x:trkpt></x:trkseg></x:trk></x:gpx>";
  const auto read = read_gpx(text, "prefixed.gpx");
  ASSERT_TRUE(read.ok()) << base::to_text(read.problems().front());
  EXPECT_EQ(read.value().points.size(), 2U);
}

TEST(BrokenGpx, DeepNestingAndManyProblemsEnd) {
  std::string deep;
  for (int i = 0; i < 300'000; ++i) deep += "<a>";
  expect_refused("<gpx>" + deep, 1, "not well-formed");
  std::string closed = deep;
  for (int i = 0; i < 300'000; ++i) closed += "</a>";
  expect_refused("<gpx>" + closed + "</gpx>", 1, "no track");
  std::string wrong;
  for (int i = 0; i < 1000; ++i) wrong += point("95", "0", at("08:00:00"));
  const auto read = read_gpx(track(wrong), "wrong.gpx");
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems().size(), 26U);
}

TEST(BrokenGpx, TooLarge) {
  expect_refused("<gpx>" + std::string((64U << 20U) + 1U, ' ') + "</gpx>", 0, "64 MiB");
}

}  // namespace
}  // namespace voltwright::files
