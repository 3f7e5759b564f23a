#include "app/advise.h"

#include <algorithm>
#include <string>

#include "app/parallel.h"
#include "engine/advise/wording.h"
#include "engine/sky/sun.h"
#include "files/climate_override.h"

namespace voltwright::app {

namespace {

ShownSeason show(const advise::Proving& proving, const advise::Candidate& candidate,
                 std::uint64_t season_number) {
  ShownSeason shown;
  season::Series series;
  shown.season = season_number;
  shown.fared = proving.trace(candidate, season_number, shown.trace, &series);
  shown.outside_C = std::move(series.outside_C);
  return shown;
}

double mean_demand_Wh_day(const season::Series& series) {
  double sum_W_min = 0.0;
  for (const season::Minute& m : series.minutes) sum_W_min += m.direct_W + m.inverter_W;
  return series.minutes.empty() ? 0.0 : sum_W_min * 24.0 / static_cast<double>(series.minutes.size());
}

base::Problem nothing_to_try(const advise::Plan& plan) {
  base::Problem problem;
  problem.field = "candidates";
  problem.what = "No battery of the catalogue fits this choice.";
  problem.given =
      advise::figure(units::as_volts(plan.system_voltage), "V") + " and the chemistries or batteries named";
  problem.remedy = "Widen [candidates], or see `voltwright catalogue batteries`.";
  return problem;
}

}  // namespace

base::Result<AdviseResponse> advise(const AdviseRequest& request, const advise::Progress& progress) {
  auto hand = plan_on_hand(request.plan_path, request.start);
  if (!hand) return hand.problems();
  AdviseResponse response;
  response.hand = std::move(hand).value();
  const advise::Plan& plan = response.hand.plan;
  const files::Catalogue& catalogue = response.hand.catalogue;

  std::vector<advise::Candidate> candidates =
      advise::candidates_of(plan, catalogue.chemistries, catalogue.batteries);
  if (candidates.empty()) return nothing_to_try(plan);
  if (plan.incumbent) {
    advise::Candidate now =
        advise::named_candidate(*plan.incumbent, catalogue.chemistries, catalogue.batteries);
    if (now.battery != nullptr) {
      now.fitted_now = true;
      candidates.push_back(now);
    }
  }
  const advise::Proving proving(plan, response.hand.skies, response.hand.climates.matrices());
  response.demand_Wh_day = mean_demand_Wh_day(proving.draw(0));
  response.answer = advise::recommend(
      plan, advise::prove(plan, proving, candidates, on_threads(request.threads), progress));
  response.costs = advise::life_cost(plan, response.hand.cost_facts, response.answer);

  response.sun_findings = advise::sun_findings(plan, response.hand.skies);

  const advise::Trial& shown = response.answer.ranking.front().trial;
  response.worst = show(proving, shown.candidate, shown.worst_season());
  response.median = show(proving, shown.candidate, shown.median_season());
  return response;
}

namespace {

/// What holds for the sun and for the light on the arrays of this plan.
void add_sky(const advise::Plan& plan, std::vector<std::string>& all) {
  if (plan.arrays.empty()) return;
  auto years = sky::SunYears::kStated;
  for (const journey::Leg& leg : plan.legs) {
    years = std::max({years, sky::sun_years(static_cast<double>(leg.start_utc_s)),
                      sky::sun_years(static_cast<double>(leg.end_utc_s) - 1.0)});
  }
  if (years != sky::SunYears::kStated) {
    all.push_back(
        "Dates lie outside 2020 to 2050, the years for which the sun's place is stated to 0.01 deg" +
        std::string(years == sky::SunYears::kMeasured
                        ? "; there it was compared with rigorous astronomy and is within 0.012 deg."
                        : "; before 1950 and after 2100 nothing has checked it."));
  }
  const bool shaded = std::any_of(plan.arrays.begin(), plan.arrays.end(), [](const supply::SolarArray& a) {
    return !a.land.open() || !a.near.open();
  });
  if (shaded) {
    all.push_back(
        "Horizon and shade hold on every leg and take light evenly from the whole array; a hard shadow on a "
        "part of a module costs more than its share.");
  }
  const bool turns = std::any_of(plan.arrays.begin(), plan.arrays.end(),
                                 [](const supply::SolarArray& a) { return a.turns; });
  const bool any_way = std::any_of(plan.legs.begin(), plan.legs.end(),
                                   [](const journey::Leg& leg) { return !leg.facing_deg.has_value(); });
  if (turns && any_way) {
    all.push_back("On legs without `facing` the front points another way each day, drawn from eight.");
  }
  const bool other_sky = std::any_of(plan.arrays.begin(), plan.arrays.end(), [](const supply::SolarArray& a) {
    return a.sky_model != sky::SkyModel::kPerez;
  });
  if (other_sky) {
    all.push_back(
        "The light of the sky is moved onto at least one array by another relation than that of Perez.");
  }
}

}  // namespace

std::vector<std::string> assumptions_of(const PlanOnHand& hand) {
  const advise::Plan& plan = hand.plan;
  std::vector<std::string> all;
  if (!hand.moved.empty()) all.push_back(hand.moved);
  all.push_back("Each season starts with a full bank.");
  all.push_back(plan.depth_rule == advise::DepthRule::kPractice
                    ? "Loads are switched off at the usual depth of each chemistry (lead-acid 50 %, "
                      "iron-phosphate 80 %; "
                      "common practice) and come back when the bank is 5 % fuller."
                    : "Loads run until the battery's own protection or cut-off voltage.");
  all.push_back(
      "Batteries are generic size classes; masses, sizes and prices of a product differ within the range "
      "shown.");
  all.push_back(
      "Life adds a cycle table (Miner's rule over rainflow cycles) and a calendar rule that halves life per "
      "10 K; the "
      "two do not influence each other. Seasons follow each other without a break; lives over 25 years are "
      "shown as 25.");
  all.push_back(
      "Use varies from season to season only in when events fall; weather is drawn anew each season.");
  all.push_back(
      "The curve of directly coupled solar modules is taken as straight around 13.5 V for each 12 V of the "
      "system.");
  const bool replayed = std::any_of(hand.skies.begin(), hand.skies.end(),
                                    [](const season::LegSky& s) { return s.typical_year.has_value(); });
  for (std::size_t i = 0; i < plan.legs.size(); ++i) {
    const std::string given = files::override_words(plan.legs[i].climate);
    if (given.empty() || hand.skies[i].typical_year) continue;
    all.push_back("Climate of leg " + std::to_string(i + 1) + ", " + plan.legs[i].place.name +
                  ": override by the plan: " + given + ".");
  }
  if (replayed) all.push_back("Legs with a weather file replay the same typical year in every season.");
  add_sky(plan, all);
  switch (plan.surroundings.location) {
    case bank::Location::kCabin:
      all.push_back(
          "The bank stands in the cabin, which follows the outside air within two hours and is heated to " +
          advise::figure(plan.surroundings.cabin_heated_to.as_celsius(), "°C") + " while occupied.");
      break;
    case bank::Location::kEngineBay:
      all.push_back("The bank stands in the engine bay, up to " +
                    advise::figure(units::as_kelvins(plan.surroundings.engine_bay_rise), "K") +
                    " warmer than outside while driving.");
      break;
    case bank::Location::kOutside:
      all.push_back("The bank stands in outside air.");
      break;
    case bank::Location::kHeatedBox:
      all.push_back("The bank stands in an insulated box in outside air; a heater of " +
                    advise::figure(units::as_watts(plan.surroundings.heater_power), "W") + " keeps it at " +
                    advise::figure(plan.surroundings.heater_below.as_celsius(), "°C") +
                    " and is fed from the bus.");
      break;
  }
  return all;
}

}  // namespace voltwright::app
