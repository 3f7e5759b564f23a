#include "engine/ageing/life_points.h"

#include <algorithm>
#include <cmath>

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

}  // namespace

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
