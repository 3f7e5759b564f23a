#pragma once
// What a plan says about money, the catalogue's facts about running costs, and what the two make of a bank.
// No rate of exchange is built in: a price in another currency stays in it unless the plan says what a dollar
// costs. See docs/method/cost.md.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/cost/priced_bank.h"

namespace voltwright::cost {

/// What one battery of the catalogue costs by the plan, in its currency.
struct OwnPrice {
  std::string battery;  // catalogue id
  units::Ranged price;
};

/// What a kilogram of the worn battery brings (positive) or costs (negative), by chemistry.
struct OwnScrap {
  std::string chemistry;  // catalogue id; empty: any other
  units::Ranged per_kg;
};

/// Section [money] of a plan. What it does not name stays: then the catalogue's facts serve, or that cost is
/// not counted.
struct Money {
  double horizon_years = 10.0;                      // assumption
  units::Ranged discount_rate = {0.0, 0.03, 0.07};  // real, per year; assumption
  std::optional<double> per_dollar;                 // what one US dollar costs
  std::optional<units::Ranged> mains_per_kWh;
  std::optional<units::Ranged> fuel_per_L;
  double km_per_year = 0.0;  // 0: the mass costs no fuel
  std::optional<units::Ranged> L_per_100km_100kg;
  std::optional<units::Ranged> upkeep_per_year;  // of the bank
  std::vector<OwnPrice> prices;
  std::vector<OwnScrap> scrap;
};

/// Scrap value of some chemistries, in US dollars of a year.
struct ScrapFact {
  std::vector<std::string> chemistries;  // catalogue ids
  units::Ranged USD_per_kg;
  int year = 2025;
  bool is_assumption = false;
};

/// Facts of catalogue/costs/.
struct RunningFacts {
  units::Ranged L_per_100km_100kg;
  std::vector<ScrapFact> scrap;
};

/// A sum with the money it is in.
struct Sum {
  units::Ranged amount;
  std::string currency;
  int year = 0;            // 0: the year of the plan
  bool from_plan = false;  // the plan's own figure
};

/// Price of a bank of `count` batteries: the plan's own; else the catalogue's, in the plan's currency if that
/// is dollars or the plan says what a dollar costs; else as it stands in the catalogue. `catalogue` is the
/// price of the whole bank.
Sum price_of(const Money& money, std::string_view plan_currency, std::string_view battery, int count,
             const Sum& catalogue);

/// What a worn bank of `mass_kg` brings: the plan's figure for its chemistry, else the fact turned into the
/// plan's currency as in price_of(), else 0. Never more than `most`, the least price of the bank.
units::Ranged scrap_of(const Money& money, const RunningFacts& facts, std::string_view plan_currency,
                       std::string_view chemistry, double mass_kg, double most);

/// What a kilowatt-hour costs that takes so many litres: 0 if the plan names no price of fuel.
units::Ranged fuel_energy_price(const Money& money, double L_per_kWh);

/// The plan's terms, without sources of energy; the fact serves for the fuel for mass if the plan gives none.
Terms terms_of(const Money& money, const RunningFacts& facts, std::string_view plan_currency);

}  // namespace voltwright::cost
