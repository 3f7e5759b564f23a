#pragma once
// Rainflow counting of state-of-charge cycles (ASTM E1049-85, clause 5.4.4), streaming.
#include <vector>

namespace voltwright::ageing {

/// One counted cycle; `count` is 1 for a closed cycle and 0.5 for a half cycle of the residue.
struct Cycle {
  double depth = 0.0;  // range of the state of charge, 0..1
  double mean = 0.0;   // mean state of charge
  double count = 1.0;
};

class RainflowCounter {
 public:
  /// Swings smaller than `smallest` are noise and do not turn the series round.
  explicit RainflowCounter(double smallest = 0.002) : smallest_(smallest) {}

  /// Takes the next value of the series.
  void add(double value);

  /// All cycles so far, the residue as half cycles. The counter can go on afterwards.
  std::vector<Cycle> cycles() const;

 private:
  void turn(double value);

  double smallest_;
  std::vector<double> turns_;  // turning points not yet paired
  std::vector<Cycle> closed_;
  double extreme_ = 0.0;  // furthest value since the last turning point
  int direction_ = 0;     // 1 rising, -1 falling, 0 not known yet
  bool started_ = false;
};

}  // namespace voltwright::ageing
