#include "engine/cost/working.h"

#include <algorithm>
#include <utility>

#include "engine/units/figure.h"

namespace voltwright::cost {

namespace {

using units::figure;

class Working {
 public:
  explicit Working(const Terms& terms)
      : currency_(terms.currency), rate_(terms.discount_rate.typical), horizon_(terms.horizon_years) {}

  void line(std::string name, double value, std::string unit, std::string words) {
    lines_.push_back({std::move(name), value, std::move(unit), std::move(words)});
  }

  void sum(std::string name, double value, std::string words) {
    line(std::move(name), value, currency_, std::move(words));
  }

  /// Present value of all flows of an item, if there is one.
  void item(Item of, const std::vector<ItemFlow>& flows, std::string words) {
    double value = 0.0;
    int count = 0;
    for (const ItemFlow& one : flows) {
      if (one.item != of) continue;
      value -= one.flow.amount * discount_factor(rate_, one.flow.year);
      ++count;
    }
    if (count > 0 && value != 0.0) sum(name_of(of), value, std::move(words));
  }

  std::string per_kWh() const { return currency_ + "/kWh"; }
  double horizon() const { return horizon_; }
  std::vector<WorkingLine> take() { return std::move(lines_); }

 private:
  std::string currency_;
  double rate_;
  double horizon_;
  std::vector<WorkingLine> lines_;
};

std::string years_text(double years) { return figure(years, years == 1.0 ? "year" : "years"); }

/// "4: now, then every 3 years."
std::string bought_when(const PricedBank& bank, const Costs& costs, const std::vector<ItemFlow>& flows) {
  const auto first = std::find_if(flows.begin(), flows.end(),
                                  [](const ItemFlow& one) { return one.item == Item::kPurchase; });
  if (first == flows.end()) return "None.";
  std::string text = std::to_string(costs.bought) + ": ";
  text += first->flow.year > 0.0 ? "after " + years_text(first->flow.year) : "now";
  if (costs.bought > 1) text += ", then every " + years_text(bank.life_years.typical);
  return text + ".";
}

void bank_lines(const PricedBank& bank, const Costs& costs, Working& working) {
  const std::string whose =
      bank.price_year > 0 ? "money of " + std::to_string(bank.price_year) : "by the plan";
  working.sum("price", bank.price.typical, "Of the whole bank, " + whose + ".");
  working.line("usable energy", bank.usable_kWh, "kWh", "When new, down to the depth rule.");
  working.line("cost per usable kWh", costs.per_usable_kWh, working.per_kWh(),
               "Price over usable energy: what is bought, not what it gives.");
  working.line("life", bank.life_years.typical, "years", "Of a new bank at this use.");
  if (bank.fitted_now)
    working.line("life left", bank.life_left_years.typical, "years", "Of what is fitted now; it is paid.");
}

/// What comes from one source, with what it costs; sun shows as 0.
void energy_line(const Charging& charging, const Terms& terms, const Costs& costs, Working& working) {
  if (charging.kWh_per_delivered_kWh == 0.0) return;
  const auto of = std::find_if(terms.sources.begin(), terms.sources.end(),
                               [&](const EnergySource& s) { return s.name == charging.source; });
  if (of == terms.sources.end()) return;
  const double price = of->price_per_kWh.typical;
  working.sum("energy from " + charging.source, charging.kWh_per_delivered_kWh * price * costs.discounted_kWh,
              figure(charging.kWh_per_delivered_kWh, "kWh") + " for each delivered kWh" +
                  (price == 0.0 ? " at no cost." : " at " + figure(price, working.per_kWh()) + "."));
}

void flow_lines(const PricedBank& bank, const Terms& terms, const Costs& costs,
                const std::vector<ItemFlow>& flows, Working& working) {
  working.item(Item::kPurchase, flows, bought_when(bank, costs, flows));
  working.item(Item::kScrap, flows,
               "What each worn bank brings, " + figure(bank.scrap.typical, terms.currency) + ", taken off.");
  working.item(Item::kLeftOver, flows, "Straight line from the price to the scrap value, taken off.");
  for (const Charging& charging : bank.charging) energy_line(charging, terms, costs, working);
  const Carrying& c = terms.carrying;
  working.item(Item::kCarrying, flows,
               figure(bank.mass_kg, "kg") + " over " + figure(c.km_per_year, "km") + " a year at " +
                   figure(c.L_per_100km_100kg.typical, "L") + " in 100 km for each 100 kg.");
  working.item(Item::kUpkeep, flows, figure(bank.upkeep_per_year.typical, terms.currency) + " a year.");
}

}  // namespace

std::vector<WorkingLine> working_of(const PricedBank& bank, const Terms& terms) {
  const Costs costs = costs_of(bank, terms);
  const std::vector<ItemFlow> flows = flows_of(bank, terms);
  Working working(terms);
  bank_lines(bank, costs, working);
  working.line("discount rate", terms.discount_rate.typical, "1/year",
               "Real: money of today, inflation taken out.");
  working.line("horizon", terms.horizon_years, "years", "All payments to this year count.");
  flow_lines(bank, terms, costs, flows, working);
  working.sum("present value of all costs", costs.present_value,
              "The lines above together, each payment divided by (1 + rate)^years.");
  working.sum("yearly cost", costs.annualised,
              "The equal yearly sum over " + years_text(working.horizon()) + " that is worth as much.");
  working.line("energy delivered", costs.delivered_kWh, "kWh",
               figure(bank.delivered_kWh_per_year.typical, "kWh") + " a year.");
  working.line("energy delivered, discounted", costs.discounted_kWh, "kWh",
               "Each year's divided by (1 + rate)^years, as its cost is.");
  working.line("cost per delivered kWh", costs.per_delivered_kWh, working.per_kWh(),
               "Present value of all costs over the discounted energy.");
  working.line("of it the bank itself", costs.capital_per_delivered_kWh, working.per_kWh(),
               "Bought, scrapped and left over alone.");
  return working.take();
}

}  // namespace voltwright::cost
