#pragma once
// What the banks of a ranking cost over the years and for each kilowatt-hour that they deliver, and which
// assumption moves it most. Equations, conventions and sources: docs/method/cost.md.
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "engine/advise/recommendation.h"
#include "engine/cost/comparison.h"
#include "engine/cost/life_cycle.h"
#include "engine/cost/money.h"
#include "engine/cost/sensitivity.h"

namespace voltwright::advise {

/// One bank of the ranking.
struct BankCost {
  cost::PricedBank bank;
  base::Problems problems;  // what keeps its cost from being known; then what follows is empty
  cost::LifeCycle life_cycle;
  cost::Tornado tornado;

  bool known() const { return problems.empty(); }
};

/// The bank that is shown first against another one of the ranking.
struct Against {
  std::size_t other = 0;  // index into the ranking
  cost::Comparison comparison;
  cost::Ranking ranking;  // the bank shown first is its first
};

struct LifeCost {
  cost::Terms terms;
  std::vector<std::string> notes;  // what counts as free and what else was assumed, as sentences
  std::vector<BankCost> banks;     // in the order of the ranking
  std::size_t shown = 0;           // index of the best bank, or of the nearest if none holds
  /// The bank fitted now, then the nearest bank of another chemistry; without those whose cost is not known.
  std::vector<Against> against;
};

/// Costs of all banks of the ranking. A year is taken as seasons like the simulated ones, one after the
/// other; the energy of each year lies between that of the season with least and the one with most.
/// @param lives  simulated lives of new banks [years] in the order of the ranking where they are known; the
///               others, and all if it is empty, take Trial::life_years()
LifeCost life_cost(const Plan& plan, const cost::RunningFacts& facts, const Recommendation& answer,
                   std::span<const std::optional<units::Ranged>> lives = {});

}  // namespace voltwright::advise
