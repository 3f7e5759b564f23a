#include "engine/advise/recommendation.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "engine/advise/wording.h"

namespace voltwright::advise {

namespace {

int missed(const Ranked& r) {
  return static_cast<int>(std::count_if(r.verdicts.begin(), r.verdicts.end(),
                                        [](const Verdict& v) { return v.holding == Holding::kFallsShort; }));
}

int place_of(Holding holding) {
  switch (holding) {
    case Holding::kHolds:
      return 0;
    case Holding::kNotKnown:
      return 1;
    case Holding::kFallsShort:
      return 2;
  }
  return 2;
}

double unmet_per_season(const Ranked& r) {
  return r.trial.count() > 0 ? r.trial.ledger.unmet_essential_Wh / r.trial.count() : 0.0;
}

auto order_key(const Plan& plan, const Ranked& r) {
  const bool fails = r.holding == Holding::kFallsShort;
  return std::make_tuple(r.trial.candidate.fitted_now, place_of(r.holding), fails ? missed(r) : 0,
                         fails ? unmet_per_season(r) : 0.0, preference_of(plan, r.trial),
                         r.trial.candidate.figures.mass_kg.typical, r.trial.candidate.id());
}

/// A name whose figures stay with their units at the end of a line: narrow no-break spaces before V and Ah.
std::string unbroken(std::string name) {
  for (const char* const unit : {" V", " Ah"}) {
    if (const std::size_t at = name.find(unit); at != std::string::npos) name.replace(at, 1, "\u202F");
  }
  return name;
}

std::string batteries_text(const Candidate& c) {
  if (c.count() == 1) return "one " + unbroken(c.battery->name) + " battery";
  static const char* const kNumbers[] = {"",      "",      "two",  "three", "four",   "five",  "six",
                                         "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  const std::string count = c.count() <= 12 ? kNumbers[c.count()] : std::to_string(c.count());
  return count + " " + unbroken(c.battery->name) + " batteries";
}

std::string first_sentence(const Plan& plan, const Ranked& best) {
  const bank::BankFigures& f = best.trial.candidate.figures;
  const units::Ranged years = best.trial.life_years();
  return "Fit " + batteries_text(best.trial.candidate) + ": " + figure(f.capacity_Ah, "Ah") + ", " +
         figure(f.mass_kg.typical, "kg") + ", " + figure(f.volume_L.typical, "L") + ", about " +
         price_text(plan, best.price) + " (" + figure(best.price.amount.min) + " to " +
         figure(best.price.amount.max) + "), for about " + figure(std::round(years.typical), "years") + " (" +
         figure(std::round(years.min)) + " to " + figure(std::round(years.max)) + ").";
}

std::string second_sentence(const Ranked& best) {
  const Chance chance = best.trial.chance();
  return "It ran short of essential loads in " +
         chance_text(chance.events, chance.seasons, chance.low, chance.high) +
         ", and was never emptier than " + percent(std::max(0.0, best.trial.deepest_charge)) + ".";
}

/// ", which holds: ", "; whether it holds is not known: ".
std::string which(Holding holding) {
  return holding == Holding::kNotKnown ? "; whether it holds is not known: "
                                       : ", which " + name_of(holding) + ": ";
}

std::string third_sentence(const Recommendation& answer) {
  if (answer.fitted_now >= 0) {
    const Ranked& now = answer.ranking[static_cast<std::size_t>(answer.fitted_now)];
    const Chance chance = now.trial.chance();
    return "What is fitted now, " + unbroken(now.trial.candidate.name()) + ", ran short in " +
           chance_text(chance.events, chance.seasons, chance.low, chance.high) + ".";
  }
  for (std::size_t i = 1; i < answer.ranking.size(); ++i) {
    const Ranked& r = answer.ranking[i];
    if (r.trial.candidate.chemistry == answer.ranking[0].trial.candidate.chemistry) continue;
    return "The nearest of another chemistry is " + unbroken(r.trial.candidate.name()) + which(r.holding) +
           r.reason;
  }
  return "No other chemistry was among the candidates.";
}

std::string needs_sentence(const Ranked& r) {
  std::string changes;
  for (const Verdict& v : r.verdicts) {
    if (v.holding == Holding::kHolds || v.remedy.empty()) continue;
    // An open count of seasons says nothing where another limit is missed anyway.
    if (v.holding == Holding::kNotKnown && r.holding == Holding::kFallsShort) continue;
    if (!changes.empty()) changes += " ";
    changes += v.reason + " " + v.remedy;
  }
  return changes;
}

std::vector<WouldNeed> needs_of_others(const std::vector<Ranked>& ranking) {
  std::vector<WouldNeed> needs;
  std::map<const cell::Chemistry*, const Ranked*> nearest;
  std::map<const cell::Chemistry*, bool> holds;
  std::vector<const cell::Chemistry*> order;
  for (const Ranked& r : ranking) {
    if (r.trial.candidate.fitted_now) continue;
    const cell::Chemistry* chemistry = r.trial.candidate.chemistry;
    if (!nearest.contains(chemistry)) {
      nearest[chemistry] = &r;
      order.push_back(chemistry);
    }
    holds[chemistry] |= r.holding == Holding::kHolds;
  }
  for (const cell::Chemistry* chemistry : order) {
    if (holds[chemistry]) continue;
    const Ranked& r = *nearest[chemistry];
    needs.push_back({chemistry->plain_name, r.trial.candidate.name(), needs_sentence(r)});
  }
  return needs;
}

/// Ran short in no season, and a smaller bank of the same battery holds: more of it cannot run short where
/// less did not, so its few seasons are enough.
bool carried_by_a_smaller_one(const Ranked& r, const std::vector<Ranked>& all) {
  if (r.trial.chance().events > 0 || r.trial.candidate.fitted_now) return false;
  return std::any_of(all.begin(), all.end(), [&](const Ranked& other) {
    return other.trial.candidate.battery == r.trial.candidate.battery && !other.trial.candidate.fitted_now &&
           other.trial.candidate.count() < r.trial.candidate.count() &&
           other.verdicts.front().holding == Holding::kHolds;
  });
}

void settle(Ranked& r) {
  r.holding = overall(r.verdicts);
  const Verdict* first = decisive(r.verdicts);
  r.reason = first != nullptr ? first->reason : r.verdicts.front().reason;
  r.brief = first != nullptr ? first->brief : r.verdicts.front().brief;
}

}  // namespace

Preferred preference_of(const Plan& plan, const Trial& trial) {
  if (plan.preference == Preference::kMass) return {false, trial.candidate.figures.mass_kg.typical};
  const cost::Sum price = price_of(plan, trial.candidate);
  const bool other = !counts_in(plan, price);
  if (plan.preference == Preference::kPrice) return {other, price.amount.typical};
  const double years = trial.life_years().typical;
  return {other, years > 0.0 ? price.amount.typical / years : price.amount.typical};
}

std::string price_currency_of(const Recommendation& answer) {
  if (answer.ranking.empty()) return {};
  const std::string& first = answer.ranking.front().price.currency;
  const bool all = std::all_of(answer.ranking.begin(), answer.ranking.end(),
                               [&](const Ranked& r) { return r.price.currency == first; });
  return all ? first : std::string();
}

Recommendation recommend(const Plan& plan, std::vector<Trial> trials) {
  Recommendation answer;
  for (Trial& trial : trials) {
    Ranked r;
    r.trial = std::move(trial);
    r.verdicts = verdicts_on(plan, r.trial);
    settle(r);
    const double years = r.trial.life_years().typical;
    r.price = price_of(plan, r.trial.candidate);
    r.cost_per_year = years > 0.0 ? r.price.amount.typical / years : 0.0;
    answer.ranking.push_back(std::move(r));
  }
  for (Ranked& r : answer.ranking) {
    if (r.verdicts.front().holding != Holding::kNotKnown || !carried_by_a_smaller_one(r, answer.ranking))
      continue;
    Verdict& v = r.verdicts.front();
    v.holding = Holding::kHolds;
    v.reason += " A smaller bank of the same battery holds.";
    v.brief = "larger than one that holds";
    v.remedy.clear();
    settle(r);
  }
  std::stable_sort(answer.ranking.begin(), answer.ranking.end(),
                   [&](const Ranked& a, const Ranked& b) { return order_key(plan, a) < order_key(plan, b); });
  for (std::size_t i = 0; i < answer.ranking.size(); ++i) {
    if (answer.ranking[i].trial.candidate.fitted_now) answer.fitted_now = static_cast<int>(i);
  }
  answer.would_need = needs_of_others(answer.ranking);
  if (!answer.ranking.empty() && answer.ranking[0].holding == Holding::kHolds &&
      !answer.ranking[0].trial.candidate.fitted_now) {
    answer.best = 0;
    answer.sentences = {first_sentence(plan, answer.ranking[0]), second_sentence(answer.ranking[0]),
                        third_sentence(answer)};
  } else if (!answer.ranking.empty()) {
    const Ranked& nearest = answer.ranking[0];
    const bool open = nearest.holding == Holding::kNotKnown;
    answer.sentences = {
        open ? "Of nothing here it is known that it holds." : "Nothing here holds.",
        "Nearest is " + unbroken(nearest.trial.candidate.name()) + which(nearest.holding) + nearest.reason,
        needs_sentence(nearest)};
  }
  return answer;
}

}  // namespace voltwright::advise
