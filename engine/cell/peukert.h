#pragma once
// Peukert's law: how long a battery lasts at a constant current, from what it is rated at. See
// docs/method/peukert.md.
#include "engine/base/result.h"

namespace voltwright::cell {

/// A capacity and the time in which it was drawn at a constant current; both > 0.
struct RatedCapacity {
  double capacity_Ah = 100.0;
  double hours = 20.0;
};

/// Below the rated current the law would promise more and more. Capacities at 100 h are 1.1 to 1.3 of those
/// at 20 h (from memory; one row read, 1.111): the least of that is taken.
inline constexpr double kMostOfRating = 1.1;

/// Charge [Ah] that can be drawn at a constant current [A, > 0]: C (C / (H I))^(n - 1), and below the rated
/// current never more than `most_of_rating` (>= 1) times C.
/// @param exponent  n, >= 1; 1 = the same charge at any current
double peukert_Ah(const RatedCapacity& rating, double exponent, double current_A,
                  double most_of_rating = kMostOfRating);

/// Hours that it lasts: peukert_Ah over the current. At the rated current exactly the rated hours.
double peukert_hours(const RatedCapacity& rating, double exponent, double current_A,
                     double most_of_rating = kMostOfRating);

/// Exponent from two ratings of one battery, n = ln(t2 / t1) / ln(I1 / I2). A problem if a figure is not
/// above 0, if both have the same current, or if n falls below 1: then the slower discharge gave less
/// charge, and one of the figures is wrong.
base::Result<double> peukert_exponent(const RatedCapacity& one, const RatedCapacity& other);

/// Current of the reserve-capacity test of starting and leisure batteries.
inline constexpr double kReserveTest_A = 25.0;

/// Exponent from a rating and the reserve minutes at 25 A; problems as above.
base::Result<double> peukert_exponent_from_reserve(const RatedCapacity& rating, double reserve_min);

}  // namespace voltwright::cell
