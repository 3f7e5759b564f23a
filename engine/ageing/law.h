#pragma once
// What every ageing law answers: the losses after an exposure, and whether the law knows such an exposure.
#include "engine/ageing/exposure.h"

namespace voltwright::ageing {

/// Losses so far. Shares of the new capacity and of the new resistance.
struct Aged {
  double calendar_loss = 0.0;  // of capacity
  double cycle_loss = 0.0;     // of capacity
  double resistance_growth = 0.0;
  double full_cycles = 0.0;  // equivalent full cycles so far
  double hours = 0.0;
  double capacity() const { return 1.0 - calendar_loss - cycle_loss; }

  // What single laws need to go on exactly where they stopped; contained in the losses above.
  double warm_loss = 0.0;           // Schimpe: part of cycle_loss that heat drives
  double cold_loss = 0.0;           // Schimpe: part of cycle_loss by charging in the cold
  double plating_loss = 0.0;        // Schimpe: part of cycle_loss by charging in the cold above the threshold
  double resistance_by_time = 0.0;  // Schmalstieg: part of resistance_growth that is a power of time
  double damage_by_time = 0.0;      // Xu: the linear damage behind the losses
  double damage_by_swings = 0.0;
  double weighted_cycles = 0.0;  // lead-acid: full cycles, each with its weight
  double corrosion = 0.0;        // lead-acid: thickness of the corrosion layer, 1 = its limit
};

/// Whether the exposure lies inside the data that a law was fitted to.
enum class Reach { kInside, kExtrapolated, kOutside };  // kOutside: temperature or charge beyond the data

class Law {
 public:
  virtual ~Law() = default;
  /// Losses after `times` repetitions of the exposure; equivalent-time stepping, exact for power laws of time
  /// and throughput: repetitions may be cut into any portions, and their order within does not matter.
  virtual void age(Aged& aged, const Exposure& exposure, double times) const = 0;
  virtual Reach reach(const Exposure& exposure, const Aged& aged) const = 0;
};

}  // namespace voltwright::ageing
