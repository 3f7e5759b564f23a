// A charge with its stages.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/draw_method/shared.h"

namespace voltwright::tools {

namespace {

constexpr double kPercent = 100.0;
constexpr double kLongest_h = 24.0;
constexpr double kAfter_h = 1.0;

std::vector<ChartBand> stages_of(const Kind& kind, const std::vector<ChargePoint>& points) {
  const bool floats = kind.record->stages.float_V > 0.0;
  std::vector<ChartBand> bands;
  const auto begin = [&](double from_h, int stage) {
    const std::string last_name = floats ? "float" : "rest";
    if (!bands.empty()) bands.back().to = from_h;
    bands.push_back({from_h, from_h, stage == 0 ? "bulk" : stage == 1 ? "absorption" : last_name});
  };
  int last = -1;
  double before_h = 0.0;
  double minute_h = 0.0;  // where the step before began
  for (const ChargePoint& p : points) {
    if (p.stage != last) {
      // Where absorption begins and ends within one minute, that minute is its band.
      if (last == 0 && p.stage > 1) begin(minute_h, 1);
      begin(before_h, p.stage);
      last = p.stage;
    }
    minute_h = before_h;
    before_h = p.hours;
  }
  if (!bands.empty()) bands.back().to = before_h;
  return bands;
}

/// Published voltages of a charge at the time when the computed one has come as far, within bulk.
ChartMarks marks_of(std::span<const PublishedSet> sets, const std::vector<ChargePoint>& points, int cells) {
  ChartMarks marks{{}, 0, "voltage"};
  for (const PublishedSet& set : sets) {
    for (const Series& series : set.series) {
      if (series.measured != Measured::kChargeVoltageByCharge) continue;
      for (const base::CurvePoint& p : series.points) {
        const auto reached = std::find_if(points.begin(), points.end(),
                                          [&](const ChargePoint& point) { return point.charge >= p.x; });
        const bool in_bulk = reached != points.end() && reached->stage == 0;
        if (in_bulk && reached != points.begin()) marks.points.push_back({reached->hours, cells * p.y});
      }
    }
  }
  return marks;
}

}  // namespace

Chart charge_chart(const Kind& kind, std::span<const PublishedSet> sets) {
  const double start = 1.0 - kind.record->usable_depth;
  const std::vector<ChargePoint> points = charge(kind, start, kLongest_h, kAfter_h);
  const int cells = cells_shown(kind);
  ChartPanel voltage, current, soc;
  ChartLine volts, amperes, percent;
  for (const ChargePoint& p : points) {
    volts.points.push_back({p.hours, cells * p.voltage_V});
    amperes.points.push_back({p.hours, p.current_per_h});
    percent.points.push_back({p.hours, kPercent * p.charge});
  }
  voltage.lines.push_back(std::move(volts));
  current.lines.push_back(std::move(amperes));
  soc.lines.push_back(std::move(percent));
  const double end_h = points.empty() ? 1.0 : points.back().hours;
  const ChartAxis time{"Time, h", 0.0, end_h, false, {}, end_h > 4.0 ? 0 : 1};
  ChartMarks marks = marks_of(sets, points, cells);
  const bool marked = !marks.points.empty();
  if (marked) voltage.marks.push_back(std::move(marks));
  voltage.y = voltage_axis(kind, voltage);
  voltage.y.title = cells == 1 ? "Cell, V" : "12 V block, V";
  const double step = kind.charger_per_h > 0.3 ? 0.2 : 0.1;
  current.y = {"Current, C", 0.0, step * std::ceil(kind.charger_per_h / step + 0.1), false, {}, 2};
  soc.y = {"Charge, %", 10.0 * std::floor(10.0 * start + 1e-6), kPercent, false, {}, 0};
  voltage.height = 170.0;
  current.height = 110.0;
  soc.height = 110.0;
  Chart chart;
  for (ChartPanel* panel : {&voltage, &current, &soc}) {
    panel->x = time;
    panel->bands = stages_of(kind, points);
    chart.panels.push_back(std::move(*panel));
  }
  chart.title = kind.record->short_name + ": charge at 25 °C";
  chart.subtitle =
      fmt::format("Computed: a charger of {:.2f} C (the rated capacity per hour), from {:.0f} % charge.{}",
                  kind.charger_per_h, kPercent * start, marked ? " Published:" : "");
  chart.summary = "Voltage, current and state of charge against time, with the stages of the charger";
  return chart;
}

}  // namespace voltwright::tools
