#include "app/report.h"

#include <algorithm>
#include <string_view>

#include "app/version.h"
#include "files/references.h"
#include "files/report/report.h"

namespace voltwright::app {

namespace {

/// What the simulation rests on; the battery figures' own sources stand in the catalogue records.
constexpr std::string_view kModelSources[] = {
    "blanco2020", "ineichen2002", "erbs1982",   "perez1990", "martin2001",  "king2004",
    "dobos2014",  "aguiar1988",   "aguiar1992", "erbs1983",  "manwell1993", "schiffer2007",
    "dwd_climat", "esbensen1981", "remund2003", "geonames",  "naumann2018"};

files::ReportSeason season_of(const ShownSeason& shown, const std::string& label) {
  return {label, shown.season, shown.fared, shown.trace, shown.outside_C};
}

std::vector<std::string> climate_origins(const PlanOnHand& hand) {
  std::vector<std::string> origins;
  for (std::size_t i = 0; i < hand.skies.size(); ++i) {
    const season::LegSky& sky = hand.skies[i];
    const std::string& origin = sky.typical_year ? sky.typical_year->origin : sky.climate.origin;
    std::string line = hand.plan.legs[i].place.name + ": " + origin;
    if (std::find(origins.begin(), origins.end(), line) == origins.end()) origins.push_back(std::move(line));
  }
  return origins;
}

}  // namespace

std::string report(const AdviseResponse& response) {
  files::ReportInput input;
  input.plan = &response.hand.plan;
  input.answer = &response.answer;
  input.costs = &response.costs;
  input.worst = season_of(response.worst, "Worst season");
  input.median = season_of(response.median, "Median season");
  input.sun_cautions = advise::sun_cautions(response.sun_findings);
  input.assumptions = assumptions_of(response.hand);
  input.climate_origins = climate_origins(response.hand);
  input.sources = files::reference_lines(kModelSources);
  input.plan_mark = response.hand.plan_mark;
  input.catalogue_mark = response.hand.catalogue.mark;
  input.engine_version = kVersion;
  return files::report_html(input);
}

}  // namespace voltwright::app
