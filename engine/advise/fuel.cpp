#include "engine/advise/fuel.h"

#include "engine/advise/wording.h"
#include "engine/supply/fuel_use.h"

namespace voltwright::advise {

std::vector<FuelUse> fuel_of(const Plan& plan, const season::Ledger<double>& ledger, double seasons) {
  std::vector<FuelUse> all;
  if (plan.engine && plan.engine->fuel) {
    const double energy_Wh = ledger.engine_Wh / seasons;
    all.push_back({"engine", energy_Wh, supply::engine_L_per_kWh(*plan.engine) * energy_Wh / 1000.0, 0.0});
  }
  if (plan.generator && plan.mains) {
    const double energy_Wh = ledger.generator_Wh / seasons;
    const double run_h = ledger.generator_h / seasons;
    all.push_back({"generator", energy_Wh,
                   supply::generator_L(*plan.generator, run_h, energy_Wh, plan.mains->efficiency), run_h});
  }
  return all;
}

std::string fuel_sentences(const Plan& plan, const season::Ledger<double>& ledger, double seasons) {
  std::string text;
  for (const FuelUse& use : fuel_of(plan, ledger, seasons)) {
    if (!text.empty()) text += " ";
    if (use.source == "generator") {
      text += "The generator set runs " + duration_text(use.run_h * 60.0) + " in a mean season and burns " +
              figure(use.litres, "L");
    } else {
      text += "Charging costs the engine " + figure(use.litres, "L") + " of fuel in a mean season";
    }
    text += use.energy_Wh > 0.0 ? ", " + figure(use.L_per_kWh(), "L/kWh") + " at the bus." : ".";
  }
  return text;
}

}  // namespace voltwright::advise
