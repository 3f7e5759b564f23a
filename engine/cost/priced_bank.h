#pragma once
// What the cost over life asks of a bank and of the terms it is bought under. Every spread is
// least, typical, greatest; sums are in one currency, in money of the year of the price.
#include <string>
#include <vector>

#include "engine/base/problem.h"
#include "engine/units/ranged.h"

namespace voltwright::cost {

/// Energy that charges the bank, and what it costs: 0 for sun that is paid already, litres for each kWh times
/// the price of a litre for fuel, the tariff for the mains.
struct EnergySource {
  std::string name;             // "solar", "engine", "mains"
  units::Ranged price_per_kWh;  // >= 0
};

/// How much of a source one kWh out of the bank takes: its share over the efficiency of the way there and of
/// the bank.
struct Charging {
  std::string source;                  // the name of an EnergySource
  double kWh_per_delivered_kWh = 0.0;  // >= 0
};

/// Fuel that a vehicle burns because the bank has a mass. 0 km: it stands still, or nobody asks.
struct Carrying {
  double km_per_year = 0.0;
  units::Ranged L_per_100km_100kg;  // litres in 100 km for each 100 kg
  units::Ranged fuel_price_per_L;
};

/// Shared by all banks that are compared.
struct Terms {
  std::string currency = "USD";
  double horizon_years = 10.0;  // 1..60
  /// Real (in money of today), per year; -0.5..1. The typical one discounts, the others are for the
  /// sensitivity.
  units::Ranged discount_rate = {0.0, 0.03, 0.07};
  std::vector<EnergySource> sources;
  Carrying carrying;
};

struct PricedBank {
  std::string name;
  std::string currency = "USD";
  int price_year = 2025;                 // 0: the plan's own price, of today
  units::Ranged price;                   // of the whole bank, >= 0; a replacement costs the same
  double usable_kWh = 1.0;               // when new, > 0
  units::Ranged delivered_kWh_per_year;  // out of the bank; typical > 0
  units::Ranged life_years;              // when new; 0.05..200
  /// What is fitted now costs nothing to begin with, lasts for what is left of its life, and is worth no more
  /// than its scrap if it outlasts the horizon.
  bool fitted_now = false;
  units::Ranged life_left_years;  // read if fitted now; 0..200
  double mass_kg = 0.0;
  std::vector<Charging> charging;
  units::Ranged scrap;            // of the worn bank: got is positive, paid negative; at most the price
  units::Ranged upkeep_per_year;  // water, tests, replaced small parts; >= 0
};

/// What keeps the costs of a bank from being worked out: another currency than the terms', a value out of
/// its range or not finite, a spread out of order, a source without a price. Empty if nothing does.
base::Problems problems_of(const PricedBank& bank, const Terms& terms);

}  // namespace voltwright::cost
