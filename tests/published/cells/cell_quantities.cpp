// Laws of one cell: resistance against temperature, cycles against depth, charge voltage against temperature.
#include "engine/ageing/life.h"
#include "engine/cell/tables.h"
#include "engine/supply/stages.h"
#include "tests/published/cells/quantities.h"
#include "tests/published/cells/records.h"

namespace voltwright::published {

namespace {

double resistance_factor(Inputs& in) {
  cell::Resistance resistance;
  resistance.activation_kJ_mol = in.number("activation_kJ_mol");
  resistance.steady_fraction = in.number_or("steady_fraction", 0.0);
  return cell::resistance_factor(resistance, in.number("temperature_C"));
}

double cycles_at_depth(Inputs& in) {
  const auto& life = record_of(in).life;
  const std::string end = in.text("end");
  const double depth = in.number("depth");
  if (end == "min") return ageing::cycles_at_depth(life, depth, ageing::Spread::kShortest);
  if (end == "typical") return ageing::cycles_at_depth(life, depth, ageing::Spread::kTypical);
  if (end == "max") return ageing::cycles_at_depth(life, depth, ageing::Spread::kLongest);
  in.refuse("the end is min, typical or max");
  return 0.0;
}

double charge_set_point_V(Inputs& in) {
  supply::StageSettings<double> settings;
  settings.absorption_V = settings.float_V = in.number("at_25_V");
  settings.compensation_V_per_K = in.number("compensation_V_per_K");
  supply::StageState<double> state;
  state.stage = in.number("stage");
  return supply::set_point<double>(settings, state, in.number("temperature_C"));
}

}  // namespace

Quantities cell_quantities() {
  return {
      {"resistance_factor", resistance_factor},
      {"record_resistance_factor",
       [](Inputs& in) {
         return cell::resistance_factor(record_of(in).resistance, in.number("temperature_C"));
       }},
      {"cycles_at_depth", cycles_at_depth},
      {"charge_set_point_V", charge_set_point_V},
  };
}

}  // namespace voltwright::published
