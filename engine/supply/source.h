#pragma once
// What puts energy back: solar array with controller, wind, water, engine, mains, generator set.
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "engine/sky/horizon.h"
#include "engine/sky/module.h"
#include "engine/sky/transposition.h"
#include "engine/supply/alternator.h"
#include "engine/supply/fuel.h"
#include "engine/supply/generator.h"
#include "engine/supply/towing_plug.h"
#include "engine/supply/wind_turbine.h"
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
  double azimuth_deg = 180.0;  // north 0, east 90; from the front if it turns with the vehicle
  bool turns = false;          // fixed to the vehicle: azimuth and near shade count clockwise from its front
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
  sky::Skyline land;            // the land's edge, fixed to the compass
  sky::Skyline near;            // masts, trees and roofs
  sky::SkyModel sky_model = sky::SkyModel::kPerez;
};

enum class EngineCoupling { kDcDc, kRelay };

/// How the alternator is used while the vehicle drives. It goes through turns of ten minutes: overrun (only
/// an engine-controlled one), cruise, idle.
struct AlternatorUse {
  Alternator machine;
  double driving_rpm = 2000.0;  // of the engine (assumption)
  double idle_rpm = 800.0;      // of the engine (assumption)
  double idle_share = 0.1;      // of the driving time (assumption)
  bool controlled = false;      // by the engine: holds the voltages of `duty`
  ControlledDuty duty;
  double air_rise_K = 40.0;  // final rise of the air around it above outside (assumption)
};

enum class ConverterPlace { kCabin, kOutside, kEngineBay };

/// Where a DC-DC converter stands and what warm air takes from its output.
struct Derating {
  ConverterPlace place = ConverterPlace::kCabin;
  double from_C = 45.0;
  double per_K = 0.03;
};

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
  units::Voltage relay_closes;    // a relay that senses voltage joins the batteries from here on; 0 = always
  std::optional<AlternatorUse> alternator;  // none = the alternator gives whatever is asked
  std::optional<Derating> derating;
  std::optional<TowingPlug> plug;  // in series with loop_resistance
  std::optional<Fuel> fuel;        // none = not known
  Regulation regulation;
};

struct MainsCharger {
  units::Current output_limit;
  double efficiency = 0.90;
  Regulation regulation = waking();
};

/// Wind turbines with their controllers; the turbine's power is that of its rotor and generator.
struct WindCharging {
  WindTurbine turbine;
  int count = 1;
  double efficiency = 0.90;                        // of rectifier, controller and cable (assumption)
  std::optional<std::array<double, 12>> mean_m_s;  // by month at 10 m, in place of the climate's
  Regulation regulation;
};

/// A generator turned by the water while the boat is under way.
struct WaterCharging {
  WaterGenerator generator;
  double boat_m_s = 3.0;  // through the water while under way
  Regulation regulation;
};

}  // namespace voltwright::supply
