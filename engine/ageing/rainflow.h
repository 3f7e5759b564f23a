#pragma once
// Rainflow counting of swings of the state of charge (ASTM E1049-85, clause 5.4.4), streaming.
#include <cstddef>
#include <vector>

#include "engine/ageing/exposure.h"

namespace voltwright::ageing {

/// Swings smaller than this share of the capacity are noise and do not turn the series round.
inline constexpr double kSmallestSwing = 0.002;

/// What happened on a way between two turning points.
struct Way {
  double hours = 0.0;
  double temperature_Ch = 0.0;                  // sum of temperature times hours
  double up = 0.0, down = 0.0;                  // charge put in and drawn, in capacities
  double up_by_rate = 0.0, down_by_rate = 0.0;  // the same times the rate at which it moved [1/h]

  /// A step of `hours` >= 0 in which the state of charge changed by `change`.
  void add(double change, double temperature_C, double step_h);
  void add(const Way& other, double share = 1.0);
};

/// Counts swings as the values come in. Every way up and down lies in exactly one swing, with its hours: an
/// inner swing takes its way out of the one around it, the way back as its share of the depth of the way that
/// closes it. The rates are means over the charge that moved (a trickle of long hours counts little, as
/// damage goes with charge), of the direction that the part has. Of a half cycle one rate is not known.
/// Memory: the turning points not yet paired, and the closed swings that have not been taken over by drain().
class RainflowCounter {
 public:
  /// @param smallest  in the unit of the values, >= 0
  explicit RainflowCounter(double smallest = kSmallestSwing) : smallest_(smallest) {}

  /// Takes the next value of the series, `step_h` >= 0 hours after the one before, and the mean temperature
  /// of these hours. Of the first value nothing but itself counts.
  void add(double value, double temperature_C = 25.0, double step_h = 1.0);

  /// Hands each closed swing to `sink(const Swing&)` and forgets it.
  template <class Sink>
  void drain(Sink&& sink) {
    for (const Swing& swing : closed_) sink(swing);
    closed_.clear();
  }

  /// All swings so far that were not drained; what is left over as half cycles. The counter can go on
  /// afterwards.
  std::vector<Swing> swings() const;

  /// Turning points not yet paired.
  std::size_t waiting() const { return turns_.size(); }

 private:
  struct Turn {
    double value = 0.0;
    Way before;  // from the turning point before it
  };

  void turn(double value, const Way& before);

  double smallest_;
  std::vector<Turn> turns_;
  std::vector<Swing> closed_;
  Way onward_;            // from the last turning point to the extreme
  Way since_;             // since the extreme
  double extreme_ = 0.0;  // furthest value since the last turning point
  double last_ = 0.0;
  int direction_ = 0;  // 1 rising, -1 falling, 0 not known yet
  bool started_ = false;
};

}  // namespace voltwright::ageing
