#pragma once
// What a stretch of use does to the plates of a lead-acid bank, beyond hours and swings: what the weighted
// throughput model asks for and cannot be told from them, as it depends on the order of events.

namespace voltwright::ageing {

/// Charge in rated capacities.
struct PlateUse {
  double hours = 0.0;           // recorded; 0 = nothing is known
  double drawn = 0.0;           // charge drawn
  double weighted = 0.0;        // the same, each part with its weight of partial charge and layered acid
  double slow_corrosion = 0.0;  // sum of 0.6 k^(5/3) h below the knee of the corrosion law, k relative speed
  double fast_corrosion = 0.0;  // sum of k h above it
  double full_charges = 0.0;
  double bad_charges = 0.0;  // charges that ended a little short of full, each by its severity 0..1
  double longest_without_full_h = 0.0;
};

}  // namespace voltwright::ageing
