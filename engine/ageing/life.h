#pragma once
// Life by the cycle table and the calendar rule, until better laws take over.
#include <span>

#include "engine/ageing/exposure.h"
#include "engine/cell/chemistry.h"

namespace voltwright::ageing {

/// Wear of one season as a share of life: 1 = worn to 80 % of capacity.
struct Wear {
  double by_cycles = 0.0;
  double by_calendar = 0.0;
  double total() const { return by_cycles + by_calendar; }
};

/// Which end of the published figures to use.
enum class Spread { kShortest, kTypical, kLongest };

/// Cycles to 80 % at a depth 0..1: N(D) = N_ref (D_ref / D)^p. Swings under 1 % count as 1 %.
double cycles_at_depth(const cell::LifeFigures& life, double depth, Spread spread);

/// Share of calendar life used up per hour at a temperature: 2^((T - 25) / halving) / (years at 25 degC).
/// Below 10 degC the rate of 10 degC is kept: the rule was drawn from warmer tests.
double calendar_wear_per_h(const cell::LifeFigures& life, double temperature_C);

/// Calendar wear of the time spent, with typical years: the sum of hours times calendar_wear_per_h.
double calendar_share(const cell::LifeFigures& life, std::span<const Dwell> dwell);

/// Wear by Miner's sum over the counted swings plus the calendar share; both parts add (assumption: no
/// interaction).
Wear wear_of(const cell::LifeFigures& life, const Exposure& exposure, Spread spread);

/// Longest life that is stated [years]; published tests are far shorter.
inline constexpr double kLongestLife_years = 25.0;

/// Years until the wear reaches 1 if seasons of this length follow each other without a break, at most
/// kLongestLife_years.
double years_of_life(const Wear& wear, double season_years);

}  // namespace voltwright::ageing
