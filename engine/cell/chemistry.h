#pragma once
// The catalogue record of a cell kind: one parameter set for every chemistry. Voltages are per cell,
// resistances are multiplied by the rated ampere-hours (ohm * Ah) so that they scale with size.
#include <optional>
#include <string>
#include <vector>

#include "engine/base/curve.h"
#include "engine/cell/plate_wear.h"
#include "engine/units/ranged.h"

namespace voltwright::cell {

using base::Curve;
using base::CurvePoint;

enum class Family { kLithiumIon, kLeadAcid, kSodiumIon, kLithiumSulfur };

struct Resistance {
  double ohmic_ohm_Ah = 0.0;  // R0 at 25 degC
  double fast_ohm_Ah = 0.0;   // R1
  double fast_tau_s = 20.0;
  double slow_ohm_Ah = 0.0;  // R2
  double slow_tau_s = 400.0;
  Curve ohmic_by_soc;               // factor on R0 against state of charge; empty = 1
  Curve relaxing_by_soc;            // factor on R1, and on R2 unless it has its own; empty = 1
  Curve slow_by_soc;                // factor on R2; empty = as R1
  double slow_curving_V = 0.0;      // the slow loss is v + v^3 / this^2: it grows faster than v; 0 = just v
  double steady_fraction = 0.0;     // part that does not change with temperature
  double activation_kJ_mol = 20.0;  // Arrhenius for the rest
  /// Extra charge resistance of lead-acid: rho * (1 + m z / (c - z)), z = state of charge; rho = 0: none.
  double charge_rho_ohm_Ah = 0.0;
  double charge_m = 0.0;
  double charge_c = 1.001;
};

/// Two-tank availability (Manwell and McGowan 1993); fraction 1 = everything available at any rate.
struct Availability {
  double fraction = 1.0;         // c
  double exchange_per_h = 1.0;   // k, already divided by c (1 - c)
  double full_over_rated = 1.0;  // q_max / rated capacity
};

/// The voltage at rest depends on the way the charge was reached: U - side * half gap, side running to +1
/// while discharging and to -1 while charging (one-state hysteresis, Plett 2004).
struct Hysteresis {
  Curve half_gap_mV;  // half the gap between the two rest voltages against state of charge; empty = 0
  double settling_share = 0.03;  // share of the capacity through which all but 1/e of a reversal is crossed
};

/// Current that does not charge: I = I0 * Ah * exp(per_V (U - U0) + per_K (T - T0)).
struct SideReaction {
  double current_A_per_Ah = 0.0;
  double reference_V = 2.23;
  double per_V = 11.0;
  double per_K = 0.06;
  double reference_C = 25.0;
};

struct CellLimits {
  double max_V = 0.0;
  double min_V = 0.0;
  double charge_min_C = 0.0;
  double charge_max_C = 45.0;
  double discharge_min_C = -20.0;
  double discharge_max_C = 60.0;
  double hysteresis_K = 3.0;
  Curve
      charge_rate_by_C;  // permitted charge, multiples of rated capacity per hour, against degC; empty = any
  double balance_V = 0.0;  // protection bleeds the fullest cells above this; 0 = none
  double bleed_A = 0.0;    // with this current, for each cell
};

struct ChargeStages {
  double absorption_V = 0.0;
  double float_V = 0.0;     // 0 = no float: charging ends
  double rebulk_V = 0.0;    // a new bulk stage starts below this
  double tail_rate = 0.02;  // absorption ends at this current, multiples of rated capacity
  double absorption_max_h = 4.0;
  double compensation_V_per_K = 0.0;  // per cell, relative to 25 degC, negative for lead-acid
  double equalise_V = 0.0;            // 0 = never
  double equalise_h = 0.0;
};

struct LifeFigures {
  units::Ranged cycles;  // to 80 % at `depth` and 25 degC
  double depth = 0.8;
  double depth_exponent = 1.0;   // cycles(D) = cycles * (depth / D)^exponent
  units::Ranged calendar_years;  // to 80 % at 25 degC
  double halving_K = 10.0;       // calendar life halves per this rise
};

struct Chemistry {
  std::string id;          // file name without extension
  std::string name;        // "Lithium iron phosphate"
  std::string short_name;  // "LFP"
  std::string plain_name;  // "iron-phosphate"
  Family family = Family::kLithiumIon;
  bool simulated = true;
  std::string not_simulated_because;
  double nominal_V = 0.0;
  double rated_hours = 20.0;  // discharge time at which the rated capacity is stated
  Curve ocv_V;                // at 25 degC, against state of charge; below 0 for tanks drawn below the rating
  Curve entropic_mV_per_K;    // dU/dT against state of charge; empty = 0
  Hysteresis hysteresis;
  Resistance resistance;
  Availability availability;
  Curve capacity_by_temperature;  // available share of capacity against degC
  double coulombic_efficiency = 1.0;
  SideReaction side_reaction;
  double self_discharge_per_month = 0.02;  // at 25 degC, doubling per 10 K
  double specific_heat_J_kgK = 1000.0;
  CellLimits limits;
  Curve freezing_C;  // the electrolyte freezes here, against state of charge; empty = never
  ChargeStages stages;
  double usable_depth = 0.8;  // practice
  LifeFigures life;
  std::optional<PlateWear> plate_wear;  // of lead-acid
};

}  // namespace voltwright::cell
