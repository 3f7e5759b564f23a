#include "engine/chart/standing.h"

#include <algorithm>

namespace voltwright::chart {

namespace {

Standing of_fact(const Fact& fact, double key) {
  Standing standing;
  standing.key[0] = key;
  standing.value = fact.value.typical;
  standing.unit = unit_of(fact.quantity);
  standing.soft = is_soft(fact);
  return standing;
}

std::optional<Standing> most(const Fact* fact) {
  if (fact == nullptr) return std::nullopt;
  return of_fact(*fact, fact->value.typical);
}

std::optional<Standing> least(const Fact* fact) {
  if (fact == nullptr) return std::nullopt;
  return of_fact(*fact, -fact->value.typical);
}

std::optional<Standing> power(const Row& row) {
  if (!row.power_W_per_kg) return std::nullopt;
  Standing standing;
  standing.value = row.power_W_per_kg->typical;
  standing.key[0] = standing.value;
  standing.unit = "W/kg";
  standing.soft = is_soft(*row.cell_or_block(Quantity::kContinuousRate)) ||
                  is_soft(*row.cell_or_block(Quantity::kEnergyPerMass));
  return standing;
}

std::optional<Standing> charge(const Row& row) {
  const Fact* rate = row.cell_or_block(Quantity::kChargeRate);
  if (rate == nullptr) return std::nullopt;
  Standing standing = of_fact(*rate, rate->value.max);
  standing.key[1] = rate->value.typical;
  standing.value = rate->value.max;
  return standing;
}

std::optional<Standing> life(const Row& row) {
  const Fact* cycles = row.cell_or_block(Quantity::kCycles);
  if (cycles == nullptr) return std::nullopt;
  const double throughput = cycles->value.typical * cycles->depth;
  Standing standing = of_fact(*cycles, throughput);
  standing.value = throughput;
  standing.unit = "full equivalents";
  return standing;
}

/// By how it fails; then kinds that cannot plate metal; then by the onset temperature.
std::optional<Standing> safety(const Row& row) {
  const Safety& said = row.kind->safety;
  if (!row.safety_known || said.runaway == Runaway::kNotKnown) return std::nullopt;
  Standing standing;
  standing.key[0] = -static_cast<double>(said.runaway);
  standing.key[1] = said.plates_metal ? 0.0 : 1.0;
  standing.in_words = name_of(said.runaway);
  standing.soft = said.origin == Origin::kAssumption;
  if (const Fact* onset = row.figure(Quantity::kOnset, Level::kCell)) {
    standing.key[2] = onset->value.typical;
    standing.value = onset->value.typical;
    standing.unit = "degC";
  }
  return standing;
}

std::optional<Standing> cold(const Row& row) {
  const Fact* charge_from = row.cell_or_block(Quantity::kChargeFrom);
  if (charge_from == nullptr) return std::nullopt;
  Standing standing = of_fact(*charge_from, -charge_from->value.typical);
  if (const Fact* discharge_from = row.cell_or_block(Quantity::kDischargeFrom)) {
    standing.key[1] = -discharge_from->value.typical;
  } else {
    standing.key[1] = -charge_from->value.typical;
  }
  return standing;
}

}  // namespace

std::string_view name_of(Matter matter) {
  switch (matter) {
    case Matter::kEnergy:
      return "energy";
    case Matter::kVolume:
      return "volume";
    case Matter::kPower:
      return "power";
    case Matter::kCharge:
      return "charge";
    case Matter::kLife:
      return "life";
    case Matter::kSafety:
      return "safety";
    case Matter::kCold:
      return "cold";
    case Matter::kPrice:
      return "price";
    case Matter::kEfficiency:
      return "efficiency";
    case Matter::kStanding:
      return "standing";
  }
  return "";
}

std::string_view rule_of(Matter matter) {
  switch (matter) {
    case Matter::kEnergy:
      return "most Wh/kg of the cell (lead-acid: of the block)";
    case Matter::kVolume:
      return "most Wh/L of the cell (lead-acid: of the block)";
    case Matter::kPower:
      return "most W/kg: continuous discharge times energy per mass";
    case Matter::kCharge:
      return "highest charge rate that is stated, then the typical one";
    case Matter::kLife:
      return "most capacities delivered: cycles times depth";
    case Matter::kSafety:
      return "mildest failure stated, then no plating of metal, then the highest onset temperature";
    case Matter::kCold:
      return "lowest temperature for charging, then for discharging";
    case Matter::kPrice:
      return "least USD/kWh of the finished battery in a shop";
    case Matter::kEfficiency:
      return "most energy back of what was charged";
    case Matter::kStanding:
      return "least self-discharge in a month";
  }
  return "";
}

std::string_view name_of(Runaway runaway) {
  switch (runaway) {
    case Runaway::kNone:
      return "no fire of its own";
    case Runaway::kLow:
      return "low";
    case Runaway::kMedium:
      return "medium";
    case Runaway::kHigh:
      return "high";
    case Runaway::kNotKnown:
      return "not known";
  }
  return "";
}

std::optional<Matter> matter_named(std::string_view name) {
  const auto found =
      std::find_if(kMatters.begin(), kMatters.end(), [&](Matter matter) { return name_of(matter) == name; });
  if (found == kMatters.end()) return std::nullopt;
  return *found;
}

std::optional<Standing> standing_of(const Row& row, Matter matter) {
  switch (matter) {
    case Matter::kEnergy:
      return most(row.cell_or_block(Quantity::kEnergyPerMass));
    case Matter::kVolume:
      return most(row.cell_or_block(Quantity::kEnergyPerVolume));
    case Matter::kPower:
      return power(row);
    case Matter::kCharge:
      return charge(row);
    case Matter::kLife:
      return life(row);
    case Matter::kSafety:
      return safety(row);
    case Matter::kCold:
      return cold(row);
    case Matter::kPrice:
      return least(row.figure(Quantity::kPrice, Level::kBattery));
    case Matter::kEfficiency:
      return most(row.cell_or_block(Quantity::kEfficiency));
    case Matter::kStanding:
      return least(row.cell_or_block(Quantity::kSelfDischarge));
  }
  return std::nullopt;
}

}  // namespace voltwright::chart
