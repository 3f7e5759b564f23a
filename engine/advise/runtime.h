#pragma once
// How long a bank runs one steady load, by the laboratory of the engine, beside the sum that is done in the
// head, and what lies between the two. Equations and limits: docs/method/equivalents.md.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/bank/assembly.h"
#include "engine/bank/electrochemistry.h"
#include "engine/cell/chemistry.h"

namespace voltwright::advise {

/// A bank by its records; both must outlive it.
struct BankOnHand {
  const bank::Battery* battery = nullptr;
  const cell::Chemistry* chemistry = nullptr;
  bank::Layout layout;
};

/// A steady load: a power behind an inverter or straight from the bank, or a constant current.
struct SteadyLoad {
  double power_W = 0.0;     // at the load, >= 0
  double current_A = 0.0;   // at the bank, > 0: counts instead of the power
  double efficiency = 1.0;  // of the inverter without its idle power, above 0 and at most 1
  double idle_W = 0.0;      // what the inverter takes by itself, >= 0
};

/// Power [W] that the load takes from the bank; of a current, at a voltage.
double bank_power_W(const SteadyLoad& load, double bank_V);

struct RuntimeConditions {
  double temperature_C = 25.0;    // of the surroundings, and of the bank at the start; -40..80
  double depth = 1.0;             // share of the capacity that may be used, above 0 and at most 1
  double start_charge = 1.0;      // state of charge at the start, above 0 and at most 1
  double cut_off_V = 0.0;         // of the inverter or of the load, at the poles of the bank; 0 = none
  bool held_temperature = false;  // the bank is kept at the temperature instead of warming itself
};

/// Why a run came to its end.
enum class Ending {
  kDepth,         // the depth rule
  kLoadCutOff,    // the load's or inverter's own cut-off
  kUnderVoltage,  // the battery's protection, or the usual cut-off of loads on lead-acid
  kEmpty,         // no more available at this rate and temperature
  kCannotCarry,   // no current gives this power any more
  kOverCurrent,   // the battery's protection opens for too much current
  kTooCold,       // below the temperature of discharge, or frozen
  kTooHot,
  kStillRunning,  // longer than kLongestRun_h
};

/// Plain words: "the depth rule is reached".
std::string_view text_of(Ending ending);

/// Longest run that is followed [h]: a year.
inline constexpr double kLongestRun_h = 8766.0;

/// One run from the start to its end.
struct Run {
  double hours = 0.0;
  double bank_Wh = 0.0;  // out of the poles
  double load_Wh = 0.0;  // at the load
  double drawn_Ah = 0.0;
  double start_V = 0.0;  // in the first step, under load
  double mean_V = 0.0;   // energy over charge
  double end_V = 0.0;
  double mean_A = 0.0;
  double end_charge = 1.0;
  double end_temperature_C = 25.0;
  Ending ending = Ending::kDepth;
};

/// One line between the sum in the head and the answer.
struct RuntimeStep {
  std::string name;    // "Depth rule"
  double hours = 0.0;  // what it would last with this and all lines above it
  std::string why;
};

struct Runtime {
  Run run;
  std::vector<RuntimeStep> working;  // the first is the sum in the head, the last the answer
  double naive_h = 0.0;              // rated ampere-hours over the load's amperes at the nominal voltage
  double bank_W = 0.0;               // taken from the bank at its nominal voltage
};

/// Runs the load until something ends it. Precondition: the figures lie in their ranges and the chemistry is
/// simulated.
Run run_down(const BankOnHand& bank, const SteadyLoad& load, const RuntimeConditions& conditions);

/// The same with its working.
Runtime how_long(const BankOnHand& bank, const SteadyLoad& load, const RuntimeConditions& conditions);

}  // namespace voltwright::advise
