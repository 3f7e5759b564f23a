#include "engine/ageing/measured_storage.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

namespace {

constexpr double kEmpty = 0.0;
constexpr double kHalf = 0.5;
constexpr double kFull = 1.0;
constexpr std::size_t kLeastTemperatures = 3;
constexpr std::size_t kLeastSweep = 5;

/// Rises with temperature, and ln k of an activated rate is linear in it.
double coordinate(double temperature_C) { return -1.0 / (temperature_C + kFreezing_K); }

/// ln k of the conditions at one state of charge, against the coordinate.
base::Curve column(const StorageTable& table, double soc) {
  std::map<double, double> sorted;
  for (const StorageCondition& condition : table) {
    if (condition.soc == soc)
      sorted[coordinate(condition.temperature_C)] = std::log(condition.loss_percent_per_root_day);
  }
  base::Curve curve;
  for (const auto& [x, y] : sorted) curve.push_back({x, y});
  return curve;
}

/// The rates of the temperature with the most states of charge, against the state of charge.
base::Curve widest_sweep(const StorageTable& table) {
  std::map<double, std::map<double, double>> by_temperature;
  for (const StorageCondition& condition : table)
    by_temperature[condition.temperature_C][condition.soc] = condition.loss_percent_per_root_day;
  const auto widest =
      std::max_element(by_temperature.begin(), by_temperature.end(),
                       [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
  base::Curve curve;
  if (widest == by_temperature.end()) return curve;
  for (const auto& [soc, rate] : widest->second) curve.push_back({soc, rate});
  return curve;
}

/// The way of ln k from its value at the low end of the sweep to that at the high end, 0 to 1.
base::Curve way(const base::Curve& sweep, double low, double high) {
  const double from = std::log(base::curve_at(sweep, low, 0.0));
  const double to = std::log(base::curve_at(sweep, high, 0.0));
  base::Curve curve;
  for (const base::CurvePoint& point : sweep) {
    if (point.x >= low && point.x <= high)
      curve.push_back({point.x, (std::log(point.y) - from) / (to - from)});
  }
  return curve;
}

/// As curve_at, but the last straight part goes on above the curve.
double with_last_slope(const base::Curve& curve, double x) {
  const base::CurvePoint& last = curve.back();
  if (x <= last.x) return base::curve_at(curve, x, 0.0);
  const base::CurvePoint& before = curve[curve.size() - 2];
  return last.y + (x - last.x) * (last.y - before.y) / (last.x - before.x);
}

/// The curve, continued to the cold beside `half` where it has no points of its own.
base::Curve beside(const base::Curve& curve, const base::Curve& half) {
  const double apart = curve.front().y - base::curve_at(half, curve.front().x, 0.0);
  base::Curve whole;
  for (const base::CurvePoint& point : half) {
    if (point.x < curve.front().x) whole.push_back({point.x, point.y + apart});
  }
  whole.insert(whole.end(), curve.begin(), curve.end());
  return whole;
}

}  // namespace

const char* fault_of(const StorageTable& table) {
  for (const StorageCondition& condition : table) {
    if (!(condition.loss_percent_per_root_day > 0.0)) return "A condition has a rate that is not above 0.";
  }
  const base::Curve half = column(table, kHalf);
  const base::Curve empty = column(table, kEmpty);
  const base::Curve full = column(table, kFull);
  if (half.size() < kLeastTemperatures) return "Half charge was not stored at three temperatures.";
  if (empty.size() < 2 || empty.size() != full.size())
    return "Empty and full were not stored at the same two temperatures.";
  for (std::size_t i = 0; i < empty.size(); ++i) {
    if (empty[i].x != full[i].x) return "Empty and full were not stored at the same temperatures.";
  }
  if (empty.front().x < half.front().x) return "Half charge was not stored at the coldest temperature.";
  const base::Curve sweep = widest_sweep(table);
  if (sweep.size() < kLeastSweep || sweep.front().x != kEmpty || sweep.back().x != kFull)
    return "No temperature has a sweep of five charges from empty to full.";
  return "";
}

StorageRates::StorageRates(const StorageTable& table) : half_(column(table, kHalf)) {
  empty_ = beside(column(table, kEmpty), half_);
  full_ = beside(column(table, kFull), half_);
  const base::Curve sweep = widest_sweep(table);
  below_ = way(sweep, kEmpty, kHalf);
  above_ = way(sweep, kHalf, kFull);
}

double StorageRates::per_root_h(double temperature_C, double soc) const {
  const double x = coordinate(temperature_C);
  const double half = with_last_slope(half_, x);
  const bool is_low = soc < kHalf;
  const double from = is_low ? with_last_slope(empty_, x) : half;
  const double to = is_low ? half : with_last_slope(full_, x);
  const double share = base::curve_at(is_low ? below_ : above_, soc, 0.0);
  constexpr double kPercent = 0.01;
  return kPercent * std::exp(from + share * (to - from)) / std::sqrt(kHoursPerDay);
}

void MeasuredStorage::wear(Aged& aged, const Exposure& exposure, double times) const {
  double progress = 0.0;
  for (const Dwell& dwell : exposure.dwell) {
    const double rate = rates_.per_root_h(dwell.temperature_C, dwell.soc);
    progress += rate * rate * dwell.hours;
  }
  aged.calendar_loss = stepped(aged.calendar_loss, 0.5, progress * times);
}

}  // namespace voltwright::ageing
