#include "engine/supply/alternator.h"

#include <algorithm>
#include <cmath>

namespace voltwright::supply {

namespace {
// Fit to the hot currents of a published 50 A machine; docs/method/engine_side.md.
constexpr double kCutIn_rpm = 980.0;
constexpr double kSpeedScale_rpm = 790.0;
// Assumption, laid through the hot and cold currents of the same machine.
constexpr double kLostPerKelvin = 0.0030;
constexpr double kReference_C = 25.0;
constexpr double kLeastHeatShare = 0.6;
constexpr double kRegulatorReference_C = 20.0;
}  // namespace

double speed_share(double alternator_rpm) {
  return alternator_rpm > kCutIn_rpm ? 1.0 - std::exp(-(alternator_rpm - kCutIn_rpm) / kSpeedScale_rpm) : 0.0;
}

double heat_share(double air_C) {
  return std::clamp(1.0 - kLostPerKelvin * (air_C - kReference_C), kLeastHeatShare, 1.0);
}

double alternator_A(const Alternator& alternator, double engine_rpm, double air_C) {
  return alternator.rated_A * speed_share(alternator.pulley_ratio * engine_rpm) * heat_share(air_C);
}

double spare_A(const Alternator& alternator, double engine_rpm, double air_C) {
  return std::max(0.0, alternator_A(alternator, engine_rpm, air_C) - alternator.vehicle_A);
}

double regulated_V(const Alternator& alternator, double regulator_C) {
  return alternator.regulated_V + alternator.regulated_V_per_K * (regulator_C - kRegulatorReference_C);
}

double relay_closed_share(const ControlledDuty& duty, double closes_V) {
  return (duty.overrun_V >= closes_V ? duty.overrun_share : 0.0) +
         (duty.cruise_V >= closes_V ? duty.cruise_share : 0.0) +
         (duty.idle_V >= closes_V ? duty.idle_share : 0.0);
}

double shaft_W(const Alternator& alternator, double output_W) { return output_W / alternator.efficiency; }

}  // namespace voltwright::supply
