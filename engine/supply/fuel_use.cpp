#include "engine/supply/fuel_use.h"

namespace voltwright::supply {

namespace {
constexpr double kWattsPerKilowatt = 1000.0;
}  // namespace

double engine_L_per_kWh(const EngineCharging& engine) {
  if (!engine.fuel) return 0.0;
  const double converter = engine.coupling == EngineCoupling::kDcDc ? engine.efficiency : 1.0;
  const double alternator =
      engine.alternator ? engine.alternator->machine.efficiency : Alternator{}.efficiency;
  return litres_per_shaft_kWh(*engine.fuel) / (alternator * converter);
}

double generator_L(const Generator& generator, double run_h, double output_Wh, double charger_efficiency) {
  const double standing_L_h = generator.standing_L_h_per_kW * generator.rated_W / kWattsPerKilowatt;
  const double drawn_kWh = output_Wh / charger_efficiency / kWattsPerKilowatt;
  return standing_L_h * run_h + generator.litres_per_kWh * drawn_kWh;
}

}  // namespace voltwright::supply
