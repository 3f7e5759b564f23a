// Climate on land from the stations around.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "files/climate_records.h"
#include "files/daylight.h"
#include "files/great_circle.h"

namespace voltwright::files {

namespace {

// Rules of docs/method/climate.md.
constexpr double kNoSunshinePenalty_km = 100.0;
constexpr double kLapse_K_m = 0.0065;
constexpr double kLandWind_m_s = 2.5;
constexpr double kDarkMonth_h = 1.0;
constexpr double kCoast_km = 500.0;
constexpr double kCoastDailyRange_K = 8.0;
constexpr double kInlandFactor = 0.16;
constexpr double kCoastFactor = 0.19;
constexpr double kAssumedDailyRange_K = 10.0;

double mean(const Months& months) {
  double sum = 0.0;
  for (const double m : months) sum += m / 12.0;
  return sum;
}

/// Clearness by Angstrom-Prescott with the constants of FAO-56 from sunshine hours a month.
Months clearness_from_sunshine(const Months& sunshine_h, const MonthlyDaylight& daylight) {
  std::array<std::optional<double>, 12> sparse;
  for (std::size_t m = 0; m < 12; ++m) {
    if (daylight.day_length_h[m] < kDarkMonth_h) continue;
    sparse[m] = 0.25 + 0.50 * sunshine_h[m] / kDaysInMonth[m] / daylight.day_length_h[m];
  }
  return fill_months(sparse, 0.4);
}

/// True in the deserts of south-western North America, where stations report no sunshine and the interior
/// factor would read some 15 % low (Phoenix, TMY3: 2094 kWh/m2 a year).
bool in_unrecorded_desert(const sky::Site& site) {
  return site.latitude_deg >= 31.0 && site.latitude_deg <= 37.5 && site.longitude_deg >= -117.5 &&
         site.longitude_deg <= -103.0;
}

/// Clearness by Hargreaves (FAO-56 equation 50) from the daily range.
Months clearness_from_range(const Months& daily_range_K, double factor) {
  Months result{};
  for (std::size_t m = 0; m < 12; ++m) result[m] = factor * std::sqrt(std::max(0.0, daily_range_K[m]));
  return result;
}

/// Keeps the stations to be averaged: up to four of the preferred ones, else the nearest alone.
template <class Near>
std::vector<Near> choose(std::vector<Near> candidates) {
  std::sort(candidates.begin(), candidates.end(), [](const Near& a, const Near& b) {
    return a.apart_km != b.apart_km ? a.apart_km < b.apart_km : a.station->wmo < b.station->wmo;
  });
  std::vector<Near> chosen;
  for (const Near& near : candidates) {
    if (chosen.size() < kMostAveraged && near.preferred) chosen.push_back(near);
  }
  if (chosen.empty() && !candidates.empty()) chosen.push_back(candidates.front());
  return chosen;
}

template <class Near>
double weight_of(const Near& near) {
  const double softened = near.apart_km + kSoftening_km;
  return 1.0 / (softened * softened);
}

}  // namespace

sky::MonthlyClimate ClimateTable::land_climate(const sky::Site& site, const std::vector<Near>& near) const {
  sky::MonthlyClimate climate;
  double clearness_weight = 0.0;
  climate.wind_m_s.fill(kLandWind_m_s);
  std::string names;
  const std::vector<Near> warm = choose(near);
  double warm_weight = 0.0;
  for (const Near& n : warm) {
    const double weight = weight_of(n);
    warm_weight += weight;
    for (std::size_t m = 0; m < 12; ++m) {
      climate.temperature_C[m] += weight * (n.station->temperature_C[m] +
                                            kLapse_K_m * (n.station->site.elevation_m - site.elevation_m));
    }
    names += fmt::format("{}{} {:.0f} km (WMO {})", names.empty() ? "" : ", ", n.station->name, n.distance_km,
                         n.station->wmo);
  }
  std::vector<Near> ranged;
  std::vector<Near> clear;
  for (const Near& n : near) {
    if (n.station->daily_range_K) ranged.push_back(n);
    if (n.station->sunshine_h || n.station->daily_range_K) clear.push_back(n);
    if (!n.station->sunshine_h && n.station->daily_range_K) clear.back().apart_km += kNoSunshinePenalty_km;
  }
  ranged = choose(ranged);
  clear = choose(clear);
  double range_weight = 0.0;
  for (const Near& n : ranged) {
    range_weight += weight_of(n);
    for (std::size_t m = 0; m < 12; ++m)
      climate.daily_range_K[m] += weight_of(n) * (*n.station->daily_range_K)[m];
  }
  double sunshine_weight = 0.0;
  double used_coast = 0.0;
  double used_inland = 0.0;
  std::string clear_names;
  for (const Near& n : clear) {
    const double weight = weight_of(n);
    Months clearness{};
    if (n.station->sunshine_h) {
      clearness =
          clearness_from_sunshine(*n.station->sunshine_h, monthly_daylight(n.station->site.latitude_deg));
      sunshine_weight += weight;
    } else {
      double sea_km = std::numeric_limits<double>::infinity();
      for (const SeaCell& cell : sea_) sea_km = std::min(sea_km, great_circle_km(cell.site, n.station->site));
      const bool coast = sea_km <= kCoast_km && mean(*n.station->daily_range_K) < kCoastDailyRange_K;
      const bool high = coast || in_unrecorded_desert(n.station->site);
      clearness = clearness_from_range(*n.station->daily_range_K, high ? kCoastFactor : kInlandFactor);
      (high ? used_coast : used_inland) += weight;
    }
    clearness_weight += weight;
    for (std::size_t m = 0; m < 12; ++m) climate.clearness[m] += weight * clearness[m];
    clear_names +=
        fmt::format("{}{} {:.0f} km", clear_names.empty() ? "" : ", ", n.station->name, n.distance_km);
  }
  for (std::size_t m = 0; m < 12; ++m) {
    climate.temperature_C[m] /= warm_weight;
    climate.daily_range_K[m] =
        range_weight > 0.0 ? climate.daily_range_K[m] / range_weight : kAssumedDailyRange_K;
    climate.clearness[m] /= clearness_weight;
  }
  climate.origin = "Climate: " + names + "; mean temperature moved to " +
                   fmt::format("{:.0f} m at -6.5 K/km. ", site.elevation_m);
  climate.origin += "Sunshine: " + clear_names;
  if (sunshine_weight > 0.0) climate.origin += ", from sunshine hours (Angstrom-Prescott 0.25, 0.50)";
  if (used_coast > 0.0) climate.origin += ", from the daily range (Hargreaves 0.19, coast or desert)";
  if (used_inland > 0.0) climate.origin += ", from the daily range (Hargreaves 0.16, inland)";
  if (ranged.empty())
    climate.origin += fmt::format("; a daily range of {} K is an assumption", kAssumedDailyRange_K);
  climate.origin += fmt::format(". Wind {} m/s is an assumption. ", kLandWind_m_s);
  climate.origin += "Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt.";
  return climate;
}

}  // namespace voltwright::files
