#include "engine/advise/life_cost.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/advise/fuel.h"
#include "engine/advise/wording.h"
#include "engine/cost/charging.h"

namespace voltwright::advise {

namespace {

constexpr double kMinutesPerYear = 60.0 * 8766.0;
constexpr double kWhPerKilowattHour = 1000.0;
constexpr double kShortestLife_years = 0.05;  // what the cost reckons with
constexpr double kLossAtEndOfLife = 0.2;

double seasons_of(const Trial& trial) { return std::max(1, trial.count()); }

std::vector<cost::SourceEnergy> sources_of(const season::Ledger<double>& l) {
  return {{"solar", l.solar_Wh / kWhPerKilowattHour}, {"wind", l.wind_Wh / kWhPerKilowattHour},
          {"water", l.water_Wh / kWhPerKilowattHour}, {"engine", l.engine_Wh / kWhPerKilowattHour},
          {"mains", l.mains_Wh / kWhPerKilowattHour}, {"generator", l.generator_Wh / kWhPerKilowattHour}};
}

units::Ranged over(const units::Ranged& range, double divisor) {
  return {range.min / divisor, range.typical / divisor, range.max / divisor};
}

/// Energy out of the bank in a year [kWh]: the mean, and years that are all like the leanest or richest
/// season.
units::Ranged delivered_per_year(const Trial& trial) {
  const double season_years = trial.minutes / kMinutesPerYear;
  if (!(season_years > 0.0) || trial.seasons.empty()) return {};
  const double scale = 1.0 / (kWhPerKilowattHour * season_years);
  const double mean = trial.ledger.discharged_Wh / seasons_of(trial) * scale;
  units::Ranged range = {mean, mean, mean};
  for (const SeasonNote& s : trial.seasons) {
    range.min = std::min(range.min, s.discharged_Wh * scale);
    range.max = std::max(range.max, s.discharged_Wh * scale);
  }
  return range;
}

units::Ranged no_shorter(const units::Ranged& life) {
  return {std::max(life.min, kShortestLife_years), std::max(life.typical, kShortestLife_years),
          std::max(life.max, kShortestLife_years)};
}

/// Share of its life that a bank has left that has lost so much of its capacity: in proportion to 80 %.
double share_left(double lost_capacity) {
  return std::clamp(1.0 - lost_capacity / kLossAtEndOfLife, 0.0, 1.0);
}

class Pricing {
 public:
  Pricing(const Plan& plan, const cost::RunningFacts& facts)
      : plan_(plan), facts_(facts), money_(plan.money.value_or(cost::Money{})) {}

  /// Sources that any bank was given energy by; the litres of a generator set are those of `shown`,
  /// or of the first bank that it charges.
  cost::Terms terms(const std::vector<Ranked>& ranking, const Trial& shown) {
    cost::Terms terms = cost::terms_of(money_, facts_, plan_.currency);
    if (!plan_.money) {
      notes_.push_back("The plan has no [money]: " + figure(money_.horizon_years, "years") + " and " +
                       percent(money_.discount_rate.typical) + " a year beyond inflation are assumptions.");
    }
    std::vector<FuelUse> fuel = fuel_of(plan_, shown.ledger, seasons_of(shown));
    std::vector<cost::SourceEnergy> used = sources_of({});
    for (const Ranked& r : ranking) {
      const std::vector<cost::SourceEnergy> one = sources_of(r.trial.ledger);
      for (std::size_t i = 0; i < used.size(); ++i) used[i].kWh += one[i].kWh;
      const std::vector<FuelUse> burnt = fuel_of(plan_, r.trial.ledger, seasons_of(r.trial));
      for (std::size_t i = 0; i < fuel.size(); ++i) {
        if (!(fuel[i].energy_Wh > 0.0)) fuel[i] = burnt[i];
      }
    }
    for (const cost::SourceEnergy& source : used) {
      if (source.kWh > 0.0) terms.sources.push_back({source.name, price_of_energy(source.name, fuel)});
    }
    return terms;
  }

  cost::PricedBank bank(const Ranked& r, const units::Ranged& life) const {
    const Trial& trial = r.trial;
    const Candidate& c = trial.candidate;
    const double usable_depth = plan_.depth_rule == DepthRule::kPractice ? c.chemistry->usable_depth : 1.0;
    cost::PricedBank bank;
    bank.name = c.name() + (c.fitted_now ? " (fitted now)" : "");
    bank.currency = r.price.currency;
    bank.price_year = r.price.year;
    bank.price = r.price.amount;
    bank.usable_kWh = c.figures.nominal_Wh / kWhPerKilowattHour * usable_depth;
    bank.delivered_kWh_per_year = delivered_per_year(trial);
    bank.life_years = no_shorter(life);
    bank.fitted_now = c.fitted_now;
    const double left = share_left(c.layout.lost_capacity);
    bank.life_left_years = {left * life.min, left * life.typical, left * life.max};
    bank.mass_kg = c.figures.mass_kg.typical;
    bank.charging = cost::charging_of(sources_of(trial.ledger), trial.ledger.charged_Wh / kWhPerKilowattHour,
                                      trial.ledger.discharged_Wh / kWhPerKilowattHour);
    bank.scrap =
        cost::scrap_of(money_, facts_, plan_.currency, c.chemistry->id, bank.mass_kg, bank.price.min);
    bank.upkeep_per_year = money_.upkeep_per_year.value_or(units::Ranged{});
    return bank;
  }

  /// What else was assumed, after terms().
  std::vector<std::string> notes(const Trial& shown, const BankCost* now) {
    const double season_years = shown.minutes / kMinutesPerYear;
    constexpr double kNearlyAYear = 0.02;
    if (std::abs(season_years - 1.0) > kNearlyAYear) {
      notes_.emplace_back("A year is taken as seasons like these, one after the other.");
    }
    const bool drives = std::any_of(plan_.legs.begin(), plan_.legs.end(), [](const journey::Leg& leg) {
      return units::as_seconds(leg.drive_per_day) > 0.0;
    });
    if (drives && !(money_.km_per_year > 0.0)) {
      notes_.emplace_back("The mass of the bank costs no fuel: [money] gives no distance.");
    }
    if (now != nullptr) {
      constexpr double kTenths = 10.0;
      const double left = std::round(now->bank.life_left_years.typical * kTenths) / kTenths;
      notes_.push_back(left > 0.0 ? "What is fitted now is paid. Of its life to 80\u202F% of capacity " +
                                        figure(left, "years") +
                                        " are left, in proportion to the capacity that it has lost; then the "
                                        "same is bought."
                                  : "What is fitted now is worn to 80\u202F% of its capacity: the same is "
                                    "bought now.");
    }
    notes_.emplace_back("The cost of running short, and of other parts that a change needs, is not counted.");
    return std::move(notes_);
  }

 private:
  /// In the plan's currency for each kWh at the bus; what is not known counts as 0 and is noted.
  units::Ranged price_of_energy(const std::string& source, const std::vector<FuelUse>& fuel) {
    if (source == "mains") {
      if (money_.mains_per_kWh)
        return over(*money_.mains_per_kWh, plan_.mains ? plan_.mains->efficiency : 1.0);
      notes_.emplace_back("Mains energy counts as free: [money] gives no price of electricity.");
      return {};
    }
    if (source != "engine" && source != "generator") return {};
    const auto use =
        std::find_if(fuel.begin(), fuel.end(), [&](const FuelUse& f) { return f.source == source; });
    if (money_.fuel_per_L && use != fuel.end()) return cost::fuel_energy_price(money_, use->L_per_kWh());
    notes_.push_back("Energy of the " + source + " counts as free: " +
                     (use == fuel.end() ? "[engine] names no fuel." : "[money] gives no price of fuel."));
    return {};
  }

  const Plan& plan_;
  const cost::RunningFacts& facts_;
  cost::Money money_;
  std::vector<std::string> notes_;
};

BankCost reckon(const Plan& plan, const Ranked& r, cost::PricedBank bank, const cost::Terms& terms) {
  BankCost one;
  one.bank = std::move(bank);
  const base::Result<cost::LifeCycle> cycle = cost::life_cycle(one.bank, terms);
  const base::Result<cost::Tornado> tornado = cost::tornado(one.bank, terms);
  if (cycle && tornado) {
    one.life_cycle = cycle.value();
    one.tornado = tornado.value();
    return one;
  }
  one.problems = cycle ? tornado.problems() : cycle.problems();
  if (!counts_in(plan, r.price) && !one.problems.empty()) {
    one.problems.front().remedy = price_remedy(plan, r.price, r.trial.candidate.battery->id);
  }
  return one;
}

/// The bank fitted now, and the nearest one of another chemistry than the shown.
std::vector<std::size_t> others(const Recommendation& answer, std::size_t shown) {
  std::vector<std::size_t> found;
  if (answer.fitted_now >= 0 && static_cast<std::size_t>(answer.fitted_now) != shown) {
    found.push_back(static_cast<std::size_t>(answer.fitted_now));
  }
  const cell::Chemistry* chemistry = answer.ranking[shown].trial.candidate.chemistry;
  for (std::size_t i = 0; i < answer.ranking.size(); ++i) {
    const Candidate& c = answer.ranking[i].trial.candidate;
    if (c.fitted_now || c.chemistry == chemistry) continue;
    found.push_back(i);
    break;
  }
  return found;
}

}  // namespace

LifeCost life_cost(const Plan& plan, const cost::RunningFacts& facts, const Recommendation& answer,
                   std::span<const std::optional<units::Ranged>> lives) {
  LifeCost all;
  if (answer.ranking.empty()) return all;
  all.shown = answer.best >= 0 ? static_cast<std::size_t>(answer.best) : 0;
  const Trial& shown = answer.ranking[all.shown].trial;
  Pricing pricing(plan, facts);
  all.terms = pricing.terms(answer.ranking, shown);
  for (std::size_t i = 0; i < answer.ranking.size(); ++i) {
    const Ranked& r = answer.ranking[i];
    const units::Ranged life =
        i < lives.size() ? lives[i].value_or(r.trial.life_years()) : r.trial.life_years();
    all.banks.push_back(reckon(plan, r, pricing.bank(r, life), all.terms));
  }
  const BankCost* now =
      answer.fitted_now >= 0 ? &all.banks[static_cast<std::size_t>(answer.fitted_now)] : nullptr;
  all.notes = pricing.notes(shown, now);
  const cost::PricedBank& first = all.banks[all.shown].bank;
  for (const std::size_t i : others(answer, all.shown)) {
    const base::Result<cost::Comparison> comparison = cost::compare(first, all.banks[i].bank, all.terms);
    const base::Result<cost::Ranking> ranking = cost::ranking_of(first, all.banks[i].bank, all.terms);
    if (comparison && ranking) all.against.push_back({i, comparison.value(), ranking.value()});
  }
  return all;
}

}  // namespace voltwright::advise
