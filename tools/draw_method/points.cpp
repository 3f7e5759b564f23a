#include "tools/draw_method/points.h"

#include <fmt/format.h>

#include <cmath>

namespace voltwright::tools {

namespace {

constexpr double kMinutes = 60.0;

struct Case {
  std::string condition;
  const char* unit;
  double computed;
};

/// A figure without needless zeros.
std::string plain(double value) { return fmt::format("{:.4g}", value); }

std::string degrees(double value_C) {
  return (value_C < 0.0 ? "\u2212" : "") + plain(std::fabs(value_C)) + " °C";
}

Case computed(const Kind& kind, const PublishedSet& set, const Series& series,
              const base::CurvePoint& point) {
  Bench bench{set.capacity_Ah, series.current_A, set.end_V, set.temperature_C};
  const auto run_at = [&](double current_A) {
    bench.current_A = current_A;
    return discharge(kind, bench);
  };
  const std::string at = fmt::format("{}, {} A", series.title, plain(series.current_A));
  const std::string own = " at " + plain(point.x) + " A";
  switch (series.measured) {
    case Measured::kChargeVoltageByCharge:
      return {fmt::format("{}, {} % charge", at, plain(100.0 * point.x)), "V",
              charge_voltage(kind, bench, point.x)};
    case Measured::kVoltageByCharge:
      return {fmt::format("{}, {} % charge", at, plain(100.0 * point.x)), "V",
              discharge(kind, bench).at_charge((1.0 - point.x) * set.capacity_Ah)};
    case Measured::kVoltageByTime:
      return {fmt::format("{}, after {} s", at, fmt::format("{:.0f}", point.x)), "V",
              discharge(kind, bench).at_time(point.x)};
    case Measured::kChargeByCurrent:
      return {"charge" + own, "Ah", run_at(point.x).total_Ah};
    case Measured::kEnergyByCurrent:
      return {"energy" + own, "Wh", run_at(point.x).total_Wh};
    case Measured::kHoursByCurrent:
      return {"time" + own, "h", run_at(point.x).hours};
    case Measured::kMinutesBySize:
      bench.capacity_Ah = point.x;
      return {fmt::format("{} Ah at {} A", plain(point.x), plain(series.current_A)), "min",
              kMinutes * discharge(kind, bench).hours};
    case Measured::kShareByTemperature:
      break;
  }
  const double reference_Ah = discharge(kind, bench).total_Ah;
  bench.temperature_C = point.x;
  return {fmt::format("{}, {}", series.title, degrees(point.x)), "%",
          100.0 * discharge(kind, bench).total_Ah / reference_Ah};
}

}  // namespace

bool gives_voltage(Measured measured) {
  return measured == Measured::kChargeVoltageByCharge || measured == Measured::kVoltageByCharge ||
         measured == Measured::kVoltageByTime;
}

bool Residual::within() const { return std::fabs(computed - published) <= tolerance; }

std::vector<Residual> residuals(const Kind& kind, const PublishedSet& set) {
  std::vector<Residual> rows;
  for (const Series& series : set.series) {
    for (const base::CurvePoint& point : series.points) {
      const Case now = computed(kind, set, series, point);
      Residual row;
      row.condition = now.condition;
      row.unit = now.unit;
      row.published = series.measured == Measured::kShareByTemperature ? 100.0 * point.y : point.y;
      row.computed = now.computed;
      row.tolerance =
          series.tolerance_V > 0.0 ? series.tolerance_V : series.relative_tolerance * row.published;
      row.fitted = series.fitted;
      row.keys = series.keys;
      rows.push_back(std::move(row));
    }
  }
  return rows;
}

}  // namespace voltwright::tools
