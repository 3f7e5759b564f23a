#pragma once
// Money over the years: present value, annuity, payback, real against nominal rates. Equations, sources and
// checks: docs/method/cost.md. Internal rate of return: engine/cost/internal_rate.h.
#include <optional>
#include <span>

namespace voltwright::cost {

/// One payment: what is received is positive, what is paid negative.
struct Flow {
  double year = 0.0;  // from today, >= 0
  double amount = 0.0;
};

/// (1 + rate)^-years; rate > -1, per year.
double discount_factor(double rate, double years);

/// Sum of the flows, each discounted to today, in their currency; rate > -1, per year. The order does not
/// matter.
double net_present_value(std::span<const Flow> flows, double rate);

/// Present value of 1 paid at the end of each of `years` years: (1 - (1 + rate)^-years) / rate, and `years`
/// at a rate of 0. rate > -1, years >= 0, whole or not.
double annuity_factor(double rate, double years);

/// The equal yearly sum that is worth as much as `present_value` over `years` > 0; rate > -1.
double annualised(double present_value, double rate, double years);

/// Rate in money of today from the rate in money of the day: (1 + nominal) / (1 + inflation) - 1; all > -1.
double real_rate(double nominal, double inflation);
/// (1 + real) (1 + inflation) - 1.
double nominal_rate(double real, double inflation);

/// When what is received has made up for what was paid.
struct Payback {
  /// Year of the first payment after which the sum so far is no longer negative; 0 if it never was negative;
  /// nothing if that does not happen.
  std::optional<double> year;
  bool lasts = false;  // the sum so far does not become negative again later
};

/// Payback of flows in any order; those of one moment count together. `rate` 0 gives the simple payback,
/// another the discounted one; rate > -1.
Payback payback(std::span<const Flow> flows, double rate);

}  // namespace voltwright::cost
