// GPX texts with random damage: whatever stands there, reading ends with points in order or with problems.
#include <gtest/gtest.h>

#include <array>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <string_view>

#include "engine/base/random.h"
#include "files/gpx.h"
#include "files/utc_text.h"

namespace voltwright::files {
namespace {

constexpr std::array<std::string_view, 20> kHardWords = {
    "<!DOCTYPE gpx [", "<![CDATA[", "]]>",      "<!--",   "-->",         "<?xml", "?>", "&amp;",  "&#0;",
    "&#x1;",           "<",         "</trkpt>", "<trkpt", "lat=\"1e5\"", "nan",   "\"", "<time>", "</gpx>",
    "\xC3\x28",        "9999999999"};

std::string whole_track() {
  std::string text = "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\"><trk><name>A</name><trkseg>\n";
  for (int i = 0; i < 60; ++i) {
    const std::string utc = utc_text(1'780'000'000 + 600 * i);
    text += "<trkpt lat=\"" + std::to_string(50.0 + 0.01 * i) + "\" lon=\"8.0\"><ele>120</ele><time>" +
            utc.substr(0, utc.size() - 1) + ":00Z</time></trkpt>\n";
    if (i == 30) text += "</trkseg><trkseg>\n";
  }
  return text + "</trkseg></trk></gpx>\n";
}

std::string damaged(const std::string& whole, std::uint64_t number) {
  base::RandomStream random(number, 0x677078U);
  const auto below = [&](std::size_t limit) {
    return limit == 0 ? std::size_t{0} : static_cast<std::size_t>(random.next_bits() % limit);
  };
  std::string text = whole;
  const std::size_t changes = 1 + below(5);
  for (std::size_t i = 0; i < changes; ++i) {
    const std::size_t place = below(text.size());
    switch (below(5)) {
      case 0:
        if (!text.empty()) text[place] = static_cast<char>(random.next_bits() & 0xFFU);
        break;
      case 1:
        text.erase(place, below(200));
        break;
      case 2:
        text.insert(place, text.substr(below(text.size()), below(200)));
        break;
      case 3:
        text.insert(place, kHardWords[below(kHardWords.size())]);
        break;
      default:
        if (!text.empty()) text[place] = static_cast<char>('0' + below(10));
        break;
    }
  }
  return text;
}

TEST(GpxFuzz, DamagedTracksKeepThePromises) {
  const std::string whole = whole_track();
  ASSERT_TRUE(read_gpx(whole, "whole.gpx").ok());
  const auto start = std::chrono::steady_clock::now();
  std::uint64_t number = 0;
  int accepted = 0;
  // Two seconds, and at least five hundred texts under a slow sanitizer.
  while (number < 500 || std::chrono::steady_clock::now() - start < std::chrono::seconds(2)) {
    const auto read = read_gpx(damaged(whole, number), "damaged.gpx");
    if (read.ok()) {
      ++accepted;
      const auto& points = read.value().points;
      ASSERT_GE(points.size(), 2U) << number;
      for (std::size_t i = 0; i < points.size(); ++i) {
        ASSERT_LE(std::abs(points[i].latitude_deg), 90.0) << number;
        ASSERT_LE(std::abs(points[i].longitude_deg), 180.0) << number;
        ASSERT_GT(points[i].line, 0) << number;
        if (i > 0) {
          ASSERT_GT(points[i].utc_s, points[i - 1].utc_s) << number;
        }
      }
    } else {
      ASSERT_TRUE(base::has_error(read.problems())) << number;
      ASSERT_LE(read.problems().size(), 26U) << number;
      for (const base::Problem& problem : read.problems()) ASSERT_FALSE(problem.what.empty()) << number;
    }
    ++number;
  }
  EXPECT_GT(accepted, 0);
  EXPECT_LT(accepted, static_cast<int>(number));
}

}  // namespace
}  // namespace voltwright::files
