#pragma once
// The input side of a DC-DC charger behind a cable. See docs/method/charging.md.

namespace voltwright::supply {

/// What a converter draws from an alternator through a cable.
struct DcDcInput {
  double current_A = 0.0;
  double input_V = 0.0;   // at the converter
  bool possible = false;  // false: no current gives this power through this cable
};

/// Input current of a converter that gives `output_W` at an efficiency: the smaller root of
/// I (V_alternator - R I) = P / eta, as a converter settles there.
/// @param loop_ohm  cable and connectors there and back, >= 0
DcDcInput dc_dc_input(double alternator_V, double loop_ohm, double output_W, double efficiency);

/// Whether a converter can keep going at this output: its input stays at or above the lock-out voltage.
bool dc_dc_runs(double alternator_V, double loop_ohm, double output_W, double efficiency, double lock_out_V);

/// Share of its output that a converter gives in warm air: 1 up to `from_C`, then less by `per_K` for each
/// kelvin, not below 0. From 40 to 50 degC on in practice (facts of the trade, no standard).
double derated_share(double air_C, double from_C, double per_K);

}  // namespace voltwright::supply
