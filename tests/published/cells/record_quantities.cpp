// What the catalogue's chemistry records give through the engine's functions.
#include <nlohmann/json.hpp>

#include "engine/bank/electrochemistry.h"
#include "engine/bank/protection.h"
#include "engine/season/setup.h"
#include "files/embedded.h"
#include "tests/published/cells/quantities.h"
#include "tests/published/cells/records.h"

namespace voltwright::published {

namespace {

constexpr int kParts = 2000;

/// Rest voltage on a side of the hysteresis: +1 after a discharge, -1 after a charge, 0 between the branches.
double rest_V(const cell::Chemistry& record, double charge, double temperature_C, double side) {
  return cell::open_circuit_V(record, charge, temperature_C) -
         side * 1e-3 * base::curve_at(record.hysteresis.half_gap_mV, charge, 0.0);
}

double open_circuit_V(Inputs& in) {
  const auto& record = record_of(in);
  return in.number_or("cells", 1.0) *
         rest_V(record, in.number("charge"), in.number_or("temperature_C", 25.0), in.number_or("side", 0.0));
}

/// The same from the grid that the seasons use.
double tabled_open_circuit_V(Inputs& in) {
  const cell::Tables tables = cell::make_tables(record_of(in));
  const cell::Tables* at = &tables;
  return in.number_or("cells", 1.0) *
         base::look_up<double>(at, &cell::Tables::ocv_V, in.number("charge")).value;
}

/// From empty to full, midpoint rule over 2000 parts.
double mean_V(const cell::Chemistry& record, double side) {
  const double span = record.availability.full_over_rated;
  double sum = 0.0;
  for (int i = 0; i < kParts; ++i) sum += rest_V(record, 1.0 - span * (i + 0.5) / kParts, 25.0, side);
  return sum / kParts;
}

double open_circuit_rises(Inputs& in) {
  const auto& record = record_of(in);
  for (int i = 0; i < kParts; ++i) {
    if (!(cell::open_circuit_V(record, (i + 1.0) / kParts) > cell::open_circuit_V(record, 1.0 * i / kParts)))
      return yes(false);
  }
  return yes(true);
}

/// A resistance of the record for a cell of `capacity_Ah` [ohm].
double ohm(Inputs& in, double cell::Resistance::*part, cell::Curve cell::Resistance::*by_charge) {
  const auto& resistance = record_of(in).resistance;
  const double factor = base::curve_at(resistance.*by_charge, in.number("charge"), 1.0);
  return resistance.*part * factor / in.number("capacity_Ah");
}

double fast_ohm(Inputs& in) {
  return ohm(in, &cell::Resistance::fast_ohm_Ah, &cell::Resistance::relaxing_by_soc);
}
double slow_ohm(Inputs& in) {
  return ohm(in, &cell::Resistance::slow_ohm_Ah, &cell::Resistance::relaxing_by_soc);
}

/// Typical energy density that the record states for a year [Wh/kg]; the engine does not read it.
double energy_per_mass(Inputs& in) {
  const std::string name = "chemistries/" + record_of(in).id + ".json";
  const double year = in.number("year");
  const std::string end = in.text("end");
  for (const auto& file : files::embedded_catalogue()) {
    if (file.name != name) continue;
    const auto record = nlohmann::json::parse(file.bytes);
    for (const auto& fact : record["facts"]["energy_per_mass"]) {
      if (fact["year"].get<double>() == year) return fact["energy_Wh_per_kg"].value(end, -1.0);
    }
  }
  in.refuse("the record states no such energy");
  return 0.0;
}

/// Share of what can be drawn at 25 degC that can be drawn at a temperature, from a bank of one battery.
double capacity_share(Inputs& in) {
  const auto& battery = battery_of(in);
  const double temperature_C = in.number("temperature_C");
  const cell::Chemistry* record = catalogue().chemistry(battery.chemistry);
  if (record == nullptr) return 0.0;
  const cell::Tables tables = cell::make_tables(*record);
  const auto p = bank::assemble(battery, *record, tables, {1, 1, 0.0}, 0.0, 1.0, 60.0);
  bank::State<double> state;
  state.temperature_C = temperature_C;
  return (1.0 - bank::terminal<double>(p, state).usable_floor) / record->availability.full_over_rated;
}

/// Largest charge current that a bank of one battery permits, over its capacity [1/h], if the battery itself
/// took `offered_per_h`.
double charge_permitted_per_h(Inputs& in) {
  bank::Battery battery = battery_of(in);
  battery.charge_A = in.number("offered_per_h") * battery.capacity_Ah;
  const double temperature_C = in.number("temperature_C");
  const cell::Chemistry* record = catalogue().chemistry(battery.chemistry);
  if (record == nullptr) return 0.0;
  const cell::Tables tables = cell::make_tables(*record);
  const auto system = season::make_system(battery, *record, tables, {1, 1, 0.0}, season::Installation{});
  bank::GuardState<double> latch;
  bank::State<double> state;
  state.temperature_C = temperature_C;
  return bank::permit<double>(system.guard, latch, system.bank, state).charge_limit_A / battery.capacity_Ah;
}

}  // namespace

Quantities record_quantities() {
  return {
      {"open_circuit_V", open_circuit_V},
      {"tabled_open_circuit_V", tabled_open_circuit_V},
      {"mean_open_circuit_V",
       [](Inputs& in) {
         const auto& record = record_of(in);
         return in.number_or("cells", 1.0) * mean_V(record, in.number_or("side", 0.0));
       }},
      {"stored_Wh",
       [](Inputs& in) {
         const auto& record = record_of(in);
         return in.number("cells") * in.number("capacity_Ah") * mean_V(record, in.number_or("side", 0.0));
       }},
      {"open_circuit_rises", open_circuit_rises},
      {"series_ohm",
       [](Inputs& in) { return ohm(in, &cell::Resistance::ohmic_ohm_Ah, &cell::Resistance::ohmic_by_soc); }},
      {"fast_ohm", fast_ohm},
      {"slow_ohm", slow_ohm},
      {"fast_F", [](Inputs& in) { return record_of(in).resistance.fast_tau_s / fast_ohm(in); }},
      {"slow_F", [](Inputs& in) { return record_of(in).resistance.slow_tau_s / slow_ohm(in); }},
      {"coulombic_efficiency", [](Inputs& in) { return record_of(in).coulombic_efficiency; }},
      {"energy_per_mass_Wh_kg", energy_per_mass},
      {"capacity_share", capacity_share},
      {"charge_permitted_per_h", charge_permitted_per_h},
  };
}

}  // namespace voltwright::published
