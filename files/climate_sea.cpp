// Climate at sea from the cells of the atlas around.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "files/climate_records.h"
#include "files/daylight.h"
#include "files/great_circle.h"

namespace voltwright::files {

namespace {

// Rules of docs/method/climate.md.
constexpr double kSeaAbsorbed = 0.94;
constexpr double kDarkMonth_kWh_m2_day = 0.2;

/// "34 S 155 E".
std::string position_words(const sky::Site& site) {
  return fmt::format("{:.0f} {} {:.0f} {}", std::abs(site.latitude_deg), site.latitude_deg < 0.0 ? 'S' : 'N',
                     std::abs(site.longitude_deg), site.longitude_deg < 0.0 ? 'W' : 'E');
}

}  // namespace

void ClimateTable::sea_climate(const sky::Site& site, Draft& draft) const {
  struct NearCell {
    const SeaCell* cell;
    double distance_km;
  };
  std::vector<NearCell> near;
  for (const SeaCell& cell : sea_) {
    const double distance_km = great_circle_km(site, cell.site);
    if (distance_km <= 1.6 * kSeaCellReach_km) near.push_back({&cell, distance_km});
  }
  std::sort(near.begin(), near.end(),
            [](const NearCell& a, const NearCell& b) { return a.distance_km < b.distance_km; });
  if (near.size() > kMostAveraged) near.resize(kMostAveraged);
  sky::MonthlyClimate& climate = draft.climate;
  double clearness_weight = 0.0;
  std::string names;
  for (const NearCell& n : near) {
    const double softened = n.distance_km + kSoftening_km;
    const double weight = 1.0 / (softened * softened);
    const MonthlyDaylight daylight = monthly_daylight(n.cell->site.latitude_deg);
    std::array<std::optional<double>, 12> sparse;
    for (std::size_t m = 0; m < 12; ++m) {
      const double top = daylight.horizontal_kWh_m2_day[m];
      if (top < kDarkMonth_kWh_m2_day) continue;
      sparse[m] = n.cell->net_solar_W_m2[m] * 0.024 / kSeaAbsorbed / top;
    }
    const Months clearness = fill_months(sparse, 0.4);
    for (std::size_t m = 0; m < 12; ++m) {
      climate.clearness[m] += weight * clearness[m];
      climate.temperature_C[m] += weight * n.cell->temperature_C[m];
      climate.wind_m_s[m] += weight * n.cell->wind_m_s[m];
    }
    clearness_weight += weight;
    draft.sources.push_back({"sea", "", position_words(n.cell->site), n.distance_km, 0.0, weight});
    names +=
        fmt::format("{}{} {:.0f} km", names.empty() ? "" : ", ", position_words(n.cell->site), n.distance_km);
  }
  for (std::size_t m = 0; m < 12; ++m) {
    climate.clearness[m] /= clearness_weight;
    climate.temperature_C[m] /= clearness_weight;
    climate.wind_m_s[m] /= clearness_weight;
  }
  climate.wind_known = true;
  for (ClimateSource& source : draft.sources) source.weight /= clearness_weight;
  climate.daily_range_K.fill(kSeaDailyRange_K);
  climate.origin = "Climate at sea: atlas of Esbensen and Kushnir 1981, cells " + names +
                   "; 6 % of the sunshine taken as reflected and a daily range of 3 K are assumptions.";
}

}  // namespace voltwright::files
