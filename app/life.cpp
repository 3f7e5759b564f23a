#include "app/life.h"

#include <algorithm>

#include "app/advise.h"
#include "app/ageing_laws.h"
#include "app/parallel.h"
#include "app/simulate.h"
#include "engine/advise/wording.h"
#include "engine/ageing/depth_law.h"
#include "files/suggest.h"

namespace voltwright::app {

namespace {

using advise::figure;
using advise::percent;

base::Problem bank_problem(std::string what, std::string given, std::string remedy) {
  base::Problem problem;
  problem.field = "bank";
  problem.what = std::move(what);
  problem.given = std::move(given);
  problem.remedy = std::move(remedy);
  return problem;
}

/// The recommended bank by the search; the nearest if nothing holds.
base::Result<advise::Candidate> searched(const LifeRequest& request, const LifeResponse& response,
                                         const LifeProgress& progress, std::string& chosen) {
  const advise::Plan& plan = response.hand.plan;
  const files::Catalogue& catalogue = response.hand.catalogue;
  const std::vector<advise::Candidate> candidates =
      advise::candidates_of(plan, catalogue.chemistries, catalogue.batteries);
  if (candidates.empty())
    return bank_problem("No battery of the catalogue fits the plan's choice.", "",
                        "Widen [candidates], or name a bank with --bank.");
  const advise::Proving proving(plan, response.hand.skies, response.hand.climates.matrices());
  const advise::Recommendation answer = advise::recommend(
      plan,
      advise::prove(plan, proving, candidates, on_threads(request.threads), [&](int done, int planned, int) {
        if (progress)
          progress("finding a bank: season " + std::to_string(done) + " of " + std::to_string(planned));
      }));
  chosen = answer.best >= 0 ? "No bank was named and none is fitted now: the recommended one."
                            : "No bank was named, none is fitted now and none holds: the nearest.";
  return answer.ranking[static_cast<std::size_t>(std::max(0, answer.best))].trial.candidate;
}

base::Result<advise::Candidate> chosen_bank(const LifeRequest& request, LifeResponse& response,
                                            const LifeProgress& progress) {
  const advise::Plan& plan = response.hand.plan;
  const files::Catalogue& catalogue = response.hand.catalogue;
  advise::NamedBank named;
  if (!request.bank.empty()) {
    const auto parsed = parse_bank(request.bank, plan, catalogue);
    if (!parsed) return parsed.problems();
    named = parsed.value();
    response.chosen = "The bank that was named, new.";
  } else if (plan.incumbent) {
    named = *plan.incumbent;
    response.chosen = "No bank was named (--bank): what is fitted now, as it is now.";
  } else {
    return searched(request, response, progress, response.chosen);
  }
  if (request.in_parallel > 0) named.in_parallel = request.in_parallel;
  advise::Candidate candidate = advise::named_candidate(named, catalogue.chemistries, catalogue.batteries);
  if (candidate.battery == nullptr || !candidate.chemistry->simulated) {
    return bank_problem("This chemistry is not simulated yet.", named.battery,
                        candidate.chemistry != nullptr ? candidate.chemistry->not_simulated_because : "");
  }
  candidate.fitted_now = request.bank.empty();
  return candidate;
}

std::string sentence_of(const LifeResponse& r) {
  const advise::BankLife& life = r.life;
  if (life.laws.empty()) return life.gap;
  std::string text = r.candidate.name() + ": ";
  text += r.at_80.past ? "already down to 80 % of its capacity"
                       : "80 % of the capacity after " + advise::life_words(r.at_80);
  text += r.at_70.past ? ", already down to 70 %" : ", 70 % after " + advise::life_words(r.at_70);
  const std::string accepted = percent(units::as_fraction(r.hand.plan.limits.chance_of_shortfall));
  if (!life.carries_now) {
    const advise::Chance& now = life.levels.front().chance;
    const bool sure = now.low > units::as_fraction(r.hand.plan.limits.chance_of_shortfall);
    text += std::string(sure ? "; it does not carry" : "; it may not carry") +
            " the plan within the accepted chance of shortfall (" + accepted + ") as it is now: short in " +
            advise::chance_text(now.events, now.seasons, now.low, now.high);
  } else if (!life.plan_ends) {
    text += "; down to " + percent(life.levels.back().capacity) +
            " it still carries the plan within the accepted chance of shortfall (" + accepted + ")";
  } else {
    text += "; it carries the plan within the accepted chance of shortfall (" + accepted + ") for " +
            advise::life_words(r.plan);
  }
  text += ".";
  const advise::LawLife& leading = *life.leading();
  if (leading.reach == ageing::Reach::kOutside)
    text += " Outside data: no law was tested at such temperatures or charges.";
  if (leading.reach == ageing::Reach::kExtrapolated)
    text += " Extrapolated: longer or harder use than the tests behind it.";
  text += " What moves the dates most is the spread " + life.widest()->of + ".";
  return text;
}

std::vector<std::string> assumptions_of_life(const LifeResponse& r) {
  const advise::BankLife& life = r.life;
  std::vector<std::string> all;
  if (!r.hand.moved.empty()) all.push_back(r.hand.moved);
  all.push_back(r.chosen);
  constexpr double kWholeYear = 0.999;
  if (life.season_years < kWholeYear) {
    all.push_back(
        "The season comes once a year; for the rest of it the bank is left full and unused in the "
        "air outside where the journey ends, month by month at its mean.");
  } else {
    all.emplace_back("Seasons follow each other without a break.");
  }
  all.push_back(
      "Every " + percent(0.05) +
      " of capacity the seasons are run again with what is left and the resistance that goes with it; "
      "between them use is taken on straight lines. Few seasons stand for all years.");
  const bool is_lead = r.candidate.chemistry->plate_wear.has_value();
  all.push_back("Lives of like " + std::string(is_lead ? "blocks" : "cells") +
                " differ with a coefficient of variation of " + percent(life.life_spread) + " (" +
                life.spread_source + "); in a string the first worn one counts, so that the bank lasts " +
                percent(life.weakest_life) + " of the life of its mean cell.");
  all.emplace_back(
      "Doubt between laws, between cells and between years is taken as independent; no date is told finer "
      "than a quarter of itself.");
  return all;
}

std::vector<std::string> cautions_of_life(const LifeResponse& r) {
  std::vector<std::string> all;
  all.emplace_back(
      "No law here has a knee. Cells may fall off a cliff that none of these curves shows: measure the "
      "capacity once a year.");
  if (!r.life.gap.empty()) all.push_back(r.life.gap);
  if (const advise::LawLife* leading = r.life.leading())
    all.push_back("The leading account has its limits. " + leading->caution);
  if (r.candidate.chemistry->plate_wear) {
    all.emplace_back(
        "Worn lead-acid batteries gas more and may short inside. Ventilate, top up vented cells, and replace "
        "a block that runs warm on charge; local codes and a licensed person decide.");
  } else {
    all.emplace_back(
        "Worn lithium cells are no safer than new ones. Never charge below freezing or beyond the maker's "
        "limits to win life; local codes, the maker's instructions and a licensed person decide.");
  }
  return all;
}

}  // namespace

std::string reach_words(ageing::Reach reach) {
  switch (reach) {
    case ageing::Reach::kInside:
      return "within its data";
    case ageing::Reach::kExtrapolated:
      return "extrapolated";
    case ageing::Reach::kOutside:
      return "outside data";
  }
  return "";
}

std::string basis_words(ageing::Basis basis) {
  switch (basis) {
    case ageing::Basis::kMeasured:
      return "measured";
    case ageing::Basis::kLaw:
      return "published law";
    case ageing::Basis::kLifePoints:
      return "life points";
    case ageing::Basis::kHandbook:
      return "handbook figures";
  }
  return "";
}

base::Result<std::shared_ptr<const LifeResponse>> bank_life(const LifeRequest& request,
                                                            const LifeProgress& progress) {
  auto hand = plan_on_hand(request.plan_path, request.start);
  if (!hand) return hand.problems();
  const auto laws = files::read_ageing_catalogue();
  if (!laws) return laws.problems();
  auto response = std::make_shared<LifeResponse>();
  LifeResponse& r = *response;
  r.hand = std::move(hand).value();
  auto candidate = chosen_bank(request, r, progress);
  if (!candidate) return candidate.problems();
  r.candidate = std::move(candidate).value();

  const advise::Proving proving(r.hand.plan, r.hand.skies, r.hand.climates.matrices());
  advise::LifeQuestion question;
  question.plan = &r.hand.plan;
  question.skies = r.hand.skies;
  question.proving = &proving;
  question.candidate = r.candidate;
  question.speaking = speaking_for(*r.candidate.chemistry, laws.value());
  r.life = advise::bank_life(question, on_threads(request.threads), [&](int done, int planned) {
    if (progress)
      progress("ageing the bank: " + std::to_string(done) + " of " + std::to_string(planned) + " seasons");
  });
  for (const ageing::Opinion& opinion : question.speaking.opinions)
    r.over_measured.push_back(over_measured_first_year(r.candidate.chemistry->id, opinion, laws.value()));
  r.at_80 = advise::stated(r.life.at_80);
  r.at_70 = advise::stated(r.life.at_70);
  r.plan = advise::stated(r.life.plan);
  r.sentence = sentence_of(r);
  r.assumptions = assumptions_of_life(r);
  r.cautions = cautions_of_life(r);
  return std::shared_ptr<const LifeResponse>(response);
}

base::Result<LifeMapResponse> map_life(const std::string& chemistry) {
  const auto catalogue = files::read_catalogue();
  if (!catalogue) return catalogue.problems();
  const auto laws = files::read_ageing_catalogue();
  if (!laws) return laws.problems();
  const cell::Chemistry* found = catalogue.value().chemistry(chemistry);
  if (found == nullptr) {
    std::vector<std::string> ids;
    for (const cell::Chemistry& c : catalogue.value().chemistries) ids.push_back(c.id);
    const std::string near = files::nearest_word(chemistry, ids);
    base::Problem problem = bank_problem(
        "This chemistry is not in the catalogue.", chemistry,
        !near.empty() ? "Did you mean \"" + near + "\"?" : "See `voltwright catalogue chemistries`.");
    problem.field = "--map";
    return problem;
  }
  LifeMapResponse r;
  r.chemistry = found->id;
  r.name = found->name;
  r.catalogue_mark = catalogue.value().mark;
  r.speaking = speaking_for(*found, laws.value());
  const bool is_lead = found->plate_wear.has_value();
  // Weights depend on the order of events, which a made-up duty does not have: counting by depth alone
  // speaks.
  if (is_lead) r.speaking.opinions.erase(r.speaking.opinions.begin());
  r.map = ageing::life_map(r.speaking.opinions, is_lead);
  const ageing::YearOfUse year = ageing::year_of({});
  const std::string leads = ageing::said_life(r.speaking.opinions, year, 0.8).law;
  ageing::Habits habits;
  if (is_lead) habits.plates_doubling_K = found->plate_wear->corrosion.doubling_K;
  for (const ageing::Opinion& opinion : r.speaking.opinions) {
    if (opinion.id == leads) r.gains = ageing::what_helps(*opinion.law, year, {}, habits);
  }
  r.cautions.emplace_back(
      "Years of a mean cell at a made-up duty: a bank lasts less, as its weakest cell counts, and no law "
      "here "
      "has a knee.");
  if (!r.speaking.gap.empty()) r.cautions.push_back(r.speaking.gap);
  if (is_lead) {
    r.cautions.emplace_back(ageing::kDepthLawCaution);
    r.cautions.emplace_back(
        "Keep lead-acid full: a charge that stops short and a shelf at half charge harden its sulphate, "
        "which "
        "counting by depth does not show.");
  }
  return r;
}

}  // namespace voltwright::app
