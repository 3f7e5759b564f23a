#pragma once
// Follows the plates of a lead-acid bank step by step: time since full, bad charges, layered acid, corrosion.
#include "engine/ageing/plate_use.h"
#include "engine/base/curve.h"
#include "engine/cell/plate_wear.h"

namespace voltwright::ageing {

/// What one step did to a cell.
struct PlateStep {
  double soc = 1.0;  // at its end
  double temperature_C = 25.0;
  double cell_V = 2.1;
  double discharge_per_h = 0.0;  // rate in rated capacities per hour, charging negative
  double hours = 0.0;
};

/// Weights the charge drawn as the functions of engine/ageing/schiffer.h say. Begins at full, without layers.
/// Steps are gathered to ten minutes before they are weighted. What the publication leaves open: a charge
/// ends when the charge has fallen by `charge_ends_after`; the rate at the start of a discharge is the mean
/// over the first `start_share` of the capacity drawn after a full charge, by charge.
class PlateRecorder {
 public:
  /// @param rest_V   open-circuit voltage of a cell against its charge; must outlive this, as the constants
  /// @param cell_Ah  rated capacity of a cell, > 0
  PlateRecorder(const cell::PlateWear& wear, const base::Curve& rest_V, double cell_Ah);

  void add(const PlateStep& step);

  /// All so far; the recorder can go on afterwards.
  PlateUse use() const;

 private:
  struct Sums {
    double hours = 0.0;
    double soc = 0.0, temperature = 0.0, cell_V = 0.0;             // times hours
    double drawn = 0.0, drawn_by_rate = 0.0, drawn_by_root = 0.0;  // capacities; times rate; over its root
  };

  void weigh(const Sums& sums);
  void follow_charge(double soc, double hours);

  const cell::PlateWear* wear_;
  const base::Curve* rest_V_;
  double cell_Ah_;
  Sums sums_;
  PlateUse use_;
  double since_full_h_ = 0.0;
  double lowest_soc_ = 1.0;
  double bad_charges_ = 0.0;
  double layers_ = 0.0;
  double started_ = 0.0;          // drawn since full, up to start_share
  double started_by_rate_ = 0.0;  // the same times the rate
  double peak_ = 1.0, valley_ = 1.0;
  bool full_ = true;
};

}  // namespace voltwright::ageing
