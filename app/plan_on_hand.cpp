#include "app/plan_on_hand.h"

#include <filesystem>

#include "app/leg_weather.h"
#include "files/gazetteer.h"
#include "files/plan.h"
#include "files/text_file.h"

namespace voltwright::app {

namespace {

/// Climate or typical year of each leg; problems are added to `problems`.
std::vector<season::LegSky> skies_of(const advise::Plan& plan, const files::ClimateTable& climates,
                                     const std::filesystem::path& folder, base::Problems& problems) {
  std::vector<season::LegSky> skies;
  LegWeather weather_files(folder);
  for (const journey::Leg& leg : plan.legs) {
    season::LegSky leg_sky;
    auto climate = climates.at(leg.place.site);
    if (climate) {
      leg_sky.climate = std::move(climate).value();
    } else if (leg.weather_file.empty()) {
      problems.insert(problems.end(), climate.problems().begin(), climate.problems().end());
    }
    weather_files.add_to(leg, leg_sky, problems);
    skies.push_back(std::move(leg_sky));
  }
  return skies;
}

}  // namespace

base::Result<PlanOnHand> plan_on_hand(const std::string& path) {
  auto text = files::read_text(path);
  if (!text) return text.problems();
  auto catalogue = files::read_catalogue();
  if (!catalogue) return catalogue.problems();
  auto gazetteer = files::Gazetteer::built_in();
  if (!gazetteer) return gazetteer.problems();
  auto climates = files::ClimateTable::built_in();
  if (!climates) return climates.problems();
  auto plan = files::read_plan(text.value(), path, catalogue.value(), gazetteer.value());
  if (!plan) return plan.problems();

  PlanOnHand hand;
  hand.plan = std::move(plan.value().plan);
  hand.plan_mark = plan.value().mark;
  hand.warnings = plan.value().warnings;
  hand.catalogue = std::move(catalogue).value();
  hand.climates = std::move(climates).value();
  hand.skies = skies_of(hand.plan, hand.climates, std::filesystem::path(path).parent_path(), hand.warnings);
  if (base::has_error(hand.warnings)) return hand.warnings;
  return hand;
}

}  // namespace voltwright::app
