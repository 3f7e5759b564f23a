#include "app/json.h"
#include "app/json_parts.h"
#include "app/life.h"
#include "app/version.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

Json told_json(const advise::StatedLife& life) {
  return {{"words", advise::life_words(life)},
          {"years", range_json(life.years)},
          {"longer", life.longer},
          {"most_longer", life.most_longer},
          {"past", life.past}};
}

Json end_json(const std::optional<double>& years) { return years ? Json(*years) : Json(nullptr); }

Json law_json(const advise::LawLife& law, double over_measured) {
  Json json = {{"id", law.id},
               {"name", law.name},
               {"basis", basis_words(law.basis)},
               {"reach", reach_words(law.reach)},
               {"counted", law.counted},
               {"leads", law.leads},
               {"to_80_years", end_json(law.ends.at_80)},
               {"to_70_years", end_json(law.ends.at_70)},
               {"plan_years", end_json(law.ends.plan)},
               {"source", law.source},
               {"caution", law.caution}};
  if (over_measured > 0.0) json["loss_over_measured_first_year"] = over_measured;
  Json course = Json::array();
  for (const ageing::LifeMoment& point : law.course)
    course.push_back({{"years", point.years}, {"capacity", point.capacity}, {"carried", point.carried}});
  json["course"] = course;
  return json;
}

Json gains_json(const std::vector<ageing::Gain>& gains) {
  Json json = Json::array();
  for (const ageing::Gain& gain : gains) {
    json.push_back({{"habit", gain.habit},
                    {"times", gain.times},
                    {"before_years", gain.before_years},
                    {"after_years", gain.after_years},
                    {"note", gain.note}});
  }
  return json;
}

Json mapped_json(const std::vector<ageing::Mapped>& duties) {
  Json json = Json::array();
  for (const ageing::Mapped& one : duties) {
    json.push_back({{"temperature_C", one.duty.temperature_C},
                    {"depth", one.duty.depth},
                    {"top_soc", one.duty.top_soc},
                    {"years", range_json(one.life.years)},
                    {"told", advise::life_words(advise::stated(one.life.years))},
                    {"law", one.life.law},
                    {"reach", reach_words(one.life.reach)}});
  }
  return json;
}

}  // namespace

std::string to_json(const LifeResponse& r) {
  Json json;
  json["stamp"] = {{"format", kAnswerFormat},
                   {"engine", kVersion},
                   {"catalogue_mark", r.hand.catalogue.mark},
                   {"plan_mark", r.hand.plan_mark},
                   {"seed", r.hand.plan.seed}};
  json["plan"] = r.hand.plan.name;
  json["bank"] = {{"id", r.candidate.id()},
                  {"name", r.candidate.name()},
                  {"chemistry", r.candidate.chemistry->id},
                  {"present_capacity", r.life.present},
                  {"chosen", r.chosen}};
  json["sentence"] = r.sentence;
  json["at_80"] = told_json(r.at_80);
  json["at_70"] = told_json(r.at_70);
  json["plan_end"] = told_json(r.plan);
  json["plan_end"]["found"] = r.life.plan_ends;
  json["plan_end"]["carries_now"] = r.life.carries_now;
  json["full_cycles_per_year"] = r.life.cycles_per_year;
  json["season_years"] = r.life.season_years;
  Json doubts = Json::array();
  for (const advise::Doubt& doubt : r.life.doubts)
    doubts.push_back({{"of", doubt.of}, {"least", doubt.least}, {"most", doubt.most}});
  json["doubts"] = doubts;
  json["moves_most"] = r.life.widest() != nullptr ? Json(r.life.widest()->of) : Json(nullptr);
  json["life_spread"] = r.life.life_spread;
  json["life_spread_source"] = r.life.spread_source;
  json["bank_over_mean_cell"] = r.life.weakest_life;
  Json laws = Json::array();
  for (std::size_t i = 0; i < r.life.laws.size(); ++i)
    laws.push_back(law_json(r.life.laws[i], i < r.over_measured.size() ? r.over_measured[i] : 0.0));
  json["laws"] = laws;
  Json levels = Json::array();
  for (const advise::Level& level : r.life.levels) {
    levels.push_back({{"capacity", level.capacity},
                      {"resistance_factor", level.resistance_factor},
                      {"seasons", level.chance.seasons},
                      {"short_seasons", level.chance.events},
                      {"chance_low", level.chance.low},
                      {"chance_high", level.chance.high}});
  }
  json["levels"] = levels;
  json["what_makes_it_last"] = gains_json(r.life.gains);
  json["gap"] = r.life.gap;
  json["assumptions"] = r.assumptions;
  json["cautions"] = r.cautions;
  json["warnings"] = problem_list_json(r.hand.warnings);
  return json_text(json);
}

std::string to_json(const LifeMapResponse& r) {
  Json json;
  json["stamp"] = {{"format", kAnswerFormat}, {"engine", kVersion}, {"catalogue_mark", r.catalogue_mark}};
  json["chemistry"] = {{"id", r.chemistry}, {"name", r.name}};
  json["by_depth"] = mapped_json(r.map.by_depth);
  json["by_ceiling"] = mapped_json(r.map.by_ceiling);
  json["by_storage"] = mapped_json(r.map.by_storage);
  json["what_makes_it_last"] = gains_json(r.gains);
  json["cautions"] = r.cautions;
  return json_text(json);
}

}  // namespace voltwright::app
