#include "app/chart.h"
#include "app/json.h"
#include "app/json_parts.h"
#include "app/version.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

const char* name_of(chart::Origin origin) {
  switch (origin) {
    case chart::Origin::kSource:
      return "source";
    case chart::Origin::kDerived:
      return "derived_from";
    case chart::Origin::kAssumption:
      return "assumption";
  }
  return "";
}

Json fact_json(const chart::Fact& fact) {
  Json json = {{"quantity", chart::name_of(fact.quantity)},
               {"level", chart::name_of(fact.level)},
               {"year", fact.year},
               {"value", range_json(fact.value)},
               {"unit", chart::unit_of(fact.quantity)},
               {"conditions", fact.conditions}};
  if (fact.depth > 0.0) json["depth"] = fact.depth;
  if (fact.quantity == chart::Quantity::kCycles || fact.quantity == chart::Quantity::kCalendarLife)
    json["temperature_C"] = fact.temperature_C;
  if (fact.end_of_life_share > 0.0) json["end_of_life_share"] = fact.end_of_life_share;
  json["from_memory"] = fact.from_memory;
  json[name_of(fact.origin)] = fact.from;
  return json;
}

/// What the chart shows and does not know.
Json missing_json(const chart::Row& row) {
  Json missing = Json::array();
  for (const chart::Quantity quantity : chart::kQuantities) {
    if (quantity == chart::Quantity::kEnergyTarget) continue;
    bool known = false;
    for (const chart::Level level : chart::kLevels) known = known || row.figure(quantity, level) != nullptr;
    if (!known) missing.push_back(chart::name_of(quantity));
  }
  return missing;
}

Json safety_json(const chart::Row& row) {
  if (!row.safety_known) return nullptr;
  const chart::Safety& s = row.kind->safety;
  return {{"year", s.year},
          {"runaway", chart::name_of(s.runaway)},
          {"plates_metal", s.plates_metal},
          {"stated", s.stated},
          {"gas", s.gas},
          {"failure", s.failure},
          {"note", s.note},
          {name_of(s.origin), s.from}};
}

Json optional_range(const std::optional<units::Ranged>& range) {
  return range ? range_json(*range) : Json(nullptr);
}

Json row_json(const chart::Row& row) {
  Json figures = Json::array();
  for (const chart::Fact& fact : row.figures) figures.push_back(fact_json(fact));
  return {{"chemistry", row.kind->id},
          {"name", row.kind->name},
          {"short_name", row.kind->short_name},
          {"figures", std::move(figures)},
          {"missing", missing_json(row)},
          {"power_W_per_kg", optional_range(row.power_W_per_kg)},
          {"charge_h", optional_range(row.charge_h)},
          {"life_full_equivalents", optional_range(row.life_throughput)},
          {"safety", safety_json(row)}};
}

Json change_json(const chart::Change& change) {
  return {{"chemistry", change.kind->id},
          {"before", change.before ? fact_json(*change.before) : Json(nullptr)},
          {"now", fact_json(change.now)}};
}

Json score_json(const chart::Score& score) {
  Json places = Json::array();
  for (std::size_t i = 0; i < chart::kMatters.size(); ++i) {
    const auto& place = score.places[i];
    Json one = {{"matter", chart::name_of(chart::kMatters[i])}};
    one["place"] = place ? Json(place->place) : Json(nullptr);
    if (place) {
      one["among"] = place->among;
      one["points"] = place->points;
      one["value"] = place->standing.unit.empty() && !place->standing.in_words.empty()
                         ? Json(nullptr)
                         : Json(place->standing.value);
      one["unit"] = place->standing.unit;
      one["in_words"] = place->standing.in_words;
      one["assumption_or_memory"] = place->standing.soft;
    }
    places.push_back(std::move(one));
  }
  Json missing = Json::array();
  for (const chart::Matter matter : score.missing) missing.push_back(chart::name_of(matter));
  return {{"rank", score.rank},        {"chemistry", score.row->kind->id},     {"points_least", score.least},
          {"points_most", score.most}, {"without_figure", std::move(missing)}, {"places", std::move(places)}};
}

Json weighting_json(const chart::Weighting& weighting) {
  Json weights = Json::object();
  for (const chart::Weight& weight : weighting.weights)
    weights[std::string(chart::name_of(weight.matter))] = weight.weight;
  return {{"id", weighting.id},
          {"name", weighting.name},
          {"why", weighting.why},
          {"weights", std::move(weights)}};
}

Json branch_json(const chart::Branch& branch) {
  Json below = Json::array();
  for (const chart::Branch& one : branch.branches) below.push_back(branch_json(one));
  return {{"name", branch.name},
          {"note", branch.note},
          {"chemistry", branch.chemistry.empty() ? Json(nullptr) : Json(branch.chemistry)},
          {"branches", std::move(below)}};
}

}  // namespace

std::string to_json(const ChartResponse& response) {
  Json json;
  json["stamp"] = {
      {"format", kAnswerFormat}, {"engine", kVersion}, {"catalogue_mark", response.catalogue_mark}};
  json["year"] = response.chart.year;
  json["since"] = response.chart.since ? Json(*response.chart.since) : Json(nullptr);
  json["years_of_facts"] = {{"first", response.chart.first_year}, {"last", response.chart.last_year}};
  json["chemistries"] = Json::array();
  for (const chart::Row& row : response.chart.rows) json["chemistries"].push_back(row_json(row));
  json["changes"] = Json::array();
  for (const chart::Change& change : response.chart.changes) json["changes"].push_back(change_json(change));
  Json rules = Json::object();
  for (const chart::Matter matter : chart::kMatters)
    rules[std::string(chart::name_of(matter))] = chart::rule_of(matter);
  json["rules"] = std::move(rules);
  json["weighting"] = weighting_json(response.weighting);
  json["scores"] = Json::array();
  for (const chart::Score& score : response.scores) json["scores"].push_back(score_json(score));
  json["uses"] = Json::array();
  for (const chart::Weighting& use : response.uses) json["uses"].push_back(weighting_json(use));
  json["family_tree"] = {
      {"name", response.tree.name}, {"steps", response.tree.steps}, {"branches", Json::array()}};
  for (const chart::Branch& branch : response.tree.branches)
    json["family_tree"]["branches"].push_back(branch_json(branch));
  return json_text(json);
}

}  // namespace voltwright::app
