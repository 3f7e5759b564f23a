#include "engine/sky/clearness.h"
#include "files/plan_parts.h"

namespace voltwright::files {

void read_weather_model(Section& top, advise::Plan& plan) {
  if (const auto model = top.choice("weather_model", {"matrices", "exponential"})) {
    plan.daily_model = *model == 0 ? sky::DailyModel::kMatrices : sky::DailyModel::kExponential;
  }
}

}  // namespace voltwright::files
