#pragma once
// What every ageing law answers: how much an exposure, repeated, takes away.
#include "engine/ageing/exposure.h"

namespace voltwright::ageing {

/// Losses so far. Shares of the new capacity and of the new resistance.
struct Aged {
  double calendar_loss = 0.0;  // of capacity
  double cycle_loss = 0.0;     // of capacity
  double resistance_growth = 0.0;
  double full_cycles = 0.0;  // equivalent full cycles so far
  double hours = 0.0;
  double weighted_cycles = 0.0;  // lead-acid: full cycles, each with its weight (engine/ageing/schiffer.h)
  double corrosion = 0.0;        // lead-acid: thickness of the corrosion layer, 1 = its limit
  double capacity() const { return 1.0 - calendar_loss - cycle_loss; }
};

/// Whether the exposure lies inside the data that a law was fitted to.
enum class Reach { kInside, kExtrapolated, kOutside };  // kOutside: temperature or charge beyond the data

class Law {
 public:
  virtual ~Law() = default;
  /// Losses after `times` repetitions of the exposure; equivalent-time stepping, exact for power laws of time
  /// and throughput.
  virtual void age(Aged& aged, const Exposure& exposure, double times) const = 0;
  virtual Reach reach(const Exposure& exposure, const Aged& aged) const = 0;
};

}  // namespace voltwright::ageing
