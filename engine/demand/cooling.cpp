#include "engine/demand/cooling.h"

#include <cmath>

namespace voltwright::demand {

namespace {
constexpr double kApproach_K = 15.0;
constexpr double kZero_K = 273.15;

double carnot(double inside_C, double room_C) {
  const double evaporator_K = inside_C - kApproach_K + kZero_K;
  const double condenser_K = room_C + kApproach_K + kZero_K;
  return evaporator_K / std::fmax(condenser_K - evaporator_K, 5.0);
}
}  // namespace

double cooling_power_W(const Cooling& cooling, double room_C) {
  const double inside_C = cooling.inside.as_celsius();
  const double heat_W = units::as_watts_per_kelvin(cooling.heat_leak) * (room_C - inside_C);
  if (heat_W <= 0.0) return 0.0;
  const double relative = std::sqrt(carnot(inside_C, room_C) / carnot(inside_C, 25.0));
  return heat_W / (cooling.cop_at_25C * relative);
}

}  // namespace voltwright::demand
