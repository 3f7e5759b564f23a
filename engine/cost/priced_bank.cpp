#include "engine/cost/priced_bank.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/units/figure.h"

namespace voltwright::cost {

namespace {

constexpr double kLongestHorizon_years = 60.0;
constexpr double kShortestLife_years = 0.05;  // a shorter one would mean a thousand banks in a horizon
constexpr double kLongestLife_years = 200.0;
constexpr double kLeastRate = -0.5;
constexpr double kGreatestRate = 1.0;
constexpr double kMost = 1e12;

class Check {
 public:
  void spread(const std::string& field, const units::Ranged& range, double least, double greatest) {
    const bool finite = std::isfinite(range.min) && std::isfinite(range.typical) && std::isfinite(range.max);
    if (!finite || range.min > range.typical || range.typical > range.max) {
      add(field, "A spread rises from least over typical to greatest.", text_of(range), "");
    } else if (range.min < least || range.max > greatest) {
      add(field, "The value lies outside what can be reckoned with.", text_of(range),
          units::figure(least) + " to " + units::figure(greatest));
    }
  }

  void number(const std::string& field, double value, double least, double greatest) {
    spread(field, {value, value, value}, least, greatest);
  }

  void above_nothing(const std::string& field, double value, std::string what) {
    if (!(value > 0.0)) add(field, std::move(what), units::figure(value), "above 0");
  }

  base::Problem& add(const std::string& field, std::string what, std::string given, std::string limit) {
    base::Problem problem;
    problem.field = field;
    problem.what = std::move(what);
    problem.given = std::move(given);
    problem.limit = std::move(limit);
    problems.push_back(std::move(problem));
    return problems.back();
  }

  base::Problems problems;

 private:
  static std::string text_of(const units::Ranged& range) {
    return units::figure(range.min) + ", " + units::figure(range.typical) + ", " + units::figure(range.max);
  }
};

void check_terms(const Terms& terms, Check& check) {
  check.number("horizon", terms.horizon_years, 1.0, kLongestHorizon_years);
  check.spread("discount rate", terms.discount_rate, kLeastRate, kGreatestRate);
  for (const EnergySource& source : terms.sources) {
    check.spread("price of " + source.name, source.price_per_kWh, 0.0, kMost);
  }
  check.number("distance", terms.carrying.km_per_year, 0.0, kMost);
  check.spread("fuel for mass", terms.carrying.L_per_100km_100kg, 0.0, kMost);
  check.spread("price of fuel", terms.carrying.fuel_price_per_L, 0.0, kMost);
}

void check_charging(const PricedBank& bank, const Terms& terms, Check& check) {
  for (const Charging& charging : bank.charging) {
    check.number("charging from " + charging.source, charging.kWh_per_delivered_kWh, 0.0, kMost);
    const bool known = std::any_of(terms.sources.begin(), terms.sources.end(),
                                   [&](const EnergySource& s) { return s.name == charging.source; });
    if (known || charging.kWh_per_delivered_kWh == 0.0) continue;
    check.add("charging from " + charging.source, "Nothing says what this energy costs.", "", "").remedy =
        "Give its price for each kWh; 0 if it is paid already.";
  }
}

}  // namespace

base::Problems problems_of(const PricedBank& bank, const Terms& terms) {
  Check check;
  if (bank.currency != terms.currency) {
    check
        .add("price",
             "The price is in " + bank.currency + " of " + std::to_string(bank.price_year) +
                 ", and the costs are counted in " + terms.currency + ".",
             bank.currency, terms.currency)
        .remedy = "Give the price in " + terms.currency + ", or what one " + bank.currency + " costs.";
  }
  check.spread("price", bank.price, 0.0, kMost);
  check.above_nothing("usable energy", bank.usable_kWh, "The bank holds no usable energy.");
  check.number("usable energy", bank.usable_kWh, 0.0, kMost);
  check.spread("delivered energy", bank.delivered_kWh_per_year, 0.0, kMost);
  check.above_nothing("delivered energy", bank.delivered_kWh_per_year.min,
                      "Nothing is delivered, so that a delivered kWh has no cost.");
  check.spread("life", bank.life_years, kShortestLife_years, kLongestLife_years);
  if (bank.fitted_now) check.spread("life left", bank.life_left_years, 0.0, kLongestLife_years);
  check.number("mass", bank.mass_kg, 0.0, kMost);
  check.spread("scrap value", bank.scrap, -kMost, std::max(bank.price.min, 0.0));
  check.spread("upkeep", bank.upkeep_per_year, 0.0, kMost);
  check_terms(terms, check);
  check_charging(bank, terms, check);
  return std::move(check.problems);
}

}  // namespace voltwright::cost
