#pragma once
// Lead-acid by weighted throughput and grid corrosion (Schiffer, Sauer, Bindner, Cronin, Lundsager and Kaiser
// 2007, J. Power Sources 168, 66). Equations and what was chosen where sources differ:
// docs/method/ageing_lead.md.
#include "engine/ageing/law.h"
#include "engine/cell/plate_wear.h"

namespace voltwright::ageing {

/// Weight of charge drawn long after a full charge, >= 1; it stands still beyond longest_since_full_h.
/// @param lowest_soc   since then, 0..1
/// @param since_full_h >= 0
/// @param current      current_factor()
double partial_charge_weight(const cell::PartialCharge& p, double lowest_soc, double since_full_h,
                             double current);

/// Influence of the rate [1/h] > 0 at which discharge began after the last full charge, and of the bad
/// charges since. A slow start leaves few and large sulphate crystals.
double current_factor(const cell::PartialCharge& p, double start_per_h, double bad_charges);

/// What a charge that ended at this state of charge adds to the bad charges: 1 in the middle of the band
/// short of full, 0 at and beyond its edges.
double bad_charge(const cell::PartialCharge& p, double end_soc);

/// Layering of the acid after `drawn` capacities at any rate from a cell that has been down to `lowest_soc`,
/// without decay; exact for any length of step.
double layered(const cell::AcidLayers& a, double layers, double lowest_soc, double drawn,
               double reference_per_h);

/// Layering after `hours` of mixing by gas (from a cell voltage on) and of diffusion, not below 0.
/// @param cell_Ah  rated, > 0
double mixed(const cell::AcidLayers& a, double layers, double cell_V, double temperature_C, double cell_Ah,
             double hours);

/// Decay of layering by diffusion alone [1/h].
double diffusion_per_h(const cell::AcidLayers& a, double temperature_C);

/// Potential of the positive electrode [V].
/// @param polarisation_V  cell voltage above (charging) or below (negative) its open-circuit voltage
double corrosion_potential_V(const cell::GridCorrosion& g, double soc, double polarisation_V);

/// Relative speed of corrosion at a potential and temperature.
double corrosion_speed(const cell::GridCorrosion& g, double potential_V, double temperature_C);

/// Thickness w of the layer after `times` repetitions of dw = slow w^(-2/3) + fast, the two regimes finely
/// interleaved: exact, so that any division into pieces gives the same. All arguments >= 0.
double corroded(double layer, double slow, double fast, double times);

/// Loss of capacity by shed and softened active mass after so many weighted full cycles. A new battery
/// already has 0.5 % of it, as published.
double shed_mass_loss(const cell::PlateWear& wear, double weighted_cycles);

/// The corrosion layer at its limit, in the unit of corrosion_speed times hours: what the stated float life
/// brings at float voltage and temperature.
/// @param rest_V  open-circuit voltage of the full cell
double corrosion_limit_h(const cell::PlateWear& wear, double rest_V);

/// Loss by corrosion goes to calendar_loss, loss of active mass to cycle_loss; both come from corrosion and
/// weighted_cycles of Aged. An exposure without recorded plates is taken as if each cycle followed a full
/// charge and the cell rested in between: hopeful, and reach() says kOutside. Ageing does not feed back into
/// gassing and the weights (assumption; the publication lets the gassing current grow fivefold).
class WeightedThroughput : public Law {
 public:
  /// @param rest_V  open-circuit voltage of the full cell
  WeightedThroughput(const cell::PlateWear& wear, double rest_V);

  void age(Aged& aged, const Exposure& exposure, double times) const override;
  Reach reach(const Exposure& exposure, const Aged& aged) const override;

 private:
  cell::PlateWear wear_;
  double limit_h_;
};

}  // namespace voltwright::ageing
