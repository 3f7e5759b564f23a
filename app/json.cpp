#include "app/json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "app/cost_json.h"
#include "app/json_parts.h"
#include "app/version.h"
#include "engine/advise/caution.h"
#include "engine/advise/fuel.h"
#include "engine/advise/price.h"
#include "files/utc_text.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

/// JSON has no infinity: such a number becomes null.
Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json ranged(const units::Ranged& r) {
  return {{"min", number(r.min)}, {"typical", number(r.typical)}, {"max", number(r.max)}};
}

Json bank_json(const advise::Plan& plan, const advise::Candidate& c) {
  const cost::Sum price = advise::price_of(plan, c);
  return {{"id", c.id()},
          {"name", c.name()},
          {"chemistry", c.chemistry->id},
          {"in_series", c.layout.in_series},
          {"in_parallel", c.layout.in_parallel},
          {"capacity_Ah", c.figures.capacity_Ah},
          {"nominal_V", c.figures.nominal_V},
          {"nominal_Wh", c.figures.nominal_Wh},
          {"mass_kg", ranged(c.figures.mass_kg)},
          {"volume_L", ranged(c.figures.volume_L)},
          {"price", ranged(price.amount)},
          {"price_currency", price.currency},
          {"price_year", price.year},
          {"price_from", price.from_plan ? "plan" : "catalogue"},
          {"fitted_now", c.fitted_now}};
}

Json fuel_json(const advise::FuelUse& use) {
  Json json = {{"source", use.source}, {"energy_Wh", use.energy_Wh}, {"fuel_L", use.litres}};
  if (use.source == "generator") json["run_h"] = use.run_h;
  json["fuel_L_per_kWh"] = use.L_per_kWh();
  return json;
}

/// Keys of sources that not every plan has.
void add_rarer_sources(const advise::Plan& plan, const season::Ledger<double>& l, double seasons,
                       Json& json) {
  Json& in = json["in"];
  if (plan.wind) in["wind_Wh"] = l.wind_Wh / seasons;
  if (plan.water) in["water_Wh"] = l.water_Wh / seasons;
  if (plan.generator) in["generator_Wh"] = l.generator_Wh / seasons;
  const std::vector<advise::FuelUse> fuel = advise::fuel_of(plan, l, seasons);
  for (const advise::FuelUse& use : fuel) json["fuel"].push_back(fuel_json(use));
}

Json ledger_json(const advise::Plan& plan, const season::Ledger<double>& l, double seasons) {
  const auto per = [&](double x) { return x / seasons; };
  Json json = {{"in",
                {{"solar_Wh", per(l.solar_Wh)},
                 {"engine_Wh", per(l.engine_Wh)},
                 {"mains_Wh", per(l.mains_Wh)},
                 {"drawn_from_store_Wh", per(l.drawn_from_store_Wh)}}},
               {"out",
                {{"direct_loads_Wh", per(l.direct_Wh)},
                 {"inverter_input_Wh", per(l.inverter_Wh)},
                 {"heater_Wh", per(l.heater_Wh)},
                 {"inverter_cable_Wh", per(l.inverter_cable_Wh)},
                 {"far_cable_Wh", per(l.far_cable_Wh)},
                 {"main_cable_Wh", per(l.main_cable_Wh)},
                 {"resistance_Wh", per(l.resistance_Wh)},
                 {"relaxation_Wh", per(l.relaxing_Wh)},
                 {"side_reaction_Wh", per(l.side_Wh)},
                 {"self_discharge_Wh", per(l.self_discharge_Wh)}}},
               {"in_sum_Wh", per(l.in_Wh())},
               {"out_sum_Wh", per(l.out_Wh())},
               {"charged_Ah", per(l.charged_Ah)},
               {"discharged_Ah", per(l.discharged_Ah)},
               {"solar_left_Wh", per(l.solar_left_Wh)},
               {"unmet_Wh", per(l.unmet_Wh)},
               {"unmet_essential_Wh", per(l.unmet_essential_Wh)},
               {"short_h", per(l.short_h)},
               {"charge_blocked_h", per(l.charge_blocked_h)},
               {"loads_off_h", per(l.loads_off_h)},
               {"inverter_off_h", per(l.inverter_off_h)},
               {"drawn_while_charge_blocked_Wh", per(l.drawn_blocked_Wh)},
               {"far_loads_off_h", per(l.far_off_h)},
               {"over_current_h", per(l.over_current_h)},
               {"frozen_h", per(l.frozen_h)},
               {"locked_out_h", per(l.unwoken_h)},
               {"load_dumps", per(l.load_dumps)},
               {"failed_starts", per(l.failed_starts)}};
  add_rarer_sources(plan, l, seasons, json);
  return json;
}

Json verdict_json(const advise::Verdict& v) {
  return {{"matter", advise::name_of(v.matter)},
          {"verdict", advise::name_of(v.holding)},
          {"value", number(v.value)},
          {"limit", number(v.limit)},
          {"unit", v.unit},
          {"reason", v.reason},
          {"remedy", v.remedy}};
}

Json cautions_json(const std::vector<advise::Caution>& cautions) {
  Json all = Json::array();
  for (const advise::Caution& c : cautions) all.push_back({{"matter", c.title}, {"text", c.text}});
  return all;
}

Json ranked_json(const advise::Plan& plan, const advise::Ranked& r, const advise::BankCost& cost) {
  const advise::Trial& t = r.trial;
  const advise::Chance chance = t.chance();
  Json verdicts = Json::array();
  for (const advise::Verdict& v : r.verdicts) verdicts.push_back(verdict_json(v));
  return {
      {"bank", bank_json(plan, t.candidate)},
      {"verdict", advise::name_of(r.holding)},
      {"reason", r.reason},
      {"seasons", chance.seasons},
      {"seasons_short", chance.events},
      {"chance_of_shortfall", {{"share", chance.share}, {"low_95", chance.low}, {"high_95", chance.high}}},
      {"life_years", ranged(t.life_years())},
      {"cost_per_year", number(r.cost_per_year)},
      {"cost", bank_cost_json(cost)},
      {"lowest_state_of_charge", t.deepest_charge},
      {"coldest_C", t.coldest_C},
      {"hottest_C", t.hottest_C},
      {"highest_discharge_A", t.highest_discharge_A},
      {"highest_charge_A", t.highest_charge_A},
      {"highest_start_A", t.highest_surge_A},
      {"verdicts", std::move(verdicts)},
      {"cautions", cautions_json(advise::cautions_of(plan, t))},
      {"ledger_per_season", ledger_json(plan, t.ledger, std::max(1, t.count()))}};
}

const char* event_name(season::EventKind kind) {
  switch (kind) {
    case season::EventKind::kShort:
      return "short";
    case season::EventKind::kChargeBlocked:
      return "charging blocked";
    case season::EventKind::kLoadsOff:
      return "loads off";
    case season::EventKind::kInverterTrip:
      return "inverter off";
    case season::EventKind::kFailedStart:
      return "start failed";
    case season::EventKind::kCollapse:
      return "voltage collapse";
    case season::EventKind::kFarLoadOff:
      return "far load off";
    case season::EventKind::kOverCurrent:
      return "over-current";
    case season::EventKind::kLoadDump:
      return "load dump";
    case season::EventKind::kFrozen:
      return "frozen";
    case season::EventKind::kLockedOut:
      return "locked out";
  }
  return "";
}

Json season_json(const advise::Plan& plan, const ShownSeason& s) {
  Json events = Json::array();
  for (const season::Event& e : s.fared.events) {
    events.push_back({{"kind", event_name(e.kind)},
                      {"start_utc", files::utc_text(e.start_utc_s)},
                      {"minutes", e.minutes},
                      {"unmet_Wh", e.energy_Wh}});
  }
  return {{"season", s.season},
          {"lowest_state_of_charge", s.fared.lowest_charge},
          {"lowest_at_utc", files::utc_text(s.fared.lowest_charge_utc_s)},
          {"state_of_charge_at_end", s.fared.charge_at_end},
          {"lowest_V", s.fared.lowest_V},
          {"highest_V", s.fared.highest_V},
          {"coldest_C", s.fared.coldest_C},
          {"hottest_C", s.fared.hottest_C},
          {"ledger", ledger_json(plan, s.fared.ledger, 1.0)},
          {"events", std::move(events)}};
}

Json problems_json(const base::Problems& problems) {
  Json all = Json::array();
  for (const base::Problem& p : problems) {
    all.push_back({{"severity", p.severity == base::Severity::kError ? "error" : "warning"},
                   {"file", p.where.file},
                   {"line", p.where.line},
                   {"column", p.where.column},
                   {"field", p.field},
                   {"what", p.what},
                   {"given", p.given},
                   {"limit", p.limit},
                   {"remedy", p.remedy}});
  }
  return all;
}

Json stamp(const PlanOnHand& hand) {
  return {{"format", kAnswerFormat},
          {"engine", kVersion},
          {"plan", hand.plan.name},
          {"plan_mark", hand.plan_mark},
          {"catalogue_mark", hand.catalogue.mark},
          {"journey_moved", hand.moved},
          {"seed", hand.plan.seed}};
}

/// Text that a person typed may hold bytes that are not UTF-8; they are replaced.
std::string dump(const Json& json) { return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"; }

}  // namespace

Json range_json(const units::Ranged& range) { return ranged(range); }
Json problem_list_json(const base::Problems& problems) { return problems_json(problems); }
std::string json_text(const Json& json) { return dump(json); }

std::string to_json(const AdviseResponse& response) {
  Json json;
  json["stamp"] = stamp(response.hand);
  json["recommendation"] = response.answer.sentences;
  json["demand_Wh_day"] = response.demand_Wh_day;
  json["ranking"] = Json::array();
  for (std::size_t i = 0; i < response.answer.ranking.size(); ++i) {
    json["ranking"].push_back(
        ranked_json(response.hand.plan, response.answer.ranking[i], response.costs.banks[i]));
  }
  json["cost"] = cost_json(response.answer, response.costs);
  json["would_need"] = Json::array();
  for (const advise::WouldNeed& w : response.answer.would_need) {
    json["would_need"].push_back({{"chemistry", w.chemistry}, {"bank", w.bank}, {"sentence", w.sentence}});
  }
  json["solar_findings"] = Json::array();
  for (const advise::SunFinding& f : response.sun_findings) {
    json["solar_findings"].push_back({{"array", f.array},
                                      {"matter", f.matter},
                                      {"holds", f.holds},
                                      {"value", number(f.value)},
                                      {"limit", number(f.limit)},
                                      {"unit", f.unit},
                                      {"working", f.working},
                                      {"say", f.say}});
  }
  json["worst_season"] = season_json(response.hand.plan, response.worst);
  json["median_season"] = season_json(response.hand.plan, response.median);
  json["assumptions"] = assumptions_of(response.hand);
  json["warnings"] = problems_json(response.hand.warnings);
  return dump(json);
}

std::string to_json(const SimulateResponse& response) {
  Json json;
  json["stamp"] = stamp(response.hand);
  json["bank"] = bank_json(response.hand.plan, response.candidate);
  json["season"] = season_json(response.hand.plan, response.shown);
  json["warnings"] = problems_json(response.hand.warnings);
  return dump(json);
}

std::string to_json(const base::Problems& problems) {
  return dump(Json{{"problems", problems_json(problems)}});
}

}  // namespace voltwright::app
