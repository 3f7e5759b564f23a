#pragma once
// How the plates of lead-acid cells wear: constants of the weighted throughput model (Schiffer et al. 2007),
// read from catalogue/ageing/lead-acid-weighted.json, where each has its source. Equations:
// docs/method/ageing_lead.md. Voltages and potentials are per cell, rates are multiples of the rated
// capacity.
#include "engine/base/curve.h"

namespace voltwright::cell {

/// Growth of the corrosion layer of the positive grid.
struct GridCorrosion {
  double rest_V = 0.0;      // potential of the positive electrode, full and without current
  double acid_share = 0.0;  // of the acid's voltage that the potential loses towards empty
  double acid_V = 0.0;      // fall of the open-circuit voltage from full to empty
  double knee_V = 0.0;      // below it the layer hinders its own growth, above it grows at a steady rate
  double doubling_K = 0.0;
  base::Curve speed_by_V;          // relative speed against potential
  double capacity_loss = 0.0;      // when the layer has reached its limit
  double resistance_growth = 0.0;  // likewise
};

/// Weight of charge drawn long after the last full charge.
struct PartialCharge {
  double reference_per_h = 0.0;  // the ten-hour rate
  double full_soc = 0.0;
  double per_h = 0.0;        // c_0
  double empty_per_h = 0.0;  // c_min
  double almost_soc = 0.0;   // centre of the band of charges that end a little short of full
  double almost_band = 0.0;  // half its width
  double bad_charges_scale = 0.0;
  double charge_ends_after = 0.0;     // fall of charge that ends a charge
  double longest_since_full_h = 0.0;  // the weight grows no further beyond
  double most_bad_charges = 0.0;      // likewise
  double start_share = 0.0;  // share drawn after a full charge whose rate counts as that of the start
};

/// Weight of charge drawn from layered acid.
struct AcidLayers {
  double rise_per_h = 0.0;  // at the reference rate and an empty cell
  double rise_decay = 0.0;
  double mixing_per_h = 0.0;  // by gas, at mixing_V and mixing_C in a cell of mixing_Ah
  double mixing_V = 0.0;
  double mixing_from_V = 0.0;
  double mixing_C = 0.0;
  double mixing_per_V = 0.0;
  double mixing_per_K = 0.0;
  double mixing_Ah = 0.0;
  double diffusion_mm2_per_h = 0.0;
  double diffusion_C = 0.0;
  double diffusion_doubling_K = 0.0;
  double height_mm = 0.0;  // of the electrodes
};

/// Loss of active mass against weighted throughput.
struct MassShedding {
  double exponent = 0.0;  // c_Z
  double stretch = 0.0;   // weighted throughput over the standard's cycles at which the loss is loss_limit
  double loss_limit = 0.0;
};

/// What a maker states of one kind of battery.
struct PlateRating {
  double standard_cycles = 0.0;  // by the cycle test of IEC 61427, in full cycles
  double float_years = 0.0;
  double float_V = 0.0;
  double float_C = 0.0;
};

struct PlateWear {
  GridCorrosion corrosion;
  PartialCharge partial;
  AcidLayers acid;
  MassShedding shedding;
  PlateRating rating;
  double coldest_C = 0.0, hottest_C = 0.0;  // reach of the law
};

}  // namespace voltwright::cell
