#include "app/cost_json.h"

#include <cmath>

#include "app/json_parts.h"
#include "engine/advise/cost_words.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json year_json(const cost::Payback& payback) {
  return {{"years", payback.year ? number(*payback.year) : Json(nullptr)}, {"lasts", payback.lasts}};
}

Json assumption_json(const cost::Assumption& a) {
  return {{"input", a.name}, {"unit", a.unit}, {"value", range_json(a.value)}};
}

Json bar_json(const cost::Bar& bar) {
  Json json = assumption_json(bar.assumption);
  json["cost_at_min"] = number(bar.cost_at_least);
  json["cost_at_max"] = number(bar.cost_at_greatest);
  json["swing"] = number(bar.swing);
  return json;
}

const char* whose_name(cost::Whose whose) {
  switch (whose) {
    case cost::Whose::kFirst:
      return "shown bank";
    case cost::Whose::kSecond:
      return "other bank";
    case cost::Whose::kBoth:
      break;
  }
  return "both";
}

Json turn_json(const cost::Turn& turn) {
  Json json = {{"whose", whose_name(turn.whose)}};
  json.update(assumption_json(turn.assumption));
  json["gap_at_min"] = number(turn.gap_at_least);
  json["gap_at_max"] = number(turn.gap_at_greatest);
  json["swing"] = number(turn.swing);
  json["even_at"] = turn.even_at ? number(*turn.even_at) : Json(nullptr);
  return json;
}

Json against_json(const advise::Recommendation& answer, const advise::Against& against) {
  Json turns = Json::array();
  for (const cost::Turn& turn : against.ranking.turns) {
    if (turn.swing > 0.0) turns.push_back(turn_json(turn));
  }
  Json rates = Json::array();
  for (const double rate : against.comparison.internal_rates.rates) rates.push_back(number(rate));
  const cost::Comparison& c = against.comparison;
  return {{"bank", answer.ranking[against.other].trial.candidate.id()},
          {"fitted_now", answer.ranking[against.other].trial.candidate.fitted_now},
          {"saves", range_json(c.net_present_value)},
          {"internal_rates", std::move(rates)},
          {"payback",
           {{"pessimistic", year_json(c.pessimistic.discounted)},
            {"typical", year_json(c.typical.discounted)},
            {"optimistic", year_json(c.optimistic.discounted)},
            {"typical_without_interest", year_json(c.typical.simple)}}},
          {"gap_per_delivered_kWh", number(against.ranking.gap())},
          {"turns", std::move(turns)}};
}

/// Tornado and working of a bank whose cost is known.
Json working_json(const advise::Recommendation& answer, const advise::LifeCost& costs, std::size_t i) {
  const advise::BankCost& bank = costs.banks[i];
  Json tornado = Json::array();
  for (const cost::Bar& bar : bank.tornado.bars) {
    if (bar.swing > 0.0) tornado.push_back(bar_json(bar));
  }
  Json working = Json::array();
  for (const cost::WorkingLine& line : bank.life_cycle.working) {
    working.push_back(
        {{"name", line.name}, {"value", number(line.value)}, {"unit", line.unit}, {"how", line.words}});
  }
  return {{"bank", answer.ranking[i].trial.candidate.id()},
          {"fitted_now", answer.ranking[i].trial.candidate.fitted_now},
          {"tornado", std::move(tornado)},
          {"working", std::move(working)}};
}

}  // namespace

Json bank_cost_json(const advise::BankCost& bank) {
  if (!bank.known()) return {{"known", false}, {"problems", problem_list_json(bank.problems)}};
  const cost::LifeCycle& cycle = bank.life_cycle;
  Json json = {{"known", true},
               {"per_delivered_kWh", range_json(bank.tornado.likely)},
               {"per_delivered_kWh_at_all_ends", range_json(cycle.per_delivered_kWh)},
               {"per_usable_kWh", range_json(cycle.per_usable_kWh)},
               {"present_value", range_json(cycle.present_value)},
               {"annualised", range_json(cycle.annualised)},
               {"delivered_kWh_per_year", range_json(bank.bank.delivered_kWh_per_year)},
               {"life_years", range_json(bank.bank.life_years)},
               {"scrap", range_json(bank.bank.scrap)},
               {"bought", cycle.typical.bought}};
  if (bank.bank.fitted_now) json["life_left_years"] = range_json(bank.bank.life_left_years);
  const cost::Bar* decisive = bank.tornado.decisive();
  json["decisive"] = decisive != nullptr ? bar_json(*decisive) : Json(nullptr);
  return json;
}

Json cost_json(const advise::Recommendation& answer, const advise::LifeCost& costs) {
  Json sources = Json::array();
  for (const cost::EnergySource& source : costs.terms.sources)
    sources.push_back({{"source", source.name}, {"price_per_kWh", range_json(source.price_per_kWh)}});
  Json banks = Json::array();
  if (!costs.banks.empty() && costs.banks[costs.shown].known())
    banks.push_back(working_json(answer, costs, costs.shown));
  Json against = Json::array();
  for (const advise::Against& one : costs.against) {
    banks.push_back(working_json(answer, costs, one.other));
    against.push_back(against_json(answer, one));
  }
  return {{"currency", costs.terms.currency},
          {"horizon_years", costs.terms.horizon_years},
          {"discount_rate", range_json(costs.terms.discount_rate)},
          {"energy", std::move(sources)},
          {"sentences", advise::cost_sentences(answer, costs)},
          {"notes", costs.notes},
          {"banks", std::move(banks)},
          {"against", std::move(against)}};
}

}  // namespace voltwright::app
