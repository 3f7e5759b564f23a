#pragma once
// What puts energy back: solar array with controller, engine, mains.
#include <optional>
#include <string>

#include "engine/sky/module.h"
#include "engine/units/quantity.h"

namespace voltwright::supply {

enum class ControllerKind { kMppt, kPwm };

struct SolarArray {
  std::string name;
  sky::Module module;
  int in_series = 1;
  int in_parallel = 1;
  double tilt_deg = 0.0;
  double azimuth_deg = 180.0;  // north 0, east 90
  sky::Mounting mounting = sky::Mounting::kGluedFlat;
  double soiling = 0.05;       // fraction lost
  double other_losses = 0.05;  // mismatch, wiring, shade: fraction lost
  ControllerKind controller = ControllerKind::kMppt;
  double controller_efficiency = 0.96;
  units::Current output_limit;  // to the battery
  units::Voltage input_limit;   // open-circuit voltage that must not be exceeded
};

enum class EngineCoupling { kDcDc, kRelay };

struct EngineCharging {
  EngineCoupling coupling = EngineCoupling::kDcDc;
  units::Current output_limit;  // DC-DC output, or the alternator's hot continuous current for a relay
  double efficiency = 0.88;     // DC-DC
  units::Voltage alternator_voltage = units::volts(14.2);
  units::Resistance loop_resistance = units::ohms(0.015);  // alternator to bank and back, relay only
};

struct MainsCharger {
  units::Current output_limit;
  double efficiency = 0.90;
};

}  // namespace voltwright::supply
