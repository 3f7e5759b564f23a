#include "app/compose.h"
#include "app/json.h"
#include "app/json_parts.h"
#include "app/version.h"

namespace voltwright::app {

namespace {

using Json = nlohmann::ordered_json;

Json limit_json(const bank::CurrentLimit& limit) {
  return {{"current_A", limit.current_A}, {"bound_by", bank::name_of(limit.binding)}};
}

Json figures_json(const bank::Composition& c) {
  return {{"voltage",
           {{"empty_V", c.empty_V},
            {"nominal_V", c.nominal_V},
            {"mean_at_rest_V", c.mean_V},
            {"full_V", c.full_V},
            {"charge_V", c.charge_V},
            {"highest_V", c.highest_V}}},
          {"capacity_Ah", c.capacity_Ah},
          {"nominal_Wh", c.nominal_Wh},
          {"at_rest_Wh", c.rest_Wh},
          {"mass",
           {{"mass_kg", range_json(c.mass_kg)},
            {"cells_kg", c.cells_kg},
            {"busbars_kg", c.busbars_kg},
            {"case_kg", c.case_kg},
            {"protection_kg", c.protection_kg}}},
          {"room",
           {{"length_mm", c.outside.length_mm},
            {"width_mm", c.outside.width_mm},
            {"height_mm", c.outside.height_mm},
            {"volume_L", c.volume_L},
            {"rows", c.arrangement.rows},
            {"columns", c.arrangement.columns},
            {"share_of_cells", c.cells_share}}},
          {"energy_Wh_per_kg", c.Wh_per_kg},
          {"energy_Wh_per_L", c.Wh_per_L},
          {"current",
           {{"continuous", limit_json(c.continuous)},
            {"peak", limit_json(c.peak)},
            {"peak_s", c.battery.peak_s},
            {"charge", limit_json(c.charge)}}},
          {"resistance",
           {{"cells_ohm", c.cells_ohm},
            {"joints_ohm", c.joints_ohm},
            {"protection_ohm", c.protection_ohm},
            {"sum_ohm", c.resistance_ohm}}},
          {"short_circuit_A", range_json(c.short_circuit_A)},
          {"house",
           {{"system_V", c.house.system.system_V},
            {"cut_off_V", c.house.system.cut_off_V},
            {"bears_V", c.house.system.bears_V},
            {"lost_below", c.house.lost_below},
            {"lost_above", c.house.lost_above}}}};
}

}  // namespace

std::string to_json(const ComposeResponse& response) {
  const bank::Composition& made = response.made;
  Json json;
  json["stamp"] = {
      {"format", kAnswerFormat}, {"engine", kVersion}, {"catalogue_mark", response.catalogue_mark}};
  json["cell"] = response.cell.id;
  json["chemistry"] = response.chemistry.id;
  json["in_series"] = made.in_series;
  json["in_parallel"] = made.in_parallel;
  json["figures"] = figures_json(made);
  json["findings"] = problem_list_json(made.findings);
  json["cautions"] = response.cautions;
  json["record"] = response.record ? *response.record : Json(nullptr);
  return json_text(json);
}

}  // namespace voltwright::app
