#include "app/json.h"
#include "app/json_parts.h"
#include "app/swap.h"
#include "app/swap_json_parts.h"
#include "app/version.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

Json compared_json(const advise::Compared& c, const std::string& name) {
  return {{"name", name},
          {"battery", c.bank.battery->id},
          {"chemistry", c.bank.chemistry->id},
          {"in_series", c.bank.layout.in_series},
          {"in_parallel", c.bank.layout.in_parallel},
          {"share_of_target", c.share},
          {"nominal_V", c.figures.nominal_V},
          {"capacity_Ah", c.figures.capacity_Ah},
          {"nominal_Wh", c.figures.nominal_Wh},
          {"depth", c.depth},
          {"used_depth", c.used_depth},
          {"run", run_json(c.run)},
          {"mass_kg", range_json(c.figures.mass_kg)},
          {"volume_L", range_json(c.figures.volume_L)},
          {"price_USD", range_json(c.figures.price)},
          {"price_year", c.bank.battery->price_year},
          {"cycles", range_json(c.cycles)},
          {"life_Wh", range_json(c.life_Wh)},
          {"calendar_years", range_json(c.bank.chemistry->life.calendar_years)},
          {"continuous_A", c.figures.continuous_A},
          {"peak_A", c.figures.peak_A},
          {"peak_s", c.bank.battery->peak_s},
          {"charge_A", c.figures.charge_A},
          {"short_circuit_A", c.short_circuit_A}};
}

}  // namespace

std::string to_json(const SwapResponse& r) {
  Json json;
  json["stamp"] = {{"format", kAnswerFormat}, {"engine", kVersion}, {"catalogue_mark", r.catalogue.mark}};
  json["compared_by"] = {{"measure", advise::name_of(r.question.measure)},
                         {"unit", advise::unit_of(r.question.measure)},
                         {"target", r.target}};
  json["load"] = load_json(r.question.load);
  json["temperature_C"] = r.question.temperature_C;
  json["cut_off_V"] = r.question.cut_off_V;
  json["incumbent"] = compared_json(r.incumbent, r.on_hand.name);
  Json rows = Json::array();
  for (const SwapRow& row : r.rows) {
    Json one = compared_json(row.compared, row.name);
    Json changes = Json::array();
    for (const advise::Change& change : row.changes) {
      changes.push_back({{"matter", advise::name_of(change.topic)},
                         {"urgency", advise::name_of(change.urgency)},
                         {"text", change.text}});
    }
    one["changes"] = changes;
    rows.push_back(one);
  }
  json["equivalents"] = rows;
  Json left_out = Json::array();
  for (const advise::LeftOut& one : r.left_out)
    left_out.push_back({{"battery", one.battery}, {"why", one.why}});
  json["left_out"] = left_out;
  json["assumed"] = r.on_hand.assumed;
  json["cautions"] = r.cautions;
  return json_text(json);
}

}  // namespace voltwright::app
