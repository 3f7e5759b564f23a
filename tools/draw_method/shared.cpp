#include "tools/draw_method/shared.h"

#include <algorithm>
#include <cmath>

namespace voltwright::tools {

int cells_shown(const Kind& kind) {
  constexpr int kBlock = 6;
  return kind.record->family == cell::Family::kLeadAcid ? kBlock : 1;
}

std::string per_what(const Kind& kind) {
  return cells_shown(kind) == 1 ? "per cell" : "of a 12 V block of six cells";
}

bool same_rate(double a_per_h, double b_per_h) {
  constexpr double kTenth = 0.1;
  return std::fabs(std::log(a_per_h / b_per_h)) < kTenth;
}

std::vector<NamedRate> rates_of(const Kind& kind, std::span<const PublishedSet> sets) {
  const bool lead = kind.record->family == cell::Family::kLeadAcid;
  std::vector<NamedRate> published;
  std::vector<double> measured_per_h;  // where a charge or a time was published and no voltage
  for (const PublishedSet& set : sets) {
    for (const Series& series : set.series) {
      if (series.measured == Measured::kChargeByCurrent || series.measured == Measured::kHoursByCurrent) {
        for (const base::CurvePoint& p : series.points) measured_per_h.push_back(p.x / set.capacity_Ah);
      }
      const bool voltage =
          gives_voltage(series.measured) && series.measured != Measured::kChargeVoltageByCharge;
      const double per_h = series.current_A / set.capacity_Ah;
      const auto known = [&](const NamedRate& rate) { return same_rate(rate.per_h, per_h); };
      if (voltage && std::none_of(published.begin(), published.end(), known)) {
        published.push_back({per_h, series.title});
      }
    }
  }
  const std::vector<NamedRate> usual =
      lead ? std::vector<NamedRate>{{0.05, "C/20"}, {0.1, "C/10"}, {0.2, "C/5"}, {0.5, "C/2"}, {1.0, "1C"}}
           : std::vector<NamedRate>{{0.05, "C/20"}, {0.2, "C/5"}, {1.0, "1C"}, {2.0, "2C"}};
  std::vector<NamedRate> rates = published;
  for (const NamedRate& rate : usual) {
    const auto known = [&](const NamedRate& other) { return same_rate(other.per_h, rate.per_h); };
    const auto measured = [&](double per_h) { return same_rate(per_h, rate.per_h); };
    const bool borne = rate.per_h <= kind.continuous_per_h * 1.001 ||
                       std::any_of(measured_per_h.begin(), measured_per_h.end(), measured);
    if (borne && rates.size() < kChartStyles && std::none_of(rates.begin(), rates.end(), known)) {
      rates.push_back(rate);
    }
  }
  std::sort(rates.begin(), rates.end(),
            [](const NamedRate& a, const NamedRate& b) { return a.per_h < b.per_h; });
  return rates;
}

ChartAxis voltage_axis(const Kind& kind, const ChartPanel& panel) {
  double low = 1e9;
  double high = -1e9;
  const auto widen = [&](const base::Curve& points) {
    for (const base::CurvePoint& p : points) {
      low = std::min(low, p.y);
      high = std::max(high, p.y);
    }
  };
  for (const ChartLine& line : panel.lines) widen(line.points);
  for (const ChartMarks& marks : panel.marks) widen(marks.points);
  const double step = cells_shown(kind) == 1 ? 0.2 : 0.5;
  // A little slack, so that a curve that ends on a round value does not open another step by its last digit.
  constexpr double kSlack = 0.02;
  return {"Voltage " + per_what(kind) + ", V",
          step * std::floor(low / step + kSlack),
          step * std::ceil(high / step - kSlack),
          false,
          {},
          1};
}

base::Curve drawn_share(const Kind& kind, const Bench& bench) {
  const Discharge run = discharge(kind, bench);
  const int cells = cells_shown(kind);
  base::Curve curve;
  for (std::size_t i = 0; i < run.voltage_V.size(); ++i) {
    curve.push_back({100.0 * run.drawn_Ah[i] / bench.capacity_Ah, cells * run.voltage_V[i]});
  }
  if (!curve.empty()) curve.push_back({100.0 * run.total_Ah / bench.capacity_Ah, curve.back().y});
  return curve;
}

}  // namespace voltwright::tools
