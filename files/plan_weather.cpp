#include "engine/sky/clearness.h"
#include "files/plan_parts.h"

namespace voltwright::files {

void read_weather_model(Section& top, advise::Plan& plan) {
  if (const auto model = top.choice("weather_model", {"matrices", "exponential"})) {
    plan.daily_model = *model == 0 ? sky::DailyModel::kMatrices : sky::DailyModel::kExponential;
  }
  if (const auto model = top.choice("diffuse_model", {"erbs", "engerer2"})) {
    plan.diffuse_model = *model == 0 ? sky::DiffuseModel::kErbs : sky::DiffuseModel::kEngerer;
  }
}

}  // namespace voltwright::files
