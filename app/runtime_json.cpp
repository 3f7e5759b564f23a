#include "app/json.h"
#include "app/json_parts.h"
#include "app/runtime.h"
#include "app/swap_json_parts.h"
#include "app/version.h"

namespace voltwright::app {

namespace {
using Json = nlohmann::ordered_json;
}  // namespace

Json run_json(const advise::Run& run) {
  return {{"hours", run.hours},
          {"bank_Wh", run.bank_Wh},
          {"load_Wh", run.load_Wh},
          {"drawn_Ah", run.drawn_Ah},
          {"mean_A", run.mean_A},
          {"start_V", run.start_V},
          {"mean_V", run.mean_V},
          {"end_V", run.end_V},
          {"end_state_of_charge", run.end_charge},
          {"end_temperature_C", run.end_temperature_C},
          {"ended_because", advise::text_of(run.ending)}};
}

Json load_json(const advise::SteadyLoad& load) {
  if (load.current_A > 0.0) return {{"current_A", load.current_A}};
  return {
      {"power_W", load.power_W}, {"inverter_efficiency", load.efficiency}, {"inverter_idle_W", load.idle_W}};
}

std::string to_json(const RuntimeResponse& response) {
  Json json;
  json["stamp"] = {
      {"format", kAnswerFormat}, {"engine", kVersion}, {"catalogue_mark", response.catalogue_mark}};
  json["bank"] = {{"name", response.on_hand.name},
                  {"chemistry", response.chemistry.id},
                  {"nominal_V", response.figures.nominal_V},
                  {"capacity_Ah", response.figures.capacity_Ah}};
  json["load"] = load_json(response.load);
  json["conditions"] = {{"temperature_C", response.conditions.temperature_C},
                        {"depth", response.conditions.depth},
                        {"start_state_of_charge", response.conditions.start_charge},
                        {"cut_off_V", response.conditions.cut_off_V}};
  json["run"] = run_json(response.answer.run);
  json["naive_h"] = response.answer.naive_h;
  Json steps = Json::array();
  for (const advise::RuntimeStep& step : response.answer.working) {
    steps.push_back({{"step", step.name}, {"hours", step.hours}, {"why", step.why}});
  }
  json["working"] = steps;
  json["assumed"] = response.on_hand.assumed;
  json["cautions"] = response.cautions;
  return json_text(json);
}

}  // namespace voltwright::app
