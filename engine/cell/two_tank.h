#pragma once
// Closed forms of the two-tank model of Manwell and McGowan 1993: what a duration leaves, the largest
// currents over a step, and the constants from three capacities. Capacities and contents count in rated
// capacities, currents in rated capacities per hour. See docs/method/two_tank.md.
#include <array>

#include "engine/base/result.h"
#include "engine/cell/chemistry.h"
#include "engine/cell/peukert.h"

namespace voltwright::cell {

/// What the two tanks hold, in rated capacities; full: `fraction` and 1 - `fraction` times full_over_rated.
struct TankContent {
  double available = 0.0;
  double bound = 0.0;
};

/// Content of full tanks.
TankContent full_tanks(const Availability& tanks);

/// Charge that a constant current draws from full tanks in `hours` (> 0), when it empties the available one
/// just then. From fraction * full_over_rated at once to full_over_rated in a very long time; with one tank
/// (fraction 1) always the latter.
double capacity_in_hours(const Availability& tanks, double hours);

/// Hours that full tanks carry a constant discharge current (> 0). At least 0; for any current there is an
/// answer, as the capacity has a lower limit.
double hours_at(const Availability& tanks, double current_per_h);

/// Discharge current that empties the available tank in `hours` (> 0).
double largest_discharge(const Availability& tanks, const TankContent& content, double hours);

/// Charge current that fills the available tank in `hours` (> 0); not above 0, as charge counts negative.
double largest_charge(const Availability& tanks, const TankContent& content, double hours);

/// Exchange constant of the closed form [1/h] from the conductance between the tanks [1/h]: k = k_w / (c (1 -
/// c)). Publications print either of the two. Precondition: 0 < fraction < 1.
double exchange_from_conductance(double fraction, double conductance_per_h);

/// Constants that give three capacities exactly, in multiples of `rated_Ah`. A problem unless the times rise,
/// the capacities rise and the currents fall, or if no two tanks give such capacities.
base::Result<Availability> fit_two_tanks(const std::array<RatedCapacity, 3>& capacities, double rated_Ah);

}  // namespace voltwright::cell
