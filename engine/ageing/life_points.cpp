#include "engine/ageing/life_points.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

namespace {

constexpr double kHoursPerYear = 8766.0;
constexpr double kColdestOfRule_C = 10.0;  // no source has the halving rule in the cold

double log_log(const base::Curve& curve, double x) {
  base::Curve logs;
  logs.reserve(curve.size());
  for (const base::CurvePoint& point : curve) logs.push_back({std::log(point.x), std::log(point.y)});
  return std::exp(base::curve_at(logs, std::log(x), 0.0));
}

constexpr double kReference_C = 25.0;

/// Life at 25 degC under otherwise the same condition; 0 if it was not tested.
double reference_life(const std::vector<LifePoint>& points, const LifePoint& other) {
  const auto same = std::find_if(points.begin(), points.end(), [&](const LifePoint& point) {
    return point.temperature_C == kReference_C && point.low_soc == other.low_soc &&
           point.high_soc == other.high_soc && point.charge_per_h == other.charge_per_h &&
           point.discharge_per_h == other.discharge_per_h;
  });
  return same != points.end() ? same->full_cycles.typical : 0.0;
}

struct Slowest {
  double discharge_per_h = 0.0;
  double value = 0.0;
};

/// Keeps the value of the slowest rate at each x; of equal rates the first.
void keep(std::map<double, Slowest>& at, double x, double discharge_per_h, double value) {
  const auto [found, is_new] = at.try_emplace(x, Slowest{discharge_per_h, value});
  if (!is_new && discharge_per_h < found->second.discharge_per_h) found->second = {discharge_per_h, value};
}

base::Curve curve_of(const std::map<double, Slowest>& at) {
  base::Curve curve;
  for (const auto& [x, slowest] : at) curve.push_back({x, slowest.value});
  return curve;
}

}  // namespace

LifePointFigures figures_of(const std::vector<LifePoint>& points) {
  std::map<double, Slowest> by_depth;
  std::map<double, Slowest> by_temperature;
  for (const LifePoint& point : points) {
    // Depths of 0.8 - 0.2 and the like, so that equal windows are equal numbers.
    const double depth = std::round(1e6 * (point.high_soc - point.low_soc)) / 1e6;
    if (depth <= 0.0) continue;
    if (point.temperature_C == kReference_C) {
      keep(by_depth, depth, point.discharge_per_h, point.full_cycles.typical);
      keep(by_temperature, kReference_C, point.discharge_per_h, 1.0);
    } else if (const double reference = reference_life(points, point); reference > 0.0) {
      keep(by_temperature, point.temperature_C, point.discharge_per_h, point.full_cycles.typical / reference);
    }
  }
  LifePointFigures figures;
  figures.full_cycles_by_depth = curve_of(by_depth);
  if (!by_depth.empty()) figures.life_factor_by_C = curve_of(by_temperature);
  return figures;
}

double LifePoints::full_cycles_to_end(double depth, double temperature_C) const {
  const double least = figures_.full_cycles_by_depth.front().x;
  return log_log(figures_.full_cycles_by_depth, std::max(depth, least)) *
         base::curve_at(figures_.life_factor_by_C, temperature_C, 1.0);
}

void LifePoints::wear(Aged& aged, const Exposure& exposure, double times) const {
  const double allowance = 1.0 - figures_.end_of_life_share;
  double used = 0.0;
  for (const Swing& swing : exposure.swings) {
    if (swing.depth > 0.0) used += full_cycles(swing) / full_cycles_to_end(swing.depth, swing.temperature_C);
  }
  aged.cycle_loss += allowance * used * times;
  if (figures_.shelf_years <= 0.0) return;
  double rested = 0.0;
  for (const Dwell& dwell : exposure.dwell) {
    const double warmer_K = std::max(dwell.temperature_C, kColdestOfRule_C) - 25.0;
    rested += dwell.hours * std::exp2(warmer_K / figures_.shelf_halving_K);
  }
  aged.calendar_loss += allowance * rested / (figures_.shelf_years * kHoursPerYear) * times;
}

}  // namespace voltwright::ageing
