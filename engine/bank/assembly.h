#pragma once
// From a catalogue battery to the numbers of a bank: n in series, m in parallel, all alike.
#include "engine/bank/battery.h"
#include "engine/base/lanes.h"
#include "engine/cell/tables.h"

namespace voltwright::bank {

/// A bank in the inner loop's terms, one value a lane. Currents and charges are those of the whole bank,
/// voltages those between its poles; discharge is positive.
template <class R>
struct Parameters {
  typename base::Lanes<R>::template PerLane<const cell::Tables*> tables{};
  R cells{4.0};  // in series
  R capacity_Ah{100.0};
  R ohmic_ohm{0.0}, fast_ohm{0.0}, slow_ohm{0.0};         // at 25 degC, factor 1
  R charge_rho_ohm{0.0}, charge_m{0.0}, charge_c{1.001};  // lead-acid charge resistance
  R fixed_ohm{0.0};                                       // protection, terminals, main cable: no temperature
  R cable_ohm{0.0};                                       // the main cable's part of fixed_ohm
  R fast_tau_s{20.0}, slow_tau_s{400.0};
  R fast_keep{0.0}, fast_mean{0.0}, slow_keep{0.0}, slow_mean{0.0};
  R slow_curving_per_V2{0.0};  // of the slow loss v + v^3 * this, whole bank
  R settling_Ah{3.0};          // charge through which all but 1/e of a reversal of the hysteresis is crossed
  R tank_share{1.0};           // c
  R tank_rate_per_h{1.0};
  R tank_keep{0.0}, tank_mean{0.0};
  R empty_level{0.0};  // available level at which nothing more can be drawn at 25 degC (1 - q_max / rated)
  R most_charge{1.0};  // state of charge beyond which nothing more is stored
  R coulombic{1.0};
  R side_A{0.0}, side_reference_V{2.23}, side_per_V{0.0}, side_per_K{0.0}, side_reference_C{25.0};
  R self_discharge_A{0.0};  // at 25 degC
  R heat_capacity_J_K{10000.0};
  R heat_loss_W_K{1.0};           // to the enclosure, or to the surroundings if there is none
  R enclosure_capacity_J_K{0.0};  // 0 = no enclosure
  R enclosure_K_W{0.0};           // thermal resistance from the enclosure to its surroundings; 0 = none
  // Shares of the distances to the settled temperatures that are left after a step, bank and enclosure: what
  // is left of the one through the other.
  R bank_keep{1.0}, bank_by_enclosure{0.0}, enclosure_by_bank{0.0}, enclosure_keep{0.0};
  R balance_V{0.0};  // the fullest cell is bled above this; 0 = never
  R bleed_A{0.0};
  R step_s{60.0};
};

/// A box around the bank.
struct Enclosure {
  double loss_W_K = 0.0;  // to its surroundings; 0 = no enclosure
  double capacity_J_K = 3000.0;
};

/// Battery count and wear of a bank.
struct Layout {
  int in_series = 1;
  int in_parallel = 1;
  double lost_capacity = 0.0;      // share of rated capacity already lost
  double weakest_below = 0.0;      // share by which the weakest cell of a string is smaller than the mean
  double ahead = 0.0;              // state of charge of the fullest cell above the mean at the start
  double resistance_factor = 1.0;  // of the cells against new
};

/// What a person wants to know of a bank before it is simulated.
struct BankFigures {
  double nominal_V = 0.0;
  double capacity_Ah = 0.0;
  double nominal_Wh = 0.0;
  units::Ranged mass_kg;
  units::Ranged volume_L;
  units::Ranged price;
  double continuous_A = 0.0;
  double peak_A = 0.0;
  double charge_A = 0.0;
  double over_voltage_V = 0.0;  // 0: no electronic protection
  double under_voltage_V = 0.0;
  double under_voltage_release_V = 0.0;
};

BankFigures bank_figures(const Battery& battery, const Layout& layout);

/// Parameters of one bank for a fixed step.
/// @param tables      must outlive the result
/// @param cable_ohm   loop resistance of the main cable, >= 0
/// @param heat_loss_W_K  to its enclosure or, without one, to its surroundings, > 0
/// @param step_s      > 0
Parameters<double> assemble(const Battery& battery, const cell::Chemistry& chemistry,
                            const cell::Tables& tables, const Layout& layout, double cable_ohm,
                            double heat_loss_W_K, double step_s, const Enclosure& enclosure = {});

/// The same bank for another step [s], > 0.
Parameters<double> with_step(const Parameters<double>& parameters, double step_s);

/// Heat loss of a bank standing free in still air [W/K]: 8 W/m2K over the surface of a cube of its volume.
/// Assumption; published still-air figures for bare cells are 9.5 to 12 W/m2K, a case insulates somewhat.
double free_standing_loss_W_K(double volume_L);

}  // namespace voltwright::bank
