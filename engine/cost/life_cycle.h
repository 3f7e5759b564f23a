#pragma once
// What a bank costs over the years, and what a delivered kilowatt-hour costs by it. Equations, conventions
// and sources: docs/method/cost.md.
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/cost/cash_flow.h"
#include "engine/cost/priced_bank.h"

namespace voltwright::cost {

enum class Item {
  kPurchase,  // the first bank and those that replace it
  kScrap,     // what worn banks bring or cost
  kLeftOver,  // what the last bank is still worth at the horizon
  kEnergy,    // charging
  kCarrying,  // fuel for the mass
  kUpkeep,
};

/// "charging energy".
std::string name_of(Item item);

/// A payment and what it is for; paid is negative.
struct ItemFlow {
  Item item = Item::kPurchase;
  Flow flow;
};

/// The typical values of a bank turned into payments: banks bought at the ends of lives, worn ones scrapped,
/// the last one worth its straight-line value at the horizon, running costs at the end of each year (of the
/// part of a year that is left at the end). In order of item, then time. problems_of() must be empty.
std::vector<ItemFlow> flows_of(const PricedBank& bank, const Terms& terms);

/// All flows without what they are for.
std::vector<Flow> plain(const std::vector<ItemFlow>& flows);

/// Costs at the typical values, in the currency of the terms; paid counts positive here.
struct Costs {
  double capital = 0.0;  // present value of banks bought, less scrap and what is left over
  double energy = 0.0;   // present values
  double carrying = 0.0;
  double upkeep = 0.0;
  double present_value = 0.0;              // of all of it
  double annualised = 0.0;                 // the same as a yearly sum
  double delivered_kWh = 0.0;              // to the horizon
  double discounted_kWh = 0.0;             // each year's discounted like money
  double per_delivered_kWh = 0.0;          // present_value / discounted_kWh
  double capital_per_delivered_kWh = 0.0;  // the same of the capital alone
  double per_usable_kWh = 0.0;             // price / usable_kWh, nothing else
  int bought = 0;                          // banks, the first included unless it is fitted now
};

/// problems_of() must be empty.
Costs costs_of(const PricedBank& bank, const Terms& terms);

/// One line of the working.
struct WorkingLine {
  std::string name;
  double value = 0.0;
  std::string unit;
  std::string words;  // how it comes about
};

struct LifeCycle {
  Costs typical;
  /// From all inputs at their cheap end to all at their dear end, the discount rate at its typical value. The
  /// likely band is Tornado::likely, in which the rate moves too.
  units::Ranged per_usable_kWh;
  units::Ranged per_delivered_kWh;
  units::Ranged present_value;
  units::Ranged annualised;
  std::vector<ItemFlow> flows;  // typical
  std::vector<WorkingLine> working;
};

/// Everything about one bank, or the problems of problems_of().
base::Result<LifeCycle> life_cycle(const PricedBank& bank, const Terms& terms);

/// The sum that is done in the head: price over the energy that passes through until the cycles are used up.
/// price / (nominal_kWh depth cycles mean_capacity discharge_efficiency), all > 0; no interest, no
/// replacement, and no calendar life: take the cycles that fit into it.
double cost_per_throughput_kWh(double price, double nominal_kWh, double depth, double cycles,
                               double mean_capacity, double discharge_efficiency);

}  // namespace voltwright::cost
