#include "engine/cost/money.h"

#include <algorithm>

namespace voltwright::cost {

namespace {

constexpr std::string_view kDollar = "USD";

units::Ranged times(const units::Ranged& range, double factor) {
  return {range.min * factor, range.typical * factor, range.max * factor};
}

/// What one dollar is in the plan's currency, if that can be known.
std::optional<double> dollar_in(std::string_view plan_currency, const Money& money) {
  if (plan_currency == kDollar) return 1.0;
  return money.per_dollar;
}

std::optional<units::Ranged> own_scrap(const Money& money, std::string_view chemistry) {
  std::optional<units::Ranged> of_any;
  for (const OwnScrap& own : money.scrap) {
    if (own.chemistry == chemistry) return own.per_kg;
    if (own.chemistry.empty()) of_any = own.per_kg;
  }
  return of_any;
}

}  // namespace

Sum price_of(const Money& money, std::string_view plan_currency, std::string_view battery, int count,
             const Sum& catalogue) {
  for (const OwnPrice& own : money.prices) {
    if (own.battery != battery) continue;
    return {times(own.price, static_cast<double>(count)), std::string(plan_currency), 0, true};
  }
  if (catalogue.currency != kDollar || plan_currency == kDollar || !money.per_dollar) return catalogue;
  return {times(catalogue.amount, *money.per_dollar), std::string(plan_currency), catalogue.year, false};
}

units::Ranged scrap_of(const Money& money, const RunningFacts& facts, std::string_view plan_currency,
                       std::string_view chemistry, double mass_kg, double most) {
  std::optional<units::Ranged> per_kg = own_scrap(money, chemistry);
  if (const auto dollar = dollar_in(plan_currency, money); !per_kg && dollar) {
    for (const ScrapFact& fact : facts.scrap) {
      const auto& ids = fact.chemistries;
      if (std::find(ids.begin(), ids.end(), chemistry) == ids.end()) continue;
      per_kg = times(fact.USD_per_kg, *dollar);
      break;
    }
  }
  if (!per_kg) return {};
  const units::Ranged whole = times(*per_kg, mass_kg);
  return {std::min(whole.min, most), std::min(whole.typical, most), std::min(whole.max, most)};
}

units::Ranged fuel_energy_price(const Money& money, double L_per_kWh) {
  return money.fuel_per_L ? times(*money.fuel_per_L, L_per_kWh) : units::Ranged{};
}

Terms terms_of(const Money& money, const RunningFacts& facts, std::string_view plan_currency) {
  Terms terms;
  terms.currency = plan_currency;
  terms.horizon_years = money.horizon_years;
  terms.discount_rate = money.discount_rate;
  terms.carrying.km_per_year = money.fuel_per_L ? money.km_per_year : 0.0;
  terms.carrying.L_per_100km_100kg = money.L_per_100km_100kg.value_or(facts.L_per_100km_100kg);
  terms.carrying.fuel_price_per_L = money.fuel_per_L.value_or(units::Ranged{});
  return terms;
}

}  // namespace voltwright::cost
