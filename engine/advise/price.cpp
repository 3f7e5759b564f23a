#include "engine/advise/price.h"

#include "engine/advise/wording.h"

namespace voltwright::advise {

cost::Sum price_of(const Plan& plan, const Candidate& candidate) {
  cost::Sum catalogue{candidate.figures.price, plan.currency, 0, false};
  std::string id;
  if (candidate.battery != nullptr) {
    id = candidate.battery->id;
    catalogue.currency = candidate.battery->price_currency;
    catalogue.year = candidate.battery->price_year;
  }
  if (!plan.money) return cost::price_of({}, plan.currency, id, candidate.count(), catalogue);
  return cost::price_of(*plan.money, plan.currency, id, candidate.count(), catalogue);
}

bool counts_in(const Plan& plan, const cost::Sum& sum) { return sum.currency == plan.currency; }

std::string price_text(const Plan& plan, const cost::Sum& sum) {
  std::string text = figure(sum.amount.typical, sum.currency);
  if (!counts_in(plan, sum) && sum.year > 0) text += " of " + std::to_string(sum.year);
  return text;
}

std::string price_origin(const cost::Sum& sum) {
  return sum.from_plan || sum.year == 0 ? "by the plan" : "money of " + std::to_string(sum.year);
}

std::string price_remedy(const Plan& plan, const cost::Sum& sum, const std::string& battery) {
  return "Give the price in " + plan.currency + " ([[money.price]] with battery = \"" + battery +
         "\"), or what one " + sum.currency + " costs (dollar in [money]).";
}

}  // namespace voltwright::advise
