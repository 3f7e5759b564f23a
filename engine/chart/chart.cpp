#include "engine/chart/chart.h"

#include <algorithm>

namespace voltwright::chart {

namespace {

/// Later wins; in one year the deeper; at one depth the lesser.
bool goes_before(const Fact& a, const Fact& b) {
  if (a.year != b.year) return a.year > b.year;
  if (a.depth != b.depth) return a.depth > b.depth;
  return a.value.typical < b.value.typical;
}

bool same_statement(const Fact& a, const Fact& b) {
  return a.year == b.year && a.depth == b.depth && a.value.typical == b.value.typical &&
         a.conditions == b.conditions;
}

units::Ranged product(const units::Ranged& a, const units::Ranged& b) {
  return {a.min * b.min, a.typical * b.typical, a.max * b.max};
}

/// The same level of both, so that a cell's current is not multiplied with a battery's mass.
std::optional<units::Ranged> power_of(const Row& row) {
  const Level level = row.kind->block ? Level::kBattery : Level::kCell;
  const Fact* rate = row.figure(Quantity::kContinuousRate, level);
  const Fact* energy = row.figure(Quantity::kEnergyPerMass, level);
  if (rate == nullptr || energy == nullptr) return std::nullopt;
  return product(rate->value, energy->value);
}

Row row_of(const Kind& kind, int year) {
  Row row;
  row.kind = &kind;
  for (const Quantity quantity : kQuantities) {
    for (const Level level : kLevels) {
      if (const Fact* fact = as_of(kind, quantity, level, year)) row.figures.push_back(*fact);
    }
  }
  row.power_W_per_kg = power_of(row);
  if (const Fact* rate = row.cell_or_block(Quantity::kChargeRate); rate != nullptr && rate->value.min > 0.0) {
    row.charge_h = {1.0 / rate->value.max, 1.0 / rate->value.typical, 1.0 / rate->value.min};
  }
  if (const Fact* life = row.cell_or_block(Quantity::kCycles)) {
    row.life_throughput = {life->value.min * life->depth, life->value.typical * life->depth,
                           life->value.max * life->depth};
  }
  row.safety_known = kind.safety.year <= year;
  return row;
}

void add_changes(const Row& now, const Kind& kind, int since, std::vector<Change>& changes) {
  for (const Fact& fact : now.figures) {
    const Fact* before = as_of(kind, fact.quantity, fact.level, since);
    if (before != nullptr && same_statement(*before, fact)) continue;
    Change change;
    change.kind = &kind;
    if (before != nullptr) change.before = *before;
    change.now = fact;
    changes.push_back(std::move(change));
  }
}

}  // namespace

const Fact* as_of(const Kind& kind, Quantity quantity, Level level, int year) {
  const Fact* best = nullptr;
  for (const Fact& fact : kind.facts) {
    if (fact.quantity != quantity || fact.level != level || fact.year > year) continue;
    if (best == nullptr || goes_before(fact, *best)) best = &fact;
  }
  return best;
}

const Fact* as_of_cell_or_block(const Kind& kind, Quantity quantity, int year) {
  const Fact* cell = kind.block ? nullptr : as_of(kind, quantity, Level::kCell, year);
  return cell != nullptr ? cell : as_of(kind, quantity, Level::kBattery, year);
}

const Fact* Row::figure(Quantity quantity, Level level) const {
  const auto found = std::find_if(figures.begin(), figures.end(), [&](const Fact& fact) {
    return fact.quantity == quantity && fact.level == level;
  });
  return found == figures.end() ? nullptr : &*found;
}

const Fact* Row::cell_or_block(Quantity quantity) const {
  const Fact* cell = kind->block ? nullptr : figure(quantity, Level::kCell);
  return cell != nullptr ? cell : figure(quantity, Level::kBattery);
}

Chart draw(const std::vector<Kind>& kinds, int year, std::optional<int> since) {
  Chart chart;
  for (const Kind& kind : kinds) {
    for (const Fact& fact : kind.facts) {
      chart.last_year = std::max(chart.last_year, fact.year);
      chart.first_year = chart.first_year == 0 ? fact.year : std::min(chart.first_year, fact.year);
    }
  }
  chart.year = year == 0 ? chart.last_year : year;
  chart.since = since;
  for (const Kind& kind : kinds) {
    chart.rows.push_back(row_of(kind, chart.year));
    if (since) add_changes(chart.rows.back(), kind, *since, chart.changes);
  }
  return chart;
}

}  // namespace voltwright::chart
