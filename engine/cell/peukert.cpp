#include "engine/cell/peukert.h"

#include <algorithm>
#include <cmath>

namespace voltwright::cell {

namespace {

base::Problem unusable(const char* what, const char* remedy) {
  base::Problem problem;
  problem.what = what;
  problem.remedy = remedy;
  return problem;
}

}  // namespace

double peukert_Ah(const RatedCapacity& rating, double exponent, double current_A, double most_of_rating) {
  const double slowness = rating.capacity_Ah / (rating.hours * current_A);
  return rating.capacity_Ah * std::min(std::pow(slowness, exponent - 1.0), most_of_rating);
}

double peukert_hours(const RatedCapacity& rating, double exponent, double current_A, double most_of_rating) {
  return peukert_Ah(rating, exponent, current_A, most_of_rating) / current_A;
}

base::Result<double> peukert_exponent(const RatedCapacity& one, const RatedCapacity& other) {
  const bool above_nothing =
      one.capacity_Ah > 0.0 && one.hours > 0.0 && other.capacity_Ah > 0.0 && other.hours > 0.0;
  if (!above_nothing) {
    return unusable("A capacity or a time of the two ratings is not above 0.", "Give both ratings in full.");
  }
  const double one_A = one.capacity_Ah / one.hours;
  const double other_A = other.capacity_Ah / other.hours;
  const double by_current = std::log(one_A / other_A);
  if (by_current == 0.0) {
    return unusable("Both ratings are for the same current.", "Give ratings at two different times.");
  }
  const double exponent = std::log(other.hours / one.hours) / by_current;
  if (!(exponent >= 1.0)) {
    return unusable("By these ratings the slower discharge gives less charge than the faster one.",
                    "Check both figures: one is misprinted, or they are for different batteries.");
  }
  return exponent;
}

base::Result<double> peukert_exponent_from_reserve(const RatedCapacity& rating, double reserve_min) {
  const double hours = reserve_min / 60.0;
  return peukert_exponent({kReserveTest_A * hours, hours}, rating);
}

}  // namespace voltwright::cell
