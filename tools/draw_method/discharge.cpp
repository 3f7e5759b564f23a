// Discharge at several rates, and capacity against the time of discharge.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/draw_method/shared.h"

namespace voltwright::tools {

namespace {

constexpr double kPercent = 100.0;
constexpr double kSizeOfPictures_Ah = 100.0;

/// Marks of a series in the discharge picture, by the rate each point belongs to.
struct RatedMark {
  double per_h;
  base::CurvePoint at;
};

std::vector<RatedMark> marks_of(const PublishedSet& set, const Series& series, int cells) {
  std::vector<RatedMark> marks;
  const double rate = series.current_A / set.capacity_Ah;
  for (const base::CurvePoint& p : series.points) {
    switch (series.measured) {
      case Measured::kVoltageByCharge:
        marks.push_back({rate, {kPercent * (1.0 - p.x), cells * p.y}});
        break;
      case Measured::kVoltageByTime:
        marks.push_back({rate, {kPercent * rate * p.x / 3600.0, cells * p.y}});
        break;
      case Measured::kChargeByCurrent:
        marks.push_back({p.x / set.capacity_Ah, {kPercent * p.y / set.capacity_Ah, cells * set.end_V}});
        break;
      case Measured::kHoursByCurrent:
        marks.push_back({p.x / set.capacity_Ah, {kPercent * p.x * p.y / set.capacity_Ah, cells * set.end_V}});
        break;
      case Measured::kChargeVoltageByCharge:
      case Measured::kEnergyByCurrent:
      case Measured::kMinutesBySize:
      case Measured::kShareByTemperature:
        break;
    }
  }
  return marks;
}

}  // namespace

Chart discharge_chart(const Kind& kind, std::span<const PublishedSet> sets) {
  const std::vector<NamedRate> rates = rates_of(kind, sets);
  const int cells = cells_shown(kind);
  ChartPanel panel;
  std::vector<ChartMarks> marks(rates.size());
  double end_V = kind.record->limits.min_V;
  for (const PublishedSet& set : sets) {
    for (const Series& series : set.series) {
      for (const RatedMark& mark : marks_of(set, series, cells)) {
        for (std::size_t i = 0; i < rates.size(); ++i) {
          if (!same_rate(rates[i].per_h, mark.per_h)) continue;
          marks[i].points.push_back(mark.at);
          end_V = std::min(end_V, set.end_V);
          break;
        }
      }
    }
  }
  double most = kPercent;
  for (std::size_t i = 0; i < rates.size(); ++i) {
    const int style = static_cast<int>(i);
    const Bench bench{kSizeOfPictures_Ah, rates[i].per_h * kSizeOfPictures_Ah, end_V, 25.0};
    ChartLine line{drawn_share(kind, bench), rates[i].name, style};
    most = std::max(most, line.points.empty() ? 0.0 : line.points.back().x);
    panel.lines.push_back(std::move(line));
    marks[i].style = style;
    marks[i].label = rates[i].name;
    if (!marks[i].points.empty()) panel.marks.push_back(marks[i]);
  }
  panel.height = 340.0;
  panel.x = {"Charge drawn, % of the rated capacity", 0.0, 10.0 * std::ceil(most / 10.0 + 0.2), false, {}, 0};
  panel.y = voltage_axis(kind, panel);
  Chart chart;
  chart.title = kind.record->short_name + ": discharge at 25 °C";
  chart.subtitle = panel.marks.empty()
                       ? "Lines: computed. No published voltage under load was found to hold them against."
                       : "Lines: computed. Published:";
  chart.summary =
      fmt::format("Voltage {} against the charge drawn at {} constant currents, down to {:.2f} V per cell",
                  per_what(kind), rates.size(), end_V);
  chart.panels.push_back(std::move(panel));
  return chart;
}

std::optional<Chart> rate_chart(const Kind& kind, std::span<const PublishedSet> sets) {
  if (kind.record->family != cell::Family::kLeadAcid) return std::nullopt;
  struct Ending {
    double end_V;
    base::Curve points;
  };
  std::vector<Ending> endings;
  for (const PublishedSet& set : sets) {
    base::Curve points;
    for (const Series& series : set.series) {
      for (const base::CurvePoint& p : series.points) {
        if (series.measured == Measured::kHoursByCurrent) {
          points.push_back({p.y, kPercent * p.x * p.y / set.capacity_Ah});
        } else if (series.measured == Measured::kMinutesBySize) {
          points.push_back({p.y / 60.0, kPercent * series.current_A * p.y / 60.0 / p.x});
        }
      }
    }
    if (points.empty()) continue;
    const auto same = [&](const Ending& e) { return std::fabs(e.end_V - set.end_V) < 1e-6; };
    const auto found = std::find_if(endings.begin(), endings.end(), same);
    if (found == endings.end()) {
      endings.push_back({set.end_V, points});
    } else {
      found->points.insert(found->points.end(), points.begin(), points.end());
    }
  }
  if (endings.empty()) return std::nullopt;
  std::sort(endings.begin(), endings.end(),
            [](const Ending& a, const Ending& b) { return a.end_V > b.end_V; });

  constexpr double kLongest_h = 100.0;
  double shortest_h = kLongest_h;
  for (const Ending& ending : endings) {
    for (const base::CurvePoint& p : ending.points) shortest_h = std::min(shortest_h, p.x);
  }
  double first_h = 0.1;
  for (const double tick : {0.2, 0.5, 1.0}) {
    if (tick < 0.8 * shortest_h) first_h = tick;
  }
  ChartPanel panel;
  for (std::size_t i = 0; i < endings.size(); ++i) {
    const int style = static_cast<int>(i);
    ChartLine line{{}, fmt::format("to {:.2f} V per cell", endings[i].end_V), style};
    // From slow to fast, a sixth of a doubling apart; the line is kept to the axis.
    constexpr double kSlowest_per_h = 0.011;
    constexpr double kFastest_per_h = 4.0;
    for (double rate = kSlowest_per_h; rate < kFastest_per_h; rate *= std::exp2(1.0 / 6.0)) {
      const Discharge run =
          discharge(kind, {kSizeOfPictures_Ah, rate * kSizeOfPictures_Ah, endings[i].end_V, 25.0});
      if (run.hours >= first_h && run.hours <= kLongest_h) {
        line.points.push_back({run.hours, kPercent * run.total_Ah / kSizeOfPictures_Ah});
      }
    }
    panel.lines.push_back(std::move(line));
    panel.marks.push_back({endings[i].points, style, panel.lines.back().label});
  }
  panel.height = 300.0;
  panel.x = {"Time of discharge, h", first_h, kLongest_h, true, {}, 0};
  for (const double tick : {0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0}) {
    if (tick >= first_h) panel.x.ticks.push_back(tick);
  }
  double most = 0.0;
  for (const ChartLine& line : panel.lines) {
    for (const base::CurvePoint& p : line.points) most = std::max(most, p.y);
  }
  for (const ChartMarks& marks : panel.marks) {
    for (const base::CurvePoint& p : marks.points) most = std::max(most, p.y);
  }
  panel.y = {"Charge given, % of the rated capacity", 0.0, 20.0 * std::ceil(most / 20.0), false, {}, 0};
  Chart chart;
  chart.title = kind.record->short_name + ": capacity against time";
  chart.subtitle = "At 25 °C. Lines: computed. Published:";
  chart.summary = "Charge given until the end voltage against the time of discharge, on a scale of decades";
  chart.panels.push_back(std::move(panel));
  return chart;
}

}  // namespace voltwright::tools
