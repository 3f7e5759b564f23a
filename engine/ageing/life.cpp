#include "engine/ageing/life.h"

#include <algorithm>
#include <cmath>

namespace voltwright::ageing {

namespace {

constexpr double kHoursPerYear = 8766.0;
constexpr double kShallowest = 0.01;
constexpr double kColdestOfRule_C = 10.0;

double pick(const units::Ranged& range, Spread spread) {
  switch (spread) {
    case Spread::kShortest:
      return range.min;
    case Spread::kTypical:
      return range.typical;
    case Spread::kLongest:
      return range.max;
  }
  return range.typical;
}

}  // namespace

double cycles_at_depth(const cell::LifeFigures& life, double depth, Spread spread) {
  return pick(life.cycles, spread) * std::pow(life.depth / std::max(depth, kShallowest), life.depth_exponent);
}

double calendar_wear_per_h(const cell::LifeFigures& life, double temperature_C) {
  return std::exp2((std::max(temperature_C, kColdestOfRule_C) - 25.0) / life.halving_K) /
         (life.calendar_years.typical * kHoursPerYear);
}

double calendar_share(const cell::LifeFigures& life, std::span<const Dwell> dwell) {
  double share = 0.0;
  for (const Dwell& d : dwell) share += d.hours * calendar_wear_per_h(life, d.temperature_C);
  return share;
}

Wear wear_of(const cell::LifeFigures& life, const Exposure& exposure, Spread spread) {
  Wear wear;
  for (const Swing& swing : exposure.swings)
    wear.by_cycles += swing.count / cycles_at_depth(life, swing.depth, spread);
  wear.by_calendar =
      calendar_share(life, exposure.dwell) * life.calendar_years.typical / pick(life.calendar_years, spread);
  return wear;
}

double years_of_life(const Wear& wear, double season_years) {
  const double total = wear.total();
  return total * kLongestLife_years > season_years ? season_years / total : kLongestLife_years;
}

}  // namespace voltwright::ageing
