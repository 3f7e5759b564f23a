#pragma once
// What puts energy back: solar array with controller, engine, mains.
#include <optional>
#include <string>
#include <vector>

#include "engine/sky/horizon.h"
#include "engine/sky/module.h"
#include "engine/sky/transposition.h"
#include "engine/units/quantity.h"

namespace voltwright::supply {

/// Voltages a charger is set to, whole bank.
struct ChargeProfile {
  std::string of;  // chemistry whose profile it is, or "" if set by hand
  units::Voltage absorption;
  units::Voltage float_voltage;       // 0 = none
  double compensation_V_per_K = 0.0;  // relative to 25 degC
  units::Duration absorption_at_most = units::hours(4.0);
};

/// How a source's charger holds its voltage.
struct Regulation {
  std::optional<ChargeProfile> profile;        // none = the profile the bank's chemistry asks for
  units::Resistance lead = units::ohms(1e-3);  // from where it senses to the bus and back
  bool wakes = false;                          // starts on a bank that shows no voltage
  units::Duration equalise_every;              // 0 = never; only where the chemistry permits it
};

/// Mains chargers start on a bank that shows no voltage, others are not counted on to; common practice, no
/// source.
inline Regulation waking() {
  Regulation regulation;
  regulation.wakes = true;
  return regulation;
}

enum class ControllerKind { kMppt, kPwm };

struct SolarArray {
  std::string name;
  sky::Module module;
  int in_series = 1;
  int in_parallel = 1;
  double tilt_deg = 0.0;
  double azimuth_deg = 180.0;  // north 0, east 90
  sky::Mounting mounting = sky::Mounting::kGluedFlat;
  double soiling = 0.05;  // fraction lost
  /// The same by month, January first, also for stated snow; empty = `soiling` all year.
  std::vector<double> soiling_by_month;
  double other_losses = 0.05;                     // mismatch, wiring, shade: fraction lost
  std::optional<units::Temperature> record_cold;  // coldest air ever there; none = estimated
  ControllerKind controller = ControllerKind::kMppt;
  double controller_efficiency = 0.96;
  units::Current output_limit;  // to the battery
  units::Voltage input_limit;   // open-circuit voltage that must not be exceeded
  sky::Skyline skyline;         // land, masts, trees and roofs that hide the sun
  sky::SkyModel sky_model = sky::SkyModel::kPerez;
};

enum class EngineCoupling { kDcDc, kRelay };

struct EngineCharging {
  EngineCoupling coupling = EngineCoupling::kDcDc;
  units::Current output_limit;  // DC-DC output, or the alternator's hot continuous current for a relay
  double efficiency = 0.88;     // DC-DC
  units::Voltage alternator_voltage = units::volts(14.2);
  /// A controlled alternator holds this voltage for a share of the driving time to save fuel; 0 = it does
  /// not.
  units::Voltage alternator_low_voltage;
  double low_share = 0.0;
  units::Resistance loop_resistance =
      units::ohms(0.015);         // alternator to the relay or DC-DC converter and back
  units::Voltage input_lock_out;  // the DC-DC converter stops below this at its input; 0 = none known
  Regulation regulation;
};

struct MainsCharger {
  units::Current output_limit;
  double efficiency = 0.90;
  Regulation regulation = waking();
};

}  // namespace voltwright::supply
