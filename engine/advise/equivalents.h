#pragma once
// What equals a battery that someone has: catalogue batteries held against it by usable energy at the load
// and temperature at hand, by mass, room, price, energy over its life and starting current. Equations and
// limits: docs/method/equivalents.md.
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/advise/runtime.h"

namespace voltwright::advise {

/// By what two banks are held equal.
enum class Measure { kUsableEnergy, kMass, kVolume, kPrice, kLifeEnergy, kStartingCurrent };

/// "usable energy".
std::string_view name_of(Measure measure);
/// "Wh".
std::string_view unit_of(Measure measure);
/// True where the equivalent has to reach the incumbent (energy, life, current), false where it must not go
/// beyond it (mass, room, price).
bool must_reach(Measure measure);

/// What is asked of both, the incumbent and its equivalents.
struct SwapQuestion {
  BankOnHand incumbent;
  Measure measure = Measure::kUsableEnergy;
  SteadyLoad load;                        // at which usable energy counts
  double temperature_C = 25.0;            // -40..80
  double cut_off_V = 0.0;                 // of the inverter or load; 0 = none
  std::optional<double> incumbent_depth;  // share of capacity used; none = practice of its chemistry
  std::optional<double> new_depth;        // the same for the equivalents
  double tray_L = 0.0;                    // room that there is; 0 = the incumbent's own
  int most_in_parallel = 4;               // >= 1
};

/// Everything that is set side by side of one bank.
struct Compared {
  BankOnHand bank;
  bank::BankFigures figures;
  double depth = 1.0;            // the rule
  double used_depth = 1.0;       // share of the capacity that the run really drew, at most the rule
  Run run;                       // at the load and temperature of the question
  units::Ranged life_Wh;         // usable energy times cycles at the depth used; fading left out
  units::Ranged cycles;          // at the depth used
  double short_circuit_A = 0.0;  // prospective, full, at 25 degC, at the poles
  double share = 1.0;            // of the incumbent's value in the measure
  double value = 0.0;            // in the measure
};

/// Value of a compared bank in a measure, in the unit of the measure; of ranges the typical figure.
double value_of(const Compared& compared, Measure measure);

/// One catalogue battery that has no equivalent, and why.
struct LeftOut {
  std::string battery;
  std::string why;
};

struct Equivalents {
  Compared incumbent;
  double target = 0.0;          // what is to be reached or kept within
  std::vector<Compared> found;  // see below for the order
  std::vector<LeftOut> left_out;
};

/// Compares one bank.
Compared compare(const SwapQuestion& question, const BankOnHand& bank, std::optional<double> depth);

/// For every simulated catalogue battery of the system voltage the number side by side that equals the
/// incumbent: the fewest that reach it, nearest first; of mass, room and price the most that stay within,
/// the most usable energy first. The incumbent itself, if it comes from the catalogue, is not repeated.
/// Nothing equals an incumbent that gives nothing (target 0).
Equivalents equivalents_of(const SwapQuestion& question, std::span<const cell::Chemistry> chemistries,
                           std::span<const bank::Battery> batteries);

/// The first found of every chemistry, in the order in which they stand.
std::vector<Compared> best_of_each_chemistry(const std::vector<Compared>& found);

}  // namespace voltwright::advise
