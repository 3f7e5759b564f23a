#include "app/place_sky.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/unit/files/report/markup_check.h"

namespace voltwright::app {
namespace {

SkyRequest oslo() {
  SkyRequest request;
  request.place = "Oslo, NO";
  request.years = 20;
  return request;
}

SkyResponse answer(const SkyRequest& request) {
  auto response = place_sky(request);
  EXPECT_TRUE(response.ok()) << (response.ok() ? "" : base::to_text(response.problems().front()));
  return response.ok() ? std::move(response).value() : SkyResponse{};
}

TEST(PlaceSky, MadeYearsAgreeWithTheNormals) {
  const SkyResponse r = answer(oslo());
  // The middle of 20 years lies within 5 % of the long-term sum: the made weather keeps its mean within 1 %
  // (docs/method/made_weather.md), the rest is sampling.
  EXPECT_NEAR(r.ground_kWh_m2_year.middle, r.normal_kWh_m2_year, 0.05 * r.normal_kWh_m2_year);
  for (const SkyMonth& month : r.months) {
    EXPECT_LE(month.panel_Wh_day.low, month.panel_Wh_day.middle);
    EXPECT_LE(month.panel_Wh_day.middle, month.panel_Wh_day.high);
    EXPECT_LT(month.coldest_C, month.warmest_C);
    EXPECT_GT(month.above_air_kWh_m2_day, month.ground_kWh_m2_day.high);
  }
}

TEST(PlaceSky, YieldFollowsPeakAndLosses) {
  SkyRequest twice = oslo();
  twice.peak = "200 W";
  twice.losses = "55 %";
  const SkyResponse one = answer(oslo());
  const SkyResponse other = answer(twice);
  EXPECT_NEAR(other.panel_kWh_year.middle, one.panel_kWh_year.middle, 1e-4 * one.panel_kWh_year.middle);
}

TEST(PlaceSky, TiltHelpsInANorthernWinterAndLooksToTheEquator) {
  SkyRequest tilted = oslo();
  tilted.tilt = "60 deg";
  const SkyResponse flat = answer(oslo());
  const SkyResponse up = answer(tilted);
  EXPECT_EQ(up.plane.azimuth_deg, 180.0);
  EXPECT_GT(up.months[11].panel_Wh_day.middle, 1.5 * flat.months[11].panel_Wh_day.middle);
  SkyRequest south = tilted;
  south.place = "Cape Town";
  EXPECT_EQ(answer(south).plane.azimuth_deg, 0.0);
}

TEST(PlaceSky, GluedFlatIsHotterAndGivesLess) {
  SkyRequest rack = oslo();
  rack.mounting = "open rack";
  EXPECT_GT(answer(rack).panel_kWh_year.middle, answer(oslo()).panel_kWh_year.middle);
}

TEST(PlaceSky, PolarNightGivesNothing) {
  SkyRequest north;
  north.place = "Tromso";
  north.years = 2;
  const SkyResponse r = answer(north);
  EXPECT_LT(r.months[11].panel_Wh_day.high, 0.5);
  EXPECT_GT(r.months[5].panel_Wh_day.low, 100.0);
}

TEST(PlaceSky, SaysTheSameAgain) {
  SkyRequest request = oslo();
  request.years = 3;
  EXPECT_EQ(to_json(answer(request)), to_json(answer(request)));
  const std::string csv = to_csv(answer(request));
  EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 13);
}

TEST(PlaceSky, ReportsEveryProblemAtOnce) {
  SkyRequest request;
  request.latitude_deg = 91.0;
  request.longitude_deg = 10.0;
  request.peak = "100 Ah";
  request.tilt = "95 deg";
  request.mounting = "nailed";
  request.years = 0;
  const auto response = place_sky(request);
  ASSERT_FALSE(response.ok());
  EXPECT_EQ(response.problems().size(), 5U);
}

TEST(PlaceSky, PageShowsMonthsAndSources) {
  SkyRequest request = oslo();
  request.place = "Oslo & <b>, NO";
  request.latitude_deg = 59.91;
  request.longitude_deg = 10.75;
  const SkyResponse r = answer(request);
  const std::string html = sky_html(r);
  EXPECT_EQ(files::unbalanced(html), "");
  const std::string words = files::visible_text(html);
  EXPECT_NE(words.find("Oslo & <b>"), std::string::npos);
  EXPECT_NE(words.find("Oslo-Blindern"), std::string::npos);
  EXPECT_NE(words.find("local record"), std::string::npos);
  EXPECT_EQ(html.find("http"), std::string::npos);
}

}  // namespace
}  // namespace voltwright::app
