// Discharge at several temperatures.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/draw_method/shared.h"

namespace voltwright::tools {

namespace {

constexpr double kPercent = 100.0;
constexpr double kSizeOfPictures_Ah = 100.0;
constexpr double kRated_C = 25.0;

std::string degrees(double value_C) {
  return (value_C < 0.0 ? "\u2212" : "") + fmt::format("{:.0f} °C", std::fabs(value_C));
}

/// Capacity over that at 25 degC against temperature, computed and published.
ChartPanel share_panel(const Kind& kind, std::span<const PublishedSet> sets, const Bench& bench) {
  ChartPanel panel;
  const double reference_Ah = discharge(kind, bench).total_Ah;
  ChartLine line;
  const double coldest_C = std::max(kind.record->limits.discharge_min_C, -30.0);
  constexpr double kWarmest_C = 45.0;
  for (double t = coldest_C; t <= kWarmest_C; t += 2.5) {
    Bench there = bench;
    there.temperature_C = t;
    line.points.push_back({t, kPercent * discharge(kind, there).total_Ah / reference_Ah});
  }
  ChartMarks marks{{}, 0, "capacity over that at 25 °C"};
  for (const PublishedSet& set : sets) {
    for (const Series& series : set.series) {
      if (series.measured != Measured::kShareByTemperature) continue;
      for (const base::CurvePoint& p : series.points) marks.points.push_back({p.x, kPercent * p.y});
    }
  }
  double least = kPercent;
  double most = kPercent;
  for (const base::Curve* curve : {&line.points, &marks.points}) {
    for (const base::CurvePoint& p : *curve) {
      least = std::min(least, p.y);
      most = std::max(most, p.y);
    }
  }
  panel.lines.push_back(std::move(line));
  if (!marks.points.empty()) panel.marks.push_back(std::move(marks));
  panel.height = 170.0;
  panel.x = {"Temperature, °C", coldest_C - 2.5, kWarmest_C + 2.5, false, {}, 0};
  panel.y = {
      "Share of 25 °C, %", 20.0 * std::floor(least / 20.0), 20.0 * std::ceil(most / 20.0), false, {}, 0};
  return panel;
}

}  // namespace

Chart cold_chart(const Kind& kind, std::span<const PublishedSet> sets) {
  const bool lead = kind.record->family == cell::Family::kLeadAcid;
  const double rate = lead ? 0.05 : 1.0 / 3.0;
  Bench bench{kSizeOfPictures_Ah, rate * kSizeOfPictures_Ah, kind.record->limits.min_V, kRated_C};
  ChartPanel panel;
  int style = 0;
  double most = kPercent;
  for (const double t : {25.0, 0.0, -10.0, -20.0, 40.0}) {
    const cell::CellLimits& limits = kind.record->limits;
    if (t >= limits.discharge_min_C && t <= limits.discharge_max_C) {
      bench.temperature_C = t;
      ChartLine line{drawn_share(kind, bench), degrees(t), style};
      most = std::max(most, line.points.empty() ? 0.0 : line.points.back().x);
      panel.lines.push_back(std::move(line));
    }
    ++style;
  }
  bench.temperature_C = kRated_C;
  panel.height = 280.0;
  panel.x = {"Charge drawn, % of the rated capacity", 0.0, 10.0 * std::ceil(most / 10.0 + 0.2), false, {}, 0};
  panel.y = voltage_axis(kind, panel);
  Chart chart;
  chart.title = fmt::format("{}: discharge at {} and several temperatures", kind.record->short_name,
                            lead ? "C/20" : "C/3");
  chart.panels.push_back(std::move(panel));
  chart.panels.push_back(share_panel(kind, sets, bench));
  chart.subtitle = chart.panels.back().marks.empty()
                       ? "Computed, the cell held at each temperature; nothing published to hold it against."
                       : "Lines: computed, the cell held at each temperature. Published:";
  chart.summary = fmt::format(
      "Voltage {} against the charge drawn at several temperatures; below it the capacity "
      "over that at 25 °C against temperature",
      per_what(kind));
  return chart;
}

}  // namespace voltwright::tools
