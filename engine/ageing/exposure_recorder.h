#pragma once
// Turns a course of charge and temperature into an exposure, value by value.
#include <cstdint>
#include <map>

#include "engine/ageing/exposure.h"
#include "engine/ageing/rainflow.h"
#include "engine/ageing/swing_bins.h"

namespace voltwright::ageing {

/// Feed it every step of a season, in any number of pieces. Hours are gathered by temperature (2 K) and
/// charge (2 %), each bin with its exact mean temperature and charge; a rate that doubles per 10 K is out by
/// at most 0.25 % for the spread within a bin. Swings: rainflow, closed ones in the bins of SwingBins, what
/// is left over one by one. Charge is taken as it comes, from -1 to 1.5; beyond that it counts in the bin at
/// the end.
class ExposureRecorder {
 public:
  explicit ExposureRecorder(double smallest_swing = kSmallestSwing) : counter_(smallest_swing) {}

  /// A step of `step_h` hours that ended at the state of charge, and its temperature.
  void add(double soc, double temperature_C, double step_h);

  /// All that was recorded; the recorder can go on afterwards.
  Exposure exposure() const;

 private:
  struct Sums {
    double hours = 0.0;
    double temperature_Ch = 0.0;
    double soc_h = 0.0;
  };
  void flush();

  RainflowCounter counter_;
  SwingBins closed_;
  std::map<std::uint32_t, Sums> dwell_;
  // Most steps stay in the bin of the one before: its sums are kept here until it is left.
  std::uint32_t place_ = 0;
  Sums here_;
};

}  // namespace voltwright::ageing
