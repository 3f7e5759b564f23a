// Closed forms for lead-acid: Peukert's law, two tanks, size for the temperature.
#include <cmath>

#include "engine/cell/peukert.h"
#include "engine/cell/temperature_factor.h"
#include "engine/cell/two_tank.h"
#include "tests/published/cells/quantities.h"

namespace voltwright::published {

namespace {

cell::RatedCapacity rating(Inputs& in) { return {in.number("rated_Ah"), in.number("rated_h")}; }

base::Result<double> exponent_from_reserve(Inputs& in) {
  const auto rated = rating(in);
  return cell::peukert_exponent_from_reserve(rated, in.number("reserve_min"));
}

double value_or_refuse(Inputs& in, const base::Result<double>& result) {
  if (result.ok()) return result.value();
  in.refuse(base::to_text(result.problems().front()));
  return 0.0;
}

cell::Availability tanks(Inputs& in) {
  const double fraction = in.number("fraction");
  const double exchange_per_h = in.number("exchange_per_h");
  return {fraction, exchange_per_h, in.number("full_Ah")};
}

cell::TankContent content(Inputs& in) { return {in.number("available_Ah"), in.number("bound_Ah")}; }

double minutes_from_conductance(Inputs& in) {
  const double fraction = in.number("fraction");
  const double per_h = in.number("conductance_per_s") * 3600.0;
  const double full_Ah = in.number("full_As") / 3600.0;
  const cell::Availability at{fraction, cell::exchange_from_conductance(fraction, per_h), full_Ah};
  return 60.0 * cell::hours_at(at, in.number("current_A"));
}

base::Result<cell::Availability> fitted(Inputs& in) {
  const double first_h = in.number("first_h");
  const double first_Ah = in.number("first_Ah");
  const double second_h = in.number("second_h");
  const double second_Ah = in.number("second_Ah");
  const double third_h = in.number("third_h");
  const double third_Ah = in.number("third_Ah");
  return cell::fit_two_tanks({{{first_Ah, first_h}, {second_Ah, second_h}, {third_Ah, third_h}}}, third_Ah);
}

double fit(Inputs& in, double cell::Availability::*part, bool in_Ah) {
  const auto found = fitted(in);
  if (!found.ok()) {
    in.refuse(base::to_text(found.problems().front()));
    return 0.0;
  }
  return found.value().*part * (in_Ah ? in.number("third_Ah") : 1.0);
}

/// Largest difference of a fit from the table, over the table's rows.
double fit_from_table(Inputs& in) {
  const bool smooth = in.text("fit") == "smooth";
  double largest = 0.0;
  for (const auto& row : cell::size_factor_table()) {
    const double fitted_factor =
        smooth ? cell::smooth_size_factor(row.x).factor : cell::cubic_size_factor(row.x);
    largest = std::fmax(largest, std::fabs(fitted_factor / row.y - 1.0));
  }
  return largest;
}

}  // namespace

Quantities lead_acid_quantities() {
  return {
      {"peukert_hours",
       [](Inputs& in) {
         const auto rated = rating(in);
         return cell::peukert_hours(rated, in.number("exponent"), in.number("current_A"),
                                    in.number_or("most_of_rating", cell::kMostOfRating));
       }},
      {"peukert_Ah",
       [](Inputs& in) {
         const auto rated = rating(in);
         return cell::peukert_Ah(rated, in.number("exponent"), in.number("current_A"),
                                 in.number_or("most_of_rating", cell::kMostOfRating));
       }},
      {"peukert_exponent",
       [](Inputs& in) {
         const auto rated = rating(in);
         const cell::RatedCapacity other{in.number("other_Ah"), in.number("other_h")};
         return value_or_refuse(in, cell::peukert_exponent(rated, other));
       }},
      {"peukert_exponent_from_reserve",
       [](Inputs& in) { return value_or_refuse(in, exponent_from_reserve(in)); }},
      {"peukert_reserve_accepted", [](Inputs& in) { return yes(exponent_from_reserve(in).ok()); }},
      {"two_tank_capacity_Ah",
       [](Inputs& in) {
         const auto at = tanks(in);
         return cell::capacity_in_hours(at, in.number("hours"));
       }},
      {"two_tank_largest_discharge_A",
       [](Inputs& in) {
         const auto at = tanks(in);
         return cell::largest_discharge(at, cell::full_tanks(at), in.number("hours"));
       }},
      {"two_tank_largest_charge_A",
       [](Inputs& in) {
         const auto at = tanks(in);
         const auto holding = content(in);
         return cell::largest_charge(at, holding, in.number("hours"));
       }},
      {"two_tank_lifetime_min", minutes_from_conductance},
      {"two_tank_fit_fraction", [](Inputs& in) { return fit(in, &cell::Availability::fraction, false); }},
      {"two_tank_fit_exchange_per_h",
       [](Inputs& in) { return fit(in, &cell::Availability::exchange_per_h, false); }},
      {"two_tank_fit_full_Ah",
       [](Inputs& in) { return fit(in, &cell::Availability::full_over_rated, true); }},
      {"size_factor", [](Inputs& in) { return cell::size_factor(in.number("temperature_C")).factor; }},
      {"size_factor_within",
       [](Inputs& in) { return yes(cell::size_factor(in.number("temperature_C")).within); }},
      {"smooth_size_factor",
       [](Inputs& in) { return cell::smooth_size_factor(in.number("temperature_C")).factor; }},
      {"cubic_size_factor", [](Inputs& in) { return cell::cubic_size_factor(in.number("temperature_C")); }},
      {"size_factor_fit_differs", fit_from_table},
      // How much too small a battery becomes by somebody else's factor.
      {"size_short_by_claimed_factor",
       [](Inputs& in) {
         return 1.0 - in.number("claimed_factor") / cell::size_factor(in.number("temperature_C")).factor;
       }},
  };
}

}  // namespace voltwright::published
