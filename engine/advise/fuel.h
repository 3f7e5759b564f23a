#pragma once
// Fuel that a mean season takes, and what a kilowatt-hour at the bus costs of it.
#include <string>
#include <vector>

#include "engine/advise/plan.h"
#include "engine/season/ledger.h"

namespace voltwright::advise {

/// Fuel of one source in a mean season.
struct FuelUse {
  std::string source;      // "engine" or "generator"
  double energy_Wh = 0.0;  // at the bus
  double litres = 0.0;
  double run_h = 0.0;  // of a generator set; 0 for an engine that runs anyway

  /// 0 without energy.
  double L_per_kWh() const { return energy_Wh > 0.0 ? litres / (energy_Wh / 1000.0) : 0.0; }
};

/// The engine if the plan names its fuel, and the generator set. `ledger` sums over `seasons` seasons.
std::vector<FuelUse> fuel_of(const Plan& plan, const season::Ledger<double>& ledger, double seasons);

/// The same in sentences; empty without such a source.
std::string fuel_sentences(const Plan& plan, const season::Ledger<double>& ledger, double seasons);

}  // namespace voltwright::advise
