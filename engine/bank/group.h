#pragma once
// Batteries of one chemistry in parallel that differ: each with its own size, age, charge, temperature and
// protection, stepped together on one network. Equations: docs/method/parallel.md.
#include <cstddef>
#include <optional>
#include <vector>

#include "engine/bank/electrochemistry.h"
#include "engine/bank/protection.h"
#include "engine/bank/sharing.h"
#include "engine/base/result.h"

namespace voltwright::bank {

/// One battery, or one string of alike batteries, that stands parallel to others.
struct Member {
  Battery battery;
  int in_series = 1;               // batteries in the string
  double lost_capacity = 0.0;      // share of rated capacity lost, 0..1
  double resistance_factor = 1.0;  // of the cells against new, > 0
  double weakest_below = 0.0;      // share by which its weakest cell is smaller than the mean, 0..1
  double charge = 1.0;             // share of what it still holds
  double ahead = 0.0;              // of its fullest cell above the mean
  double side = 0.0;               // of the hysteresis, -1 after a charge .. +1 after a discharge
  double temperature_C = 20.0;
  double heat_loss_W_K = 1.0;  // > 0
  Guard<double> guard;         // of the whole string; its `electronic` says whether it can open alone
};

struct GroupSetup {
  std::vector<Member> members;
  Wiring wiring;
  double step_s = 60.0;  // > 0
};

/// A member in the inner loop's terms.
struct GroupBattery {
  Parameters<double> parameters;
  State<double> state;
  Guard<double> guard;
  GuardState<double> latches;
  double continuous_A = 0.0;    // discharge that may flow for ever
  double charge_above_s = 0.0;  // how long the charge current has been above its limit
  double charge_retry_s = 0.0;  // until it may be charged again after opening for that
};

/// Why a battery left, or for lead-acid without electronics, reached a limit.
enum class TripReason {
  kPeakCurrent,    // discharge above the peak current: at once
  kLongCurrent,    // above the continuous current, by the inverse-time rule of the guard
  kChargeCurrent,  // charge above the charge limit for the time of the peak
  kOverVoltage,    // of the fullest cell
  kUnderVoltage,
  kEmpty,  // by the available level or the depth rule
  kChargeCold,
  kChargeHot,
  kDischargeCold,
  kDischargeHot,
  kFrozen
};

struct Trip {
  std::size_t battery = 0;
  double time_s = 0.0;  // since the group began
  TripReason reason = TripReason::kPeakCurrent;
  bool opened = true;  // false: no electronics, nothing took it out
  double current_A = 0.0;
  double voltage_V = 0.0;  // between its poles
  double temperature_C = 0.0;
  bool carried = true;         // the others carry the total after it
  std::vector<double> then_A;  // what each battery carries after it
};

struct Group {
  std::vector<GroupBattery> batteries;
  Wiring wiring;
  double step_s = 60.0;
  double time_s = 0.0;
  std::optional<Trip> first_trip;  // of all steps so far
};

/// What one step did. Group energy over the step: bus_V * total_A = sum over the batteries of
/// (stored - ohmic - cable - relaxing - side - self_discharge) - link_loss_W.
struct GroupReport {
  bool carried = true;   // false: the total asked for could not flow, and none did
  double total_A = 0.0;  // what flowed
  double bus_V = 0.0;    // mean at the take-off; 0 if no battery is closed
  double link_loss_W = 0.0;
  std::vector<double> current_A;
  std::vector<double> battery_V;  // mean between the poles of each
  std::vector<StepLosses<double>> losses;
  std::vector<Trip> trips;  // in the order of time
};

/// Problems of putting these batteries side by side: errors for mixed chemistries and voltages, wiring that
/// does not fit and values out of range; warnings, with the shares computed, for sizes, ages, wiring and
/// charge that differ.
base::Problems check_group(const GroupSetup& setup, const cell::Chemistry& chemistry);

/// The group at its start, or the errors of check_group.
/// @param tables  must outlive the result
base::Result<Group> make_group(const GroupSetup& setup, const cell::Chemistry& chemistry,
                               const cell::Tables& tables);

/// The batteries as the network sees them over the coming step, blocked directions included.
std::vector<Branch> branches_of(const Group& group);

/// The group between its poles over the coming step, see group_terminal in sharing.h.
/// A direction in which the group may not be used has the resistance kBlocked.
GroupTerminal terminal(const Group& group, double reference_A);

/// Largest total currents at which no battery exceeds what may flow continuously, both positive [A].
struct GroupLimits {
  double discharge_A = 0.0;
  double charge_A = 0.0;
};
GroupLimits limits_of(const Group& group);

/// Currents at the moment the batteries are joined, before anything relaxes, protection left out [A].
std::vector<double> joining_A(const Group& group);

/// Advances the group by its step at a total current, discharge positive. A battery that opens within the
/// step is left out of the whole step; those that follow it fall in turn. A total that nothing can carry does
/// not flow at all.
GroupReport step(Group& group, double total_A, double surroundings_C);

/// Closes the batteries that current has opened at once, without waiting for them to try again.
void reset_over_current(Group& group);

/// Prospective short-circuit current [A] of full batteries at a temperature, before anything relaxes, behind
/// `path_ohm`. The resistances of the records are those of a second or so; the alternating-current resistance
/// of a data sheet is smaller and gives the upper bound (see short_circuit_A).
double prospective_short_circuit_A(const Group& group, double temperature_C, double path_ohm);
double prospective_short_circuit_A(const Parameters<double>& bank, double temperature_C, double path_ohm);

}  // namespace voltwright::bank
