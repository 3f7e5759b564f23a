// Climate on an enclosed sea, which the sea atlas leaves out, from the coast stations around.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "files/climate_records.h"

namespace voltwright::files {

namespace {

// Rules of docs/method/climate.md.
constexpr double kHighestAboveWater_m = 5.0;
constexpr double kCoastHeight_m = 60.0;
constexpr double kCoastReach_km = 400.0;
constexpr double kStationFree_km = 40.0;

}  // namespace

const ClimateTable::EnclosedSea* ClimateTable::enclosed_sea_at(const sky::Site& site,
                                                               double station_km) const {
  if (station_km <= kStationFree_km) return nullptr;
  const auto found = std::find_if(enclosed_.begin(), enclosed_.end(), [&](const EnclosedSea& sea) {
    return sea.holds(site) && site.elevation_m <= sea.surface_m + kHighestAboveWater_m;
  });
  return found == enclosed_.end() ? nullptr : &*found;
}

std::vector<ClimateTable::Near> ClimateTable::coast_stations(const EnclosedSea& sea,
                                                             const std::vector<Near>& near) const {
  std::vector<Near> coast;
  for (const Near& n : near) {
    const bool on_shore = std::any_of(enclosed_.begin(), enclosed_.end(), [&](const EnclosedSea& box) {
      return box.name == sea.name && box.holds(n.station->site);
    });
    const double height_m = std::abs(n.station->site.elevation_m - sea.surface_m);
    if (!on_shore || height_m > kCoastHeight_m || n.distance_km > kCoastReach_km) continue;
    coast.push_back({n.station, n.distance_km, n.distance_km, true});
  }
  return coast;
}

void ClimateTable::enclosed_climate(const sky::Site& site, const EnclosedSea& sea,
                                    const std::vector<Near>& coast, Draft& draft) const {
  sky::Site surface = site;
  surface.elevation_m = sea.surface_m;
  sky::MonthlyClimate& climate = draft.climate;
  climate.origin = fmt::format("On the water ({}), from stations at the coast. ", sea.name);
  add_temperature(surface, coast, draft);
  add_clearness(surface, coast, draft);
  climate.daily_range_K.fill(kSeaDailyRange_K);
  climate.wind_m_s.fill(kLandWind_m_s);
  climate.origin += fmt::format(
      "A daily range of {} K, as at sea, and wind of {} m/s, as on land, are assumptions. Datenbasis: "
      "Deutscher "
      "Wetterdienst, Einzelwerte gemittelt.",
      kSeaDailyRange_K, kLandWind_m_s);
}

}  // namespace voltwright::files
