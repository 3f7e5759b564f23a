#pragma once
// The same use under a changed habit: cooler, stopping short of full, from a larger bank, stored half full.
#include "engine/ageing/exposure.h"

namespace voltwright::ageing {

/// The exposure `by_K` cooler (negative: warmer) all the time.
/// @param plates_doubling_K  rise in which lead-acid's corrosion doubles, > 0; its recorded sums follow. The
///                           settling of layered acid is left as it was.
Exposure cooler(Exposure exposure, double by_K, double plates_doubling_K);

/// Charging stops at `ceiling` (0..1) of the charge: the whole course moves down by as much as its highest
/// hour was above that, to no less than empty; the swings keep their depth where there is room. Of lead-acid
/// plates nothing can be said: they are left as they were.
Exposure stopping_at(Exposure exposure, double ceiling);

/// The same energy from a bank `times` >= 1 as large: shallower swings from the same full charge, at a lower
/// rate. Charge drawn from plates falls with it, each part keeping its weight (assumption).
Exposure shared_by(Exposure exposure, double times);

/// Time at rest spent at `soc` instead; swings stay.
Exposure stored_at(Exposure exposure, double soc);

}  // namespace voltwright::ageing
