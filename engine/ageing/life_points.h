#pragma once
// Measured life points where no law has constants: straight-line wear between new and the end of life.
// Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"
#include "engine/base/curve.h"
#include "engine/units/ranged.h"

namespace voltwright::ageing {

/// One published point: cells cycled under one condition to the end of life.
struct LifePoint {
  double low_soc = 0.0;
  double high_soc = 1.0;
  double temperature_C = 25.0;
  double charge_per_h = 0.5;
  double discharge_per_h = 0.5;
  units::Ranged full_cycles;  // equivalent: least, mean and most of the cells
  bool extrapolated = false;  // by the authors
};

struct LifePointFigures {
  double end_of_life_share = 0.8;    // capacity at which the points count life as ended
  base::Curve full_cycles_by_depth;  // at 25 degC; ln over ln between points, ends held
  base::Curve life_factor_by_C;      // life against that at 25 degC; ends held
  double shelf_years = 0.0;          // to the same end at 25 degC; 0 = nothing known of time at rest
  double shelf_halving_K = 10.0;     // shelf life halves for each
};

/// The curves of a set of points; the other figures keep their defaults. By depth: at 25 degC, the slowest
/// discharging rate of each depth. By temperature: life over that at 25 degC of the same window and rates,
/// the slowest for each temperature; 1 if only 25 degC was tested. Empty if no point at 25 degC has a depth.
LifePointFigures figures_of(const std::vector<LifePoint>& points);

/// Losses in proportion to full cycles (and, if shelf_years is given, to time).
class LifePoints final : public Part {
 public:
  LifePoints(LifePointFigures figures, const Validity& validity)
      : Part(validity), figures_(std::move(figures)) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

  /// Full cycles to the end of life.
  double full_cycles_to_end(double depth, double temperature_C) const;

 private:
  LifePointFigures figures_;
};

}  // namespace voltwright::ageing
