#pragma once
// How long a load runs on a battery.
#include <string>
#include <vector>

#include "app/battery_on_hand.h"

namespace voltwright::app {

/// What is connected and under what conditions; texts are "value unit", empty = the default.
struct LoadRequest {
  std::string load;         // "60 W", or "5 A" at the bank
  std::string efficiency;   // of the inverter; default none: straight from the bank
  std::string idle;         // of the inverter
  std::string cut_off;      // of the inverter or the load
  std::string temperature;  // default 25 °C
  std::string depth;        // "80 %"; default practice of the chemistry; "protection" = down to the cut-offs
};

struct RuntimeRequest {
  BatteryRequest battery;
  LoadRequest load;
  std::string start_charge;  // default full
};

struct RuntimeResponse {
  std::string catalogue_mark;
  BatteryOnHand on_hand;
  cell::Chemistry chemistry;
  bank::BankFigures figures;
  advise::SteadyLoad load;
  advise::RuntimeConditions conditions;
  advise::Runtime answer;
  std::vector<std::string> cautions;
};

/// Reads a load; problems go to the reader.
advise::SteadyLoad steady_load(const LoadRequest& request, OptionReader& reader);
/// Reads a depth, "protection" is 1; `otherwise` for an empty text.
double depth_of(const std::string& text, const char* option, double otherwise, OptionReader& reader);
/// Reads the temperature and the cut-off into the conditions.
advise::RuntimeConditions conditions_of(const LoadRequest& request, OptionReader& reader);

/// Every problem of the request at once.
base::Result<RuntimeResponse> runtime(const RuntimeRequest& request);

/// Format: docs/formats/answer.md.
std::string to_json(const RuntimeResponse& response);

}  // namespace voltwright::app
