#include "engine/supply/engine_use.h"

#include <algorithm>
#include <cmath>

#include "engine/supply/dc_dc.h"

namespace voltwright::supply {

namespace {

constexpr double kWarms_min = 20.0;
constexpr int kTurn_min = 10;
/// Rise of the engine bay where the plan says nothing of the alternator (assumption).
constexpr double kBayRise_K = 30.0;
/// A voltage above this is that of a 24 V vehicle, whose controlled voltages are twice those of 12 V.
constexpr double kTwentyFour_V = 20.0;
/// The coldest regulator that is counted with.
constexpr double kColdestRegulator_C = -30.0;

/// Speed of the engine and voltage of the alternator.
struct Held {
  double rpm;
  double volts;
};

Held held_in(const EngineCharging& engine, const AlternatorUse& use, int driven_min, double air_C) {
  const int minute = driven_min % kTurn_min;
  const auto minutes = [](double share) { return static_cast<int>(std::lround(share * kTurn_min)); };
  const bool overrun = minute < minutes(use.duty.overrun_share);
  const bool idle = minute >= kTurn_min - minutes(use.idle_share);
  Held held{idle ? use.idle_rpm : use.driving_rpm, 0.0};
  if (!use.controlled) {
    held.volts = regulated_V(use.machine, air_C);
    return held;
  }
  const double scale = units::as_volts(engine.alternator_voltage) > kTwentyFour_V ? 2.0 : 1.0;
  const double driving_V = overrun ? use.duty.overrun_V : use.duty.cruise_V;
  held.volts = scale * (idle ? use.duty.idle_V : driving_V);
  return held;
}

double converter_air_C(const EngineCharging& engine, ConverterPlace place, const DriveMinute& drive) {
  switch (place) {
    case ConverterPlace::kCabin:
      return drive.cabin_C;
    case ConverterPlace::kOutside:
      return drive.outside_C;
    case ConverterPlace::kEngineBay:
      return alternator_air_C(drive.outside_C, engine.alternator ? engine.alternator->air_rise_K : kBayRise_K,
                              drive.driven_min);
  }
  return drive.cabin_C;
}

}  // namespace

double engine_loop_ohm(const EngineCharging& engine) {
  const double loop_ohm = units::as_ohms(engine.loop_resistance);
  return engine.plug ? loop_ohm + engine.plug->loop_ohm + engine.plug->contacts_ohm : loop_ohm;
}

bool converter_runs(const EngineCharging& engine, double alternator_V, double output_W) {
  const double loop_ohm = engine_loop_ohm(engine);
  const double lock_out_V = units::as_volts(engine.input_lock_out);
  if (!dc_dc_runs(alternator_V, loop_ohm, output_W, engine.efficiency, lock_out_V)) return false;
  if (!engine.plug) return true;
  const DcDcInput input = dc_dc_input(alternator_V, loop_ohm, output_W, engine.efficiency);
  return fuse_fate(engine.plug->fuse_A, input.current_A) != FuseFate::kOpens;
}

double highest_alternator_V(const EngineCharging& engine) {
  const double stated_V = units::as_volts(engine.alternator_voltage);
  if (!engine.alternator) return stated_V;
  if (!engine.alternator->controlled) return regulated_V(engine.alternator->machine, kColdestRegulator_C);
  return (stated_V > kTwentyFour_V ? 2.0 : 1.0) * engine.alternator->duty.overrun_V;
}

double alternator_air_C(double outside_C, double rise_K, int driven_min) {
  return outside_C + rise_K * (1.0 - std::exp(-driven_min / kWarms_min));
}

EngineMinute engine_minute(const EngineCharging& engine, const DriveMinute& drive, double output_V) {
  EngineMinute minute;
  const bool converter = engine.coupling == EngineCoupling::kDcDc;
  double limit_A = units::as_amperes(engine.output_limit);
  if (converter && engine.derating) {
    limit_A *= derated_share(converter_air_C(engine, engine.derating->place, drive), engine.derating->from_C,
                             engine.derating->per_K);
    minute.most_A = limit_A;
  }
  if (!engine.alternator) return minute;
  const AlternatorUse& use = *engine.alternator;
  const double air_C = alternator_air_C(drive.outside_C, use.air_rise_K, drive.driven_min);
  const Held held = held_in(engine, use, drive.driven_min, air_C);
  const double left_A = spare_A(use.machine, held.rpm, air_C);
  minute.alternator_V = held.volts;
  if (!converter) {
    minute.most_A = held.volts < units::as_volts(engine.relay_closes) ? 0.0 : left_A;
    return minute;
  }
  // Beyond V / (2 R) more current through the cable brings less power.
  const double loop_ohm = engine_loop_ohm(engine);
  const double input_A = loop_ohm > 0.0 ? std::min(left_A, held.volts / (2.0 * loop_ohm)) : left_A;
  const double most_W = engine.efficiency * (held.volts - loop_ohm * input_A) * input_A;
  const double output_W = std::min(limit_A * output_V, most_W);
  const bool runs = output_W > 0.0 && converter_runs(engine, held.volts, output_W);
  minute.most_A = runs ? limit_A : 0.0;
  minute.most_W = runs ? most_W : 0.0;
  return minute;
}

}  // namespace voltwright::supply
