// The cycle lives of Preger et al. 2020 beside every law that speaks for the chemistry. The laws were not
// fitted to these cells; the ratios are what they are, and the method page must show the same.
#include <cmath>
#include <cstdio>
#include <fstream>
#include <sstream>

#include "tests/published/ageing/catalogue_laws.h"

namespace voltwright::published {
namespace {

const std::vector<ageing::LifePoint>& points_of(std::string_view id) {
  const auto& records = ageing_catalogue().life_points;
  const auto found =
      std::find_if(records.begin(), records.end(), [&](const auto& one) { return one.id == id; });
  if (found == records.end()) throw std::out_of_range(std::string(id));
  return found->points;
}

/// One cycle of the test without rests, the time spread evenly over the window.
ageing::Exposure cycle_of(const ageing::LifePoint& point) {
  const double depth = point.high_soc - point.low_soc;
  ageing::Exposure exposure;
  exposure.hours = depth / point.charge_per_h + depth / point.discharge_per_h;
  constexpr int kSlices = 20;
  for (int i = 0; i < kSlices; ++i) {
    const double soc = point.low_soc + depth * (i + 0.5) / kSlices;
    exposure.dwell.push_back({point.temperature_C, soc, exposure.hours / kSlices});
  }
  exposure.swings.push_back({depth, 0.5 * (point.low_soc + point.high_soc), 1.0, point.charge_per_h,
                             point.discharge_per_h, point.temperature_C});
  return exposure;
}

double full_cycles_by(std::string_view id, const ageing::LifePoint& point) {
  return (point.high_soc - point.low_soc) * ageing::repetitions_until(law(id), cycle_of(point), 0.8, 1e6);
}

std::string row_of(const ageing::LifePoint& point, const std::vector<std::string>& laws) {
  char text[120];
  std::snprintf(text, sizeof text, "| %.0f-%.0f %%, %.0f °C, %gC | %.0f%s |", 100.0 * point.low_soc,
                100.0 * point.high_soc, point.temperature_C, point.discharge_per_h, point.full_cycles.typical,
                point.extrapolated ? " x" : "");
  std::string row = text;
  for (const std::string& id : laws) {
    const double cycles = full_cycles_by(id, point);
    std::snprintf(text, sizeof text, " %.0f (%.2f) |", cycles, cycles / point.full_cycles.typical);
    row += text;
  }
  return row;
}

std::string page() {
  std::ifstream in(std::string(VW_SOURCE_DIR) + "/docs/method/ageing_lithium.md");
  std::ostringstream text;
  text << in.rdbuf();
  return std::move(text).str();
}

void expect_in_page(std::string_view points, const std::vector<std::string>& laws) {
  const std::string text = page();
  for (const ageing::LifePoint& point : points_of(points)) {
    const std::string row = row_of(point, laws);
    std::printf("%s\n", row.c_str());
    EXPECT_NE(text.find(row), std::string::npos) << "docs/method/ageing_lithium.md lacks\n" << row;
  }
}

// bib preger2020, figure 2a as digitised by a third party, +-10 %; x: extrapolated by its authors.
TEST(LifePoints, IronPhosphateBesideEveryLaw) {
  expect_in_page("lfp-life-points", {"lfp-measured", "lfp-naumann", "lfp-refit", "lfp-schimpe", "lfp-wang"});
}

TEST(LifePoints, NickelManganeseCobaltBesideEveryLaw) {
  expect_in_page("nmc-life-points", {"nmc-schmalstieg", "nmc-blend"});
}

// The span of the text, all conditions: iron phosphate 2500 to 9000, nickel-cobalt-aluminium 250 to 1500,
// nickel- manganese-cobalt 200 to 2500 full cycles. The digitised points lie within 20 % of its ends.
TEST(LifePoints, LieWithinTheSpanOfTheText) {
  const std::tuple<const char*, double, double> spans[] = {
      {"lfp-life-points", 2500, 9000}, {"nca-life-points", 250, 1500}, {"nmc-life-points", 200, 2500}};
  for (const auto& [id, least, most] : spans) {
    for (const ageing::LifePoint& point : points_of(id)) {
      EXPECT_GT(point.full_cycles.min, 0.79 * least) << id;
      EXPECT_LT(point.full_cycles.max, 1.2 * most) << id;
    }
  }
}

// Law and point at full depth, cycling alone: Naumann 8564 full cycles at 1C where cells lasted 7170, Wang
// 8347 at C/2 where they lasted 6370: too long by 1.2 and 1.3.
TEST(LifePoints, FullDepthWithoutTime) {
  const auto alone = [](const char* id, double rate_per_h) {
    ageing::Exposure exposure;
    exposure.swings = {{1.0, 0.5, 1.0, rate_per_h, rate_per_h, 25.0}};
    return ageing::repetitions_until(law(id), exposure, 0.8, 1e6);
  };
  EXPECT_NEAR(alone("lfp-naumann", 1.0), 8564.0, 1.0);
  EXPECT_NEAR(alone("lfp-wang", 0.5), 8347.0, 1.0);
}

// The points' own law meets them: 25 degC at C/2 exactly, and the temperatures by their ratio at 1C.
TEST(LifePoints, MeetThemselves) {
  for (const char* chemistry : {"lfp", "nmc", "nca"}) {
    const std::string id = std::string(chemistry) + "-points";
    for (const ageing::LifePoint& point : points_of(std::string(chemistry) + "-life-points")) {
      if (point.temperature_C != 25.0 || point.discharge_per_h != 0.5) continue;
      ageing::Exposure exposure = cycle_of(point);
      exposure.dwell.clear();  // without the assumed shelf life
      const double depth = point.high_soc - point.low_soc;
      EXPECT_NEAR(depth * ageing::repetitions_until(law(id), exposure, 0.8, 1e6) / point.full_cycles.typical,
                  1.0, 1e-6);
    }
  }
  ageing::Exposure hot;
  hot.swings = {{1.0, 0.5, 1.0, 0.5, 1.0, 35.0}};
  EXPECT_NEAR(ageing::repetitions_until(law("nmc-points"), hot, 0.8, 1e6), 440.0 * 640.0 / 420.0, 0.01);
}

// Windows: 20 to 80 % instead of 0 to 100 % gave nickel-manganese-cobalt 3.75 times,
// nickel-cobalt-aluminium 2.7 times and iron phosphate 1.13 times the full cycles (the last extrapolated).
TEST(LifePoints, WhatANarrowWindowGains) {
  const auto gain = [](std::string_view id) {
    double narrow = 0.0, whole = 0.0;
    for (const ageing::LifePoint& point : points_of(id)) {
      if (point.temperature_C != 25.0 || point.discharge_per_h != 0.5) continue;
      if (point.low_soc == 0.2) narrow = point.full_cycles.typical;
      if (point.low_soc == 0.0) whole = point.full_cycles.typical;
    }
    return narrow / whole;
  };
  EXPECT_NEAR(gain("nmc-life-points"), 3.75, 0.005);
  EXPECT_NEAR(gain("nca-life-points"), 2.67, 0.005);
  EXPECT_NEAR(gain("lfp-life-points"), 1.13, 0.005);
}

// 22 other nickel-cobalt-aluminium cells of 3.5 Ah lasted about 1940 full cycles (bib nca22): eight times the
// points at full depth. Cells of one chemistry differ by more than laws do.
TEST(LifePoints, OtherCellsOfTheSameChemistry) {
  ageing::Exposure exposure;
  exposure.swings = {{1.0, 0.5, 1.0, 0.5, 0.5, 25.0}};
  EXPECT_NEAR(1940.0 / ageing::repetitions_until(law("nca-points"), exposure, 0.8, 1e6), 8.1, 0.05);
}

}  // namespace
}  // namespace voltwright::published
