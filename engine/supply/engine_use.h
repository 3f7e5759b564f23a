#pragma once
// What the engine's charging can give in one minute of a drive. See docs/method/engine_side.md.
#include "engine/supply/source.h"

namespace voltwright::supply {

/// No limit of this kind: more than any alternator gives.
inline constexpr double kNoEngineLimit = 1e9;

/// Limits of one minute.
struct EngineMinute {
  double alternator_V = 0.0;       // 0: as the plan's alternator_voltage says
  double most_A = kNoEngineLimit;  // at the bank
  double most_W = kNoEngineLimit;  // output of a DC-DC converter
};

/// Loop from the alternator to the relay or converter and back, the towing plug included [ohm].
double engine_loop_ohm(const EngineCharging& engine);

/// Whether the DC-DC converter can keep up an output [W] at an alternator voltage: its input stays at or
/// above the lock-out and the fuse of a towing plug does not open.
bool converter_runs(const EngineCharging& engine, double alternator_V, double output_W);

/// Highest voltage that the alternator holds [V].
double highest_alternator_V(const EngineCharging& engine);

/// Air around the alternator [degC] after so many minutes of driving: it warms towards the final rise with a
/// time constant of 20 minutes (assumption).
double alternator_air_C(double outside_C, double rise_K, int driven_min);

/// Where the vehicle is in a drive, and the air around it.
struct DriveMinute {
  int driven_min = 0;  // minutes driven before, from 0
  double outside_C = 20.0;
  double cabin_C = 20.0;
};

/// Limits of a minute of driving. Without an alternator and without derating there are none.
/// @param output_V  voltage at which the converter's current limit counts as power
EngineMinute engine_minute(const EngineCharging& engine, const DriveMinute& drive, double output_V);

}  // namespace voltwright::supply
