#include "engine/cost/life_cycle.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "engine/cost/corner.h"
#include "engine/cost/working.h"

namespace voltwright::cost {

namespace {

/// Moments that differ by less than this share of the horizon are one.
constexpr double kSameTime = 1e-9;

/// Straight-line worth of a bank `age` into its life: from the price down to what the worn one brings.
double worth(double price, double scrap, double age_years, double life_years) {
  const double left = std::clamp(1.0 - age_years / life_years, 0.0, 1.0);
  return scrap + (price - scrap) * left;
}

void add_banks(const PricedBank& bank, double horizon, std::vector<ItemFlow>& flows) {
  const double price = bank.price.typical;
  const double scrap = bank.scrap.typical;
  const double life = bank.life_years.typical;
  const double until = horizon * (1.0 - kSameTime);
  std::vector<double> bought;
  std::vector<double> worn;
  double end = life;
  if (bank.fitted_now) {
    end = bank.life_left_years.typical;
  } else {
    bought.push_back(0.0);
  }
  while (end < until) {
    worn.push_back(end);
    bought.push_back(end);
    end += life;
  }
  for (const double year : bought) flows.push_back({Item::kPurchase, {year, -price}});
  for (const double year : worn) flows.push_back({Item::kScrap, {year, scrap}});
  // What was paid before today is neither a cost nor worth something at the horizon.
  const double left_over = bought.empty() ? scrap : worth(price, scrap, horizon - (end - life), life);
  flows.push_back({Item::kLeftOver, {horizon, left_over}});
}

/// A yearly sum at the end of each year, and of the part of a year that is left.
void add_yearly(Item item, double per_year, double horizon, std::vector<ItemFlow>& flows) {
  // A horizon that comes out of seconds may miss a whole year by rounding.
  const int whole = static_cast<int>(horizon * (1.0 + kSameTime));
  for (int year = 1; year <= whole; ++year) flows.push_back({item, {static_cast<double>(year), per_year}});
  const double part = horizon - whole;
  if (part > horizon * kSameTime) flows.push_back({item, {horizon, per_year * part}});
}

double energy_per_kWh(const PricedBank& bank, const Terms& terms) {
  double sum = 0.0;
  for (const Charging& charging : bank.charging) {
    for (const EnergySource& source : terms.sources) {
      if (source.name != charging.source) continue;
      sum += charging.kWh_per_delivered_kWh * source.price_per_kWh.typical;
      break;
    }
  }
  return sum;
}

double carrying_per_year(const PricedBank& bank, const Carrying& carrying) {
  constexpr double kEach = 100.0;  // km and kg
  return carrying.km_per_year / kEach * bank.mass_kg / kEach * carrying.L_per_100km_100kg.typical *
         carrying.fuel_price_per_L.typical;
}

double paid(const std::vector<ItemFlow>& flows, double rate, std::initializer_list<Item> items) {
  double sum = 0.0;
  for (const ItemFlow& one : flows) {
    if (std::find(items.begin(), items.end(), one.item) == items.end()) continue;
    sum -= one.flow.amount * discount_factor(rate, one.flow.year);
  }
  return sum;
}

void widen(units::Ranged& range, double value) {
  range.min = std::min(range.min, value);
  range.max = std::max(range.max, value);
}

}  // namespace

std::string name_of(Item item) {
  switch (item) {
    case Item::kPurchase:
      return "banks bought";
    case Item::kScrap:
      return "worn banks scrapped";
    case Item::kLeftOver:
      return "left over at the horizon";
    case Item::kEnergy:
      return "charging energy";
    case Item::kCarrying:
      return "fuel for the mass";
    case Item::kUpkeep:
      break;
  }
  return "upkeep";
}

std::vector<ItemFlow> flows_of(const PricedBank& bank, const Terms& terms) {
  std::vector<ItemFlow> flows;
  const double horizon = terms.horizon_years;
  add_banks(bank, horizon, flows);
  const double energy = energy_per_kWh(bank, terms) * bank.delivered_kWh_per_year.typical;
  if (energy != 0.0) add_yearly(Item::kEnergy, -energy, horizon, flows);
  const double carrying = carrying_per_year(bank, terms.carrying);
  if (carrying != 0.0) add_yearly(Item::kCarrying, -carrying, horizon, flows);
  if (bank.upkeep_per_year.typical != 0.0)
    add_yearly(Item::kUpkeep, -bank.upkeep_per_year.typical, horizon, flows);
  return flows;
}

std::vector<Flow> plain(const std::vector<ItemFlow>& flows) {
  std::vector<Flow> all;
  all.reserve(flows.size());
  for (const ItemFlow& one : flows) all.push_back(one.flow);
  return all;
}

Costs costs_of(const PricedBank& bank, const Terms& terms) {
  const double rate = terms.discount_rate.typical;
  const std::vector<ItemFlow> flows = flows_of(bank, terms);
  std::vector<ItemFlow> energy;
  add_yearly(Item::kEnergy, bank.delivered_kWh_per_year.typical, terms.horizon_years, energy);
  Costs costs;
  costs.capital = paid(flows, rate, {Item::kPurchase, Item::kScrap, Item::kLeftOver});
  costs.energy = paid(flows, rate, {Item::kEnergy});
  costs.carrying = paid(flows, rate, {Item::kCarrying});
  costs.upkeep = paid(flows, rate, {Item::kUpkeep});
  costs.present_value = costs.capital + costs.energy + costs.carrying + costs.upkeep;
  costs.annualised = annualised(costs.present_value, rate, terms.horizon_years);
  costs.delivered_kWh = bank.delivered_kWh_per_year.typical * terms.horizon_years;
  costs.discounted_kWh = -paid(energy, rate, {Item::kEnergy});
  costs.per_delivered_kWh = costs.present_value / costs.discounted_kWh;
  costs.capital_per_delivered_kWh = costs.capital / costs.discounted_kWh;
  costs.per_usable_kWh = bank.price.typical / bank.usable_kWh;
  costs.bought = static_cast<int>(std::count_if(
      flows.begin(), flows.end(), [](const ItemFlow& one) { return one.item == Item::kPurchase; }));
  return costs;
}

base::Result<LifeCycle> life_cycle(const PricedBank& bank, const Terms& terms) {
  base::Problems problems = problems_of(bank, terms);
  if (!problems.empty()) return problems;
  LifeCycle answer;
  answer.typical = costs_of(bank, terms);
  answer.flows = flows_of(bank, terms);
  answer.working = working_of(bank, terms);
  const double usable = bank.usable_kWh;
  answer.per_usable_kWh = {bank.price.min / usable, bank.price.typical / usable, bank.price.max / usable};
  answer.per_delivered_kWh = exactly(answer.typical.per_delivered_kWh);
  answer.present_value = exactly(answer.typical.present_value);
  answer.annualised = exactly(answer.typical.annualised);
  const units::Ranged& year = bank.delivered_kWh_per_year;
  const std::array<std::pair<PricedBank, Terms>, 2> corners = {std::pair(cheap(bank), cheap(terms)),
                                                               std::pair(dear(bank), dear(terms))};
  // More energy makes the whole dearer and each kWh cheaper, so that both of its ends are tried in each
  // corner.
  for (const double delivered : {year.min, year.typical, year.max}) {
    for (const auto& [at_end, under] : corners) {
      PricedBank moved = at_end;
      moved.delivered_kWh_per_year = exactly(delivered);
      const Costs costs = costs_of(moved, under);
      widen(answer.per_delivered_kWh, costs.per_delivered_kWh);
      widen(answer.present_value, costs.present_value);
      widen(answer.annualised, costs.annualised);
    }
  }
  return answer;
}

double cost_per_throughput_kWh(double price, double nominal_kWh, double depth, double cycles,
                               double mean_capacity, double discharge_efficiency) {
  return price / (nominal_kWh * depth * cycles * mean_capacity * discharge_efficiency);
}

}  // namespace voltwright::cost
