#include "app/plan_on_hand.h"

#include <filesystem>

#include "app/leg_weather.h"
#include "engine/advise/wind_check.h"
#include "files/climate_override.h"
#include "files/cost_facts.h"
#include "files/gazetteer.h"
#include "files/plan.h"
#include "files/text_file.h"
#include "files/track_legs.h"

namespace voltwright::app {

namespace {

void append(base::Problems& to, const base::Problems& more) { to.insert(to.end(), more.begin(), more.end()); }

/// Climate or typical year of each leg; problems are added to `problems`.
std::vector<season::LegSky> skies_of(const advise::Plan& plan, const files::ClimateTable& climates,
                                     const std::filesystem::path& folder, base::Problems& problems) {
  std::vector<season::LegSky> skies;
  LegWeather weather_files(folder);
  for (const journey::Leg& leg : plan.legs) {
    season::LegSky leg_sky;
    auto climate = files::climate_of(climates, leg.place.site, leg.climate);
    if (climate) {
      leg_sky.climate = std::move(climate).value();
    } else if (leg.weather_file.empty()) {
      append(problems, climate.problems());
    }
    if (leg.end_place.has_value() && leg.weather_file.empty()) {
      if (auto end = files::climate_of(climates, leg.end_place->site, leg.climate)) {
        leg_sky.end_climate = std::move(end).value();
      } else {
        append(problems, end.problems());
      }
    }
    weather_files.add_to(leg, leg_sky, problems);
    skies.push_back(std::move(leg_sky));
  }
  return skies;
}

/// Gives the plan the legs of its track.
void take_track(const std::filesystem::path& folder, const std::string& start,
                const files::Catalogue& catalogue, const files::Gazetteer& gazetteer, files::ReadPlan& read) {
  const std::string path = (folder / read.track).string();
  const auto text = files::read_text(path);
  if (!text) return append(read.warnings, text.problems());
  const auto track = files::read_gpx(text.value(), path);
  if (!track) return append(read.warnings, track.problems());
  const auto journey = files::track_journey(track.value(), path, gazetteer);
  if (!journey) return append(read.warnings, journey.problems());
  append(read.warnings, journey.value().warnings);
  append(read.warnings,
         files::take_legs(files::legs_toml(journey.value()), path, catalogue, gazetteer, start, read));
}

}  // namespace

base::Result<PlanOnHand> plan_on_hand(const std::string& path, const std::string& start) {
  auto text = files::read_text(path);
  if (!text) return text.problems();
  auto catalogue = files::read_catalogue();
  if (!catalogue) return catalogue.problems();
  auto gazetteer = files::Gazetteer::built_in();
  if (!gazetteer) return gazetteer.problems();
  auto climates = files::ClimateTable::built_in();
  if (!climates) return climates.problems();
  auto cost_facts = files::read_cost_facts();
  if (!cost_facts) return cost_facts.problems();
  auto plan = files::read_plan(text.value(), path, catalogue.value(), gazetteer.value(), start);
  if (!plan) return plan.problems();
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (!plan.value().track.empty()) {
    take_track(folder, start, catalogue.value(), gazetteer.value(), plan.value());
    if (base::has_error(plan.value().warnings)) return plan.value().warnings;
  }

  PlanOnHand hand;
  hand.plan = std::move(plan.value().plan);
  hand.plan_mark = plan.value().mark;
  hand.moved = plan.value().moved;
  hand.warnings = plan.value().warnings;
  hand.catalogue = std::move(catalogue).value();
  hand.climates = std::move(climates).value();
  hand.cost_facts = std::move(cost_facts).value();
  hand.skies = skies_of(hand.plan, hand.climates, folder, hand.warnings);
  for (base::Problem& problem : advise::wind_problems(hand.plan, hand.skies)) {
    problem.where.file = path;
    hand.warnings.push_back(std::move(problem));
  }
  if (base::has_error(hand.warnings)) return hand.warnings;
  return hand;
}

}  // namespace voltwright::app
