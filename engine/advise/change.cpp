#include "engine/advise/change.h"

#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"
#include "engine/bank/house_voltage.h"

namespace voltwright::advise {

namespace {

/// Voltages nearer than this are one setting; common practice, no source.
constexpr double kSameSetting_V = 0.1;
/// Currents and masses that differ by less are alike; common practice, no source.
constexpr double kAlike = 0.05;
/// Share of the charge outside the range of the appliances from which it is worth a word.
constexpr double kNoticed = 0.02;
constexpr double kTenths = 10.0;

bool is_lead_acid(const Compared& c) { return c.bank.chemistry->family == cell::Family::kLeadAcid; }

double cells_of(const Compared& c) {
  return static_cast<double>(c.bank.battery->cells_in_series) * c.bank.layout.in_series;
}

double absorption_V(const Compared& c) { return c.bank.chemistry->stages.absorption_V * cells_of(c); }
double float_V(const Compared& c) { return c.bank.chemistry->stages.float_V * cells_of(c); }

std::string volts(double value_V) { return figure(std::round(value_V * kTenths) / kTenths, "V"); }

std::string name_of_kind(const Compared& c) { return c.bank.chemistry->plain_name; }

/// Gathers the changes from one bank to another.
class Comparing {
 public:
  Comparing(const SwapQuestion& question, const Compared& old_bank, const Compared& new_bank)
      : question_(question), old_(old_bank), new_(new_bank) {}

  std::vector<Change> all() {
    add_charger();
    add_alternator();
    add_cold_charging();
    add_fuse();
    add_current();
    add_starting();
    add_voltage();
    add_monitor();
    add_mixing();
    add_series_and_parallel();
    add_securing();
    add_cold();
    add_gas();
    std::stable_sort(changes_.begin(), changes_.end(),
                     [](const Change& a, const Change& b) { return a.urgency < b.urgency; });
    return std::move(changes_);
  }

 private:
  void add(Topic topic, Urgency urgency, std::string text) {
    changes_.push_back({topic, urgency, std::move(text)});
  }
  bool same_kind() const { return old_.bank.chemistry->id == new_.bank.chemistry->id; }

  void add_charger() {
    const double from_V = absorption_V(old_);
    const double to_V = absorption_V(new_);
    const cell::ChargeStages& stages = new_.bank.chemistry->stages;
    const bool float_differs = std::fabs(float_V(old_) - float_V(new_)) > kSameSetting_V;
    const bool slope_differs =
        stages.compensation_V_per_K != old_.bank.chemistry->stages.compensation_V_per_K;
    if (same_kind() || (std::fabs(from_V - to_V) <= kSameSetting_V && !float_differs && !slope_differs)) {
      if (new_.figures.charge_A < old_.figures.charge_A * (1.0 - kAlike)) add_charge_current();
      return;
    }
    std::string text = "Set every charger (mains, solar, DC-DC) to absorption " + volts(to_V) +
                       " instead of " + volts(from_V) + ", ";
    text += float_V(new_) > 0.0 ? "float " + volts(float_V(new_)) : std::string("no float");
    if (stages.compensation_V_per_K == 0.0) {
      text += ", compensation for temperature off, no equalising";
    } else {
      text += ", compensation " + figure(stages.compensation_V_per_K * cells_of(new_) * kMilli, "mV") + "/K";
    }
    text += ": the old profile " +
            std::string(from_V > to_V + kSameSetting_V   ? "overcharges it"
                        : from_V < to_V - kSameSetting_V ? "leaves it short of full"
                                                         : "does not suit it") +
            ". A charger that cannot be set so is replaced.";
    add(Topic::kCharger, Urgency::kMust, text);
    add_charge_current();
  }

  void add_charge_current() {
    add(Topic::kCharger, Urgency::kCheck,
        "All chargers together may give at most " + figure(new_.figures.charge_A, "A") +
            " (the old bank: " + figure(old_.figures.charge_A, "A") + ").");
  }

  void add_alternator() {
    if (is_lead_acid(new_) || !is_lead_acid(old_)) return;
    add(Topic::kAlternator, Urgency::kMust,
        "Lithium takes nearly all that it can give until almost full, and an alternator "
        "at "
        "full output for hours overheats. Put a DC-DC charger or a regulator that limits current and watches "
        "the alternator's temperature between them. When the battery's protection opens under charge, the "
        "voltage jumps (load dump): it must not be left alone on the alternator.");
  }

  void add_cold_charging() {
    const double limit_C = new_.bank.chemistry->limits.charge_min_C;
    if (is_lead_acid(new_) || limit_C <= old_.bank.chemistry->limits.charge_min_C) return;
    const bool now = question_.temperature_C <= limit_C;
    add(Topic::kColdCharging, now ? Urgency::kMust : Urgency::kCheck,
        "It must not be charged at or below " + figure(limit_C, "°C") +
            " inside the cells, the old one could be" + (now ? ", and it is that cold here" : "") +
            ". Its protection has to block that charge, or a heater keep it warm; chargers bear the block.");
  }

  void add_fuse() {
    const double before_A = old_.short_circuit_A;
    const double after_A = new_.short_circuit_A;
    const bool more = after_A > before_A * (1.0 + kAlike);
    add(Topic::kFuse, more ? Urgency::kMust : Urgency::kCheck,
        "A short circuit at its poles drives up to " + figure(after_A, "A") + " (the old bank " +
            figure(before_A, "A") +
            "). The fuse beside the positive pole must be rated to interrupt at least that at the full "
            "charge "
            "voltage, which many common fuses are not; its ampere rating follows the cable.");
  }

  void add_current() {
    const double asked_A = std::max(new_.run.mean_A, question_.load.current_A);
    const double continuous_A = new_.figures.continuous_A;
    if (asked_A > continuous_A) {
      add(Topic::kCurrent, Urgency::kMust,
          "The load takes " + figure(asked_A, "A") + ", it carries " + figure(continuous_A, "A") +
              " for long: it switches off or is harmed. More side by side, or another one.");
    } else if (new_.bank.battery->has_protection && continuous_A < old_.figures.continuous_A) {
      add(Topic::kCurrent, Urgency::kCheck,
          "It carries " + figure(continuous_A, "A") + " for long and " + figure(new_.figures.peak_A, "A") +
              " for " + figure(new_.bank.battery->peak_s, "s") +
              ", and then switches off, where the old bank only sagged. Look at the inverter's surge.");
    }
  }

  void add_starting() {
    if (!is_lead_acid(old_) || new_.figures.peak_A >= old_.figures.peak_A * (1.0 - kAlike)) return;
    add(Topic::kStarting, Urgency::kCheck,
        "Peak current " + figure(new_.figures.peak_A, "A") + " instead of " +
            figure(old_.figures.peak_A, "A") +
            ": if the old bank also starts an engine, drives a windlass or a thruster, keep a battery made "
            "for "
            "starting for that.");
  }

  void add_voltage() {
    const bank::HouseFit fit =
        bank::fit_house(new_.bank.chemistry->ocv_V, static_cast<int>(std::lround(cells_of(new_))));
    const double system_V = new_.bank.battery->system_V * new_.bank.layout.in_series;
    const bool same_system = std::fabs(fit.system.system_V - system_V) < 1.0;
    if (same_system && absorption_V(new_) > fit.system.bears_V) {
      add(Topic::kVoltage, Urgency::kMust,
          "Charged at " + volts(absorption_V(new_)) + " it is above the " + volts(fit.system.bears_V) +
              " that electronics of this system usually bear: loads need a regulator, or another battery.");
    }
    if (same_system && fit.lost_below > kNoticed) {
      add(Topic::kVoltage, Urgency::kMust,
          "At rest the last " + percent(fit.lost_below) + " of its charge lies below " +
              volts(fit.system.cut_off_V) +
              ", where inverters and refrigerators of this system switch off: that part is not there for "
              "them "
              "unless they can be set lower.");
    } else if (!same_system) {
      add(Topic::kVoltage, Urgency::kMust,
          "Its voltage, " + volts(new_.figures.nominal_V) + ", suits a system of " + figure(system_V, "V") +
              " badly: check what every load bears at both ends.");
    }
  }

  void add_monitor() {
    std::string text = "Set capacity " + figure(new_.figures.capacity_Ah, "Ah") + ", charged at " +
                       volts(absorption_V(new_) * kNearlyThere) + " with a tail of " +
                       percent(new_.bank.chemistry->stages.tail_rate) + ", charge efficiency " +
                       percent(new_.bank.chemistry->coulombic_efficiency);
    if (!is_lead_acid(new_)) text += ", rate exponent near 1, low-charge alarm by the shunt";
    text += ".";
    if (new_.bank.chemistry->id == "lfp" && !same_kind()) {
      text += " A voltmeter shows nothing: the voltage is flat from nearly full to nearly empty.";
    }
    add(Topic::kMonitor, Urgency::kCheck, text);
  }

  void add_mixing() {
    add(Topic::kMixing, Urgency::kMust,
        same_kind()
            ? std::string("Replace the whole bank: old and new ones side by side share current badly, and "
                          "the old ones draw the new ones down.")
            : "Take the " + name_of_kind(old_) + " out: never " + name_of_kind(old_) + " and " +
                  name_of_kind(new_) +
                  " on one bus without a DC-DC charger between them, also not the starter battery "
                  "through a plain relay.");
  }

  void add_series_and_parallel() {
    const bank::Layout& layout = new_.bank.layout;
    if (layout.in_series > 1) {
      add(Topic::kSeries, Urgency::kMust,
          std::to_string(layout.in_series) + " in series; its limit is " +
              std::to_string(new_.bank.battery->max_in_series) +
              ". Charge each one full before they are joined, all of one kind and age, and watch that they "
              "stay "
              "alike.");
    }
    if (layout.in_parallel > 1) {
      add(Topic::kParallel, Urgency::kMust,
          "Equal cables, taken from opposite ends or from bars; a fuse for each; all "
          "equally "
          "charged before they are joined.");
    }
  }

  void add_securing() {
    const double from_kg = old_.figures.mass_kg.typical;
    const double to_kg = new_.figures.mass_kg.typical;
    const double room_L = question_.tray_L > 0.0 ? question_.tray_L : old_.figures.volume_L.typical;
    const bool heavier = to_kg > from_kg * (1.0 + kAlike);
    const bool larger = new_.figures.volume_L.typical > room_L * (1.0 + kAlike);
    std::string text = figure(to_kg, "kg") + " instead of " + figure(from_kg, "kg");
    text +=
        heavier
            ? ": tray, floor and straps must hold that in a crash or a knock-down, and the payload bears it."
            : ": fasten it for a crash or a knock-down all the same, and look at the trim.";
    if (larger) {
      text += " It takes " + figure(new_.figures.volume_L.typical, "L") + " where there are " +
              figure(room_L, "L") + ".";
    }
    text += " Volumes are compared, not shapes: measure length, width, height and poles.";
    add(Topic::kSecuring, heavier || larger ? Urgency::kMust : Urgency::kCheck, text);
  }

  void add_cold() {
    const double limit_C = new_.bank.chemistry->limits.discharge_min_C;
    if (question_.temperature_C < limit_C) {
      add(Topic::kCold, Urgency::kMust,
          "At " + figure(question_.temperature_C, "°C") + " it gives nothing: its limit is " +
              figure(limit_C, "°C") + ".");
    }
  }

  void add_gas() {
    if (is_lead_acid(new_) &&
        (!is_lead_acid(old_) || (new_.bank.chemistry->id == "flooded" && !same_kind()))) {
      add(Topic::kGas, Urgency::kMust,
          "Lead-acid gives off hydrogen while it is charged: it needs ventilation to the outside and no "
          "sparks "
          "near it.");
    } else if (!is_lead_acid(new_) && is_lead_acid(old_)) {
      add(Topic::kGas, Urgency::kKnow,
          "In use it gives off no gas, but a failing lithium battery can vent burnable, poisonous gas and "
          "burn: "
          "follow the maker's and the local rules for where it may stand.");
    }
  }

  static constexpr double kMilli = 1e3;
  /// A monitor takes the bank for full slightly below the absorption voltage; common practice, no source.
  static constexpr double kNearlyThere = 0.985;

  const SwapQuestion& question_;
  const Compared& old_;
  const Compared& new_;
  std::vector<Change> changes_;
};

}  // namespace

std::vector<Change> changes_between(const SwapQuestion& question, const Compared& incumbent,
                                    const Compared& equivalent) {
  return Comparing(question, incumbent, equivalent).all();
}

}  // namespace voltwright::advise
