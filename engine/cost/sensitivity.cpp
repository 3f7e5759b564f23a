#include "engine/cost/sensitivity.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace voltwright::cost {

namespace {

/// A typical value that an assumption stands for.
double& typical_of(const Assumption& a, PricedBank& bank, Terms& terms) {
  switch (a.input) {
    case Input::kPrice:
      return bank.price.typical;
    case Input::kLife:
      return bank.life_years.typical;
    case Input::kLifeLeft:
      return bank.life_left_years.typical;
    case Input::kDelivered:
      return bank.delivered_kWh_per_year.typical;
    case Input::kScrap:
      return bank.scrap.typical;
    case Input::kUpkeep:
      return bank.upkeep_per_year.typical;
    case Input::kDiscountRate:
      return terms.discount_rate.typical;
    case Input::kSourcePrice:
      return terms.sources[a.source].price_per_kWh.typical;
    case Input::kFuelForMass:
      return terms.carrying.L_per_100km_100kg.typical;
    case Input::kFuelPrice:
      break;
  }
  return terms.carrying.fuel_price_per_L.typical;
}

double cost_with(const Assumption& a, double value, PricedBank bank, Terms terms) {
  typical_of(a, bank, terms) = value;
  return costs_of(bank, terms).per_delivered_kWh;
}

/// Where a function of one sign at `low` and the other at `high` crosses 0.
double crossing(const std::function<double(double)>& f, double low, double high) {
  const bool falls = f(low) > 0.0;
  while (true) {
    const double middle = low + 0.5 * (high - low);
    if (middle <= std::min(low, high) || middle >= std::max(low, high)) return middle;
    ((f(middle) > 0.0) == falls ? low : high) = middle;
  }
}

class TwoBanks {
 public:
  TwoBanks(const PricedBank& first, const PricedBank& second, const Terms& terms)
      : first_(first), second_(second), terms_(terms) {}

  /// What the assumption does when it is moved in the first bank, in the second, or in both.
  Turn turn(const Assumption& a, bool in_first, bool in_second) const {
    const auto gap = [&](double value) { return gap_with(a, value, in_first, in_second); };
    Turn turn;
    turn.assumption = a;
    const double typical = gap(a.value.typical);
    turn.gap_at_least = gap(a.value.min);
    turn.gap_at_greatest = gap(a.value.max);
    turn.swing = std::max(std::abs(turn.gap_at_least - typical), std::abs(turn.gap_at_greatest - typical));
    if (typical * turn.gap_at_greatest < 0.0) {
      turn.even_at = crossing(gap, a.value.typical, a.value.max);
    } else if (typical * turn.gap_at_least < 0.0) {
      turn.even_at = crossing(gap, a.value.min, a.value.typical);
    }
    return turn;
  }

 private:
  double gap_with(const Assumption& a, double value, bool in_first, bool in_second) const {
    double of_second = value;
    if (a.input == Input::kDelivered) {
      // The same loads, so the same share more or less.
      of_second = second_.delivered_kWh_per_year.typical * value / a.value.typical;
    }
    const double first =
        in_first ? cost_with(a, value, first_, terms_) : costs_of(first_, terms_).per_delivered_kWh;
    const double second =
        in_second ? cost_with(a, of_second, second_, terms_) : costs_of(second_, terms_).per_delivered_kWh;
    return second - first;
  }

  const PricedBank& first_;
  const PricedBank& second_;
  const Terms& terms_;
};

base::Problems problems_of_both(const PricedBank& first, const PricedBank& second, const Terms& terms) {
  base::Problems problems = problems_of(first, terms);
  const base::Problems more = problems_of(second, terms);
  problems.insert(problems.end(), more.begin(), more.end());
  return problems;
}

}  // namespace

bool is_of_one_bank(Input input) {
  switch (input) {
    case Input::kPrice:
    case Input::kLife:
    case Input::kLifeLeft:
    case Input::kScrap:
    case Input::kUpkeep:
      return true;
    case Input::kDelivered:
    case Input::kDiscountRate:
    case Input::kSourcePrice:
    case Input::kFuelForMass:
    case Input::kFuelPrice:
      break;
  }
  return false;
}

std::vector<Assumption> assumptions_of(const PricedBank& bank, const Terms& terms) {
  const std::string& currency = terms.currency;
  std::vector<Assumption> all;
  all.push_back({Input::kPrice, 0, "price", currency, bank.price});
  all.push_back({Input::kLife, 0, "life", "years", bank.life_years});
  if (bank.fitted_now) all.push_back({Input::kLifeLeft, 0, "life left", "years", bank.life_left_years});
  all.push_back({Input::kDelivered, 0, "energy delivered", "kWh/year", bank.delivered_kWh_per_year});
  all.push_back({Input::kScrap, 0, "scrap value", currency, bank.scrap});
  all.push_back({Input::kUpkeep, 0, "upkeep", currency + "/year", bank.upkeep_per_year});
  all.push_back({Input::kDiscountRate, 0, "discount rate", "1/year", terms.discount_rate});
  for (std::size_t i = 0; i < terms.sources.size(); ++i) {
    const EnergySource& source = terms.sources[i];
    all.push_back({Input::kSourcePrice, i, "price of " + source.name + " energy", currency + "/kWh",
                   source.price_per_kWh});
  }
  const Carrying& c = terms.carrying;
  all.push_back({Input::kFuelForMass, 0, "fuel for mass", "L/(100 km 100 kg)", c.L_per_100km_100kg});
  all.push_back({Input::kFuelPrice, 0, "price of fuel", currency + "/L", c.fuel_price_per_L});
  return all;
}

base::Result<Tornado> tornado(const PricedBank& bank, const Terms& terms) {
  base::Problems problems = problems_of(bank, terms);
  if (!problems.empty()) return problems;
  Tornado answer;
  answer.typical = costs_of(bank, terms).per_delivered_kWh;
  double below = 0.0;
  double above = 0.0;
  for (Assumption& a : assumptions_of(bank, terms)) {
    Bar bar;
    bar.cost_at_least = cost_with(a, a.value.min, bank, terms);
    bar.cost_at_greatest = cost_with(a, a.value.max, bank, terms);
    const double one = bar.cost_at_least - answer.typical;
    const double other = bar.cost_at_greatest - answer.typical;
    bar.swing = std::max(std::abs(one), std::abs(other));
    const double down = std::min({one, other, 0.0});
    const double up = std::max({one, other, 0.0});
    below += down * down;
    above += up * up;
    bar.assumption = std::move(a);
    answer.bars.push_back(std::move(bar));
  }
  std::stable_sort(answer.bars.begin(), answer.bars.end(),
                   [](const Bar& a, const Bar& b) { return a.swing > b.swing; });
  answer.likely = {answer.typical - std::sqrt(below), answer.typical, answer.typical + std::sqrt(above)};
  return answer;
}

bool Ranking::flips() const {
  return std::any_of(turns.begin(), turns.end(), [](const Turn& turn) { return turn.even_at.has_value(); });
}

base::Result<Ranking> ranking_of(const PricedBank& first, const PricedBank& second, const Terms& terms) {
  base::Problems problems = problems_of_both(first, second, terms);
  if (!problems.empty()) return problems;
  Ranking answer;
  answer.first = costs_of(first, terms).per_delivered_kWh;
  answer.second = costs_of(second, terms).per_delivered_kWh;
  const TwoBanks banks(first, second, terms);
  for (const Assumption& a : assumptions_of(first, terms)) {
    const bool of_one = is_of_one_bank(a.input);
    answer.turns.push_back(banks.turn(a, true, !of_one));
    if (of_one) answer.turns.back().whose = Whose::kFirst;
  }
  for (const Assumption& a : assumptions_of(second, terms)) {
    if (!is_of_one_bank(a.input)) continue;
    answer.turns.push_back(banks.turn(a, false, true));
    answer.turns.back().whose = Whose::kSecond;
  }
  std::stable_sort(answer.turns.begin(), answer.turns.end(),
                   [](const Turn& a, const Turn& b) { return a.swing > b.swing; });
  return answer;
}

}  // namespace voltwright::cost
