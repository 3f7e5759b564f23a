#include "engine/supply/generator.h"

#include <algorithm>
#include <limits>

namespace voltwright::supply {

double generator_output_W(const Generator& generator, double charger_output_W, double charger_efficiency) {
  const double carried_W = generator.rated_W * generator.charger_power_factor * charger_efficiency;
  return std::min(charger_output_W, carried_W);
}

double generator_L_per_h(const Generator& generator, double load_W) {
  const double load_kW = std::clamp(load_W, 0.0, generator.rated_W) / 1000.0;
  return generator.standing_L_h_per_kW * generator.rated_W / 1000.0 + generator.litres_per_kWh * load_kW;
}

double generator_L_per_kWh(const Generator& generator, double load_W) {
  const double load_kW = std::clamp(load_W, 0.0, generator.rated_W) / 1000.0;
  if (load_kW <= 0.0) return std::numeric_limits<double>::infinity();
  return generator_L_per_h(generator, load_W) / load_kW;
}

bool generator_runs(const Generator& generator, int second_of_day, double charge, bool running) {
  if (generator.quiet && generator.quiet->contains(second_of_day)) return false;
  if (charge >= generator.stop_above) return false;
  const bool wanted = running || charge < generator.stop_above - kEmptierBeforeRestart;
  const bool scheduled = wanted && generator.runs && generator.runs->contains(second_of_day);
  const bool low = charge < generator.start_below;
  // Short runs wear a set: one that may start by itself goes on until the bank is full enough.
  const bool goes_on = running && generator.start_below > 0.0;
  return scheduled || low || goes_on;
}

}  // namespace voltwright::supply
