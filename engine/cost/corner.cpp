#include "engine/cost/corner.h"

namespace voltwright::cost {

units::Ranged exactly(double value) { return {value, value, value}; }

PricedBank cheap(PricedBank bank) {
  bank.price = exactly(bank.price.min);
  bank.life_years = exactly(bank.life_years.max);
  bank.life_left_years = exactly(bank.life_left_years.max);
  bank.scrap = exactly(bank.scrap.max);
  bank.upkeep_per_year = exactly(bank.upkeep_per_year.min);
  return bank;
}

PricedBank dear(PricedBank bank) {
  bank.price = exactly(bank.price.max);
  bank.life_years = exactly(bank.life_years.min);
  bank.life_left_years = exactly(bank.life_left_years.min);
  bank.scrap = exactly(bank.scrap.min);
  bank.upkeep_per_year = exactly(bank.upkeep_per_year.max);
  return bank;
}

Terms cheap(Terms terms) {
  for (EnergySource& source : terms.sources) source.price_per_kWh = exactly(source.price_per_kWh.min);
  terms.carrying.L_per_100km_100kg = exactly(terms.carrying.L_per_100km_100kg.min);
  terms.carrying.fuel_price_per_L = exactly(terms.carrying.fuel_price_per_L.min);
  return terms;
}

Terms dear(Terms terms) {
  for (EnergySource& source : terms.sources) source.price_per_kWh = exactly(source.price_per_kWh.max);
  terms.carrying.L_per_100km_100kg = exactly(terms.carrying.L_per_100km_100kg.max);
  terms.carrying.fuel_price_per_L = exactly(terms.carrying.fuel_price_per_L.max);
  return terms;
}

}  // namespace voltwright::cost
