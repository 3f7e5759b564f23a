#pragma once
// Fuel that the energy of a season took. See docs/method/engine_side.md.
#include "engine/supply/source.h"

namespace voltwright::supply {

/// Litres for each kWh that a running engine gives at the bus: v / (eta_alternator eta_converter); a relay
/// has no converter. The loss in the cable is not counted. 0 if the plan names no fuel.
double engine_L_per_kWh(const EngineCharging& engine);

/// Litres that a generator set burnt in `run_h` hours while its charger gave `output_Wh` at the bus.
double generator_L(const Generator& generator, double run_h, double output_Wh, double charger_efficiency);

}  // namespace voltwright::supply
