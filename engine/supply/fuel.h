#pragma once
// Fuel for electricity: of an engine that runs anyway, and of a generator set. See
// docs/method/engine_side.md.

namespace voltwright::supply {

enum class Fuel { kPetrol, kPetrolTurbo, kDiesel, kLpg };

/// Litres that one more kWh at the shaft costs a running engine. Source: Commission Implementing Decision
/// (EU) 2020/728, consumption of effective power.
constexpr double litres_per_shaft_kWh(Fuel fuel) {
  switch (fuel) {
    case Fuel::kPetrol:
      return 0.264;
    case Fuel::kPetrolTurbo:
      return 0.280;
    case Fuel::kDiesel:
      return 0.220;
    case Fuel::kLpg:
      return 0.342;
  }
  return 0.264;
}

}  // namespace voltwright::supply
