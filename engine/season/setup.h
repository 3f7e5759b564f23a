#pragma once
#include <optional>
#include <span>

#include "engine/bank/assembly.h"
#include "engine/bank/location.h"
#include "engine/demand/load.h"
#include "engine/season/system.h"
#include "engine/supply/source.h"

namespace voltwright::season {

/// Everything besides the bank that decides the constants of a system.
struct Installation {
  const demand::Inverter* inverter = nullptr;
  const supply::EngineCharging* engine = nullptr;
  const supply::MainsCharger* mains = nullptr;
  const supply::WindCharging* wind = nullptr;
  const supply::WaterCharging* water = nullptr;
  const supply::Generator* generator = nullptr;  // feeds `mains`
  supply::Regulation solar;                      // of all solar controllers
  std::span<const demand::Load> loads;           // those with a cable of their own are looked for
  bank::Surroundings surroundings;
  double main_cable_ohm = 0.0;      // loop
  double inverter_cable_ohm = 0.0;  // loop
  double system_V = 12.0;
  double usable_depth = 1.0;  // loads are switched off below 1 - usable_depth
};

/// Loop resistance of a two-conductor copper run at 20 degC [ohm]: 2 * 0.017241 ohm mm2/m * length / area.
/// Length one way in m, area in mm2; 0 if either is 0. Source: IEC 60028 standard annealed copper.
double loop_resistance_ohm(double one_way_m, double area_mm2);

/// Constants of the system around one bank for 60 s steps.
System<double> make_system(const bank::Battery& battery, const cell::Chemistry& chemistry,
                           const cell::Tables& tables, const bank::Layout& layout,
                           const Installation& installation);

/// A bank as its chargers leave it, full and rested, at the temperature of its surroundings.
SystemState<double> full_and_rested(const System<double>& system, double temperature_C);

}  // namespace voltwright::season
