#pragma once
// A vehicle's alternator: current against speed and temperature, voltage against temperature, and what an
// engine-controlled one holds while it drives. See docs/method/engine_side.md.

namespace voltwright::supply {

/// An alternator on its engine. Defaults: docs/method/engine_side.md.
struct Alternator {
  double rated_A = 100.0;     // at full speed and 25 degC
  double pulley_ratio = 2.5;  // alternator turns for each turn of the engine
  double efficiency = 0.67;   // electrical over mechanical power
  double vehicle_A = 25.0;    // what the vehicle itself takes while its engine runs
  double regulated_V = 14.4;  // at 20 degC
  double regulated_V_per_K = -0.010;
};

/// Share of the rated current at an alternator speed [1/min]: 1 - exp(-(n - 980)/790), 0 below 980.
/// Range 0..1, rising with speed.
double speed_share(double alternator_rpm);

/// Share of the current that remains in warm air: 1 - 0.0030 (t - 25), kept within 0.6..1.
double heat_share(double air_C);

/// All that the alternator can give [A] at an engine speed [1/min] in air of `air_C`; never above rated_A.
double alternator_A(const Alternator& alternator, double engine_rpm, double air_C);

/// What of that is left for a house bank once the vehicle has its own share [A]; >= 0.
double spare_A(const Alternator& alternator, double engine_rpm, double air_C);

/// Voltage that a plain regulator holds at its temperature [V].
double regulated_V(const Alternator& alternator, double regulator_C);

/// Shares of the driving time and the voltages that an engine-controlled ("smart") alternator holds, for a
/// 12 V vehicle. Shares sum to 1.
struct ControlledDuty {
  double overrun_share = 0.10, overrun_V = 14.8;
  double cruise_share = 0.60, cruise_V = 12.8;
  double idle_share = 0.30, idle_V = 12.5;
};

/// Share of the driving time in which a voltage-sensing relay that needs `closes_V` joins the batteries.
double relay_closed_share(const ControlledDuty& duty, double closes_V);

/// Mechanical power for an electrical output [W]; output >= 0, efficiency in (0, 1].
double shaft_W(const Alternator& alternator, double output_W);

}  // namespace voltwright::supply
