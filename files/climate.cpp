#include "files/climate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "files/climate_records.h"
#include "files/daylight.h"
#include "files/great_circle.h"

namespace voltwright::files {

namespace {

// Rules of docs/method/climate.md.
constexpr double kFurthest_km = 1500.0;
constexpr double kNear_km = 150.0;
constexpr double kNearHeight_m = 400.0;
constexpr double kSeaStationFree_km = 100.0;
constexpr double kSeaHighest_m = 20.0;
constexpr double kLowestClearness = 0.1;
constexpr double kHighestClearness = 0.8;
constexpr double kTurbidity_km = 500.0;
constexpr double kTurbidityHeight_m = 700.0;

base::Problem position_problem(const char* what, std::string given, const char* limit, const char* remedy) {
  base::Problem problem;
  problem.what = what;
  problem.field = "position";
  problem.given = std::move(given);
  problem.limit = limit;
  problem.remedy = remedy;
  return problem;
}

}  // namespace

std::vector<ClimateTable::Near> ClimateTable::near_stations(const sky::Site& site) const {
  std::vector<Near> near;
  for (const Station& station : stations_) {
    const double distance_km = great_circle_km(site, station.site);
    if (distance_km > kFurthest_km) continue;
    const double height_m = std::abs(station.site.elevation_m - site.elevation_m);
    near.push_back({&station, distance_km, distance_km + height_m * kNear_km / kNearHeight_m,
                    distance_km <= kNear_km && height_m <= kNearHeight_m});
  }
  return near;
}

void ClimateTable::add_turbidity(const sky::Site& site, bool at_sea, Draft& draft) const {
  sky::MonthlyClimate& climate = draft.climate;
  const TurbiditySite* best = nullptr;
  double best_km = kTurbidity_km;
  for (const TurbiditySite& t : turbidity_) {
    const double distance_km = great_circle_km(site, t.site);
    if (distance_km <= best_km && std::abs(t.site.elevation_m - site.elevation_m) <= kTurbidityHeight_m) {
      best = &t;
      best_km = distance_km;
    }
  }
  if (best != nullptr) {
    climate.linke_turbidity = best->linke;
    draft.sources.push_back(
        {"turbidity", "", std::string(best->name), best_km, best->site.elevation_m - site.elevation_m, 1.0});
    climate.origin += fmt::format(" Turbidity: station {} {:.0f} km.", best->name, best_km);
    return;
  }
  for (const TurbidityGroup& g : groups_) {
    if (g.at_sea != at_sea || site.latitude_deg < g.south_deg || site.latitude_deg > g.north_deg ||
        site.longitude_deg < g.west_deg || site.longitude_deg > g.east_deg || site.elevation_m < g.lowest_m) {
      continue;
    }
    climate.linke_turbidity = g.linke;
    climate.origin += fmt::format(
        " Turbidity: no station within 500 km and 700 m of height, so the group \"{}\" is assumed.", g.name);
    return;
  }
  climate.linke_turbidity.fill(3.5);
  climate.origin += " Turbidity 3.5 is an assumption.";
}

base::Result<sky::MonthlyClimate> ClimateTable::at(const sky::Site& site,
                                                   std::vector<ClimateSource>* sources) const {
  const bool on_earth = std::abs(site.latitude_deg) <= 90.0 && std::abs(site.longitude_deg) <= 180.0 &&
                        site.elevation_m >= -500.0 && site.elevation_m <= 9000.0;
  if (!on_earth) {
    return position_problem("The position is not on Earth.",
                            fmt::format("latitude {}, longitude {}, height {} m", site.latitude_deg,
                                        site.longitude_deg, site.elevation_m),
                            "latitude -90..90, longitude -180..180, height -500..9000 m",
                            "Give the position in decimal degrees, north and east positive.");
  }
  const std::vector<Near> near = near_stations(site);
  double station_km = std::numeric_limits<double>::infinity();
  for (const Near& n : near) station_km = std::min(station_km, n.distance_km);
  double cell_km = std::numeric_limits<double>::infinity();
  for (const SeaCell& cell : sea_) cell_km = std::min(cell_km, great_circle_km(site, cell.site));
  const bool at_sea = site.elevation_m <= kSeaHighest_m && cell_km <= kSeaCellReach_km &&
                      station_km > kSeaStationFree_km && cell_km < station_km;
  if (!at_sea && near.empty()) {
    return position_problem("No climate station lies within 1500 km.",
                            fmt::format("latitude {}, longitude {}", site.latitude_deg, site.longitude_deg),
                            "", "Give a weather file for this place instead.");
  }
  const EnclosedSea* enclosed = enclosed_sea_at(site, station_km);
  const std::vector<Near> coast = enclosed == nullptr ? std::vector<Near>() : coast_stations(*enclosed, near);
  Draft draft;
  if (!coast.empty()) {
    enclosed_climate(site, *enclosed, coast, draft);
  } else if (at_sea) {
    sea_climate(site, draft);
  } else {
    land_climate(site, near, draft);
  }
  for (double& k : draft.climate.clearness) k = std::clamp(k, kLowestClearness, kHighestClearness);
  add_turbidity(site, at_sea && coast.empty(), draft);
  if (sources != nullptr) sources->insert(sources->end(), draft.sources.begin(), draft.sources.end());
  return std::move(draft.climate);
}

}  // namespace voltwright::files
