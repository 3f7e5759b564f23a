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
constexpr double kAlikeFar = 2.0;
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

/// Keeps the stations to be averaged: up to four of the preferred ones, else up to four that are not more
/// than twice as far apart as the nearest.
template <class Near>
std::vector<Near> choose(std::vector<Near> candidates) {
  std::sort(candidates.begin(), candidates.end(), [](const Near& a, const Near& b) {
    return a.apart_km != b.apart_km ? a.apart_km < b.apart_km : a.station->wmo < b.station->wmo;
  });
  std::vector<Near> chosen;
  for (const Near& near : candidates) {
    if (chosen.size() < kMostAveraged && near.preferred) chosen.push_back(near);
  }
  if (!chosen.empty()) return chosen;
  for (const Near& near : candidates) {
    if (chosen.size() < kMostAveraged && near.apart_km <= kAlikeFar * candidates.front().apart_km)
      chosen.push_back(near);
  }
  return chosen;
}

void add(Months& sum, double weight, const Months& months) {
  for (std::size_t m = 0; m < 12; ++m) sum[m] += weight * months[m];
}

template <class Near>
double weight_of(const Near& near) {
  const double softened = near.apart_km + kSoftening_km;
  return 1.0 / (softened * softened);
}

template <class Near>
double sum_of_weights(const std::vector<Near>& chosen) {
  double sum = 0.0;
  for (const Near& near : chosen) sum += weight_of(near);
  return sum;
}

template <class Near>
ClimateSource source_of(const char* use, const Near& near, const sky::Site& site, double weight) {
  return {use,
          std::string(near.station->wmo),
          std::string(near.station->name),
          near.distance_km,
          near.station->site.elevation_m - site.elevation_m,
          weight};
}

}  // namespace

Months ClimateTable::station_clearness(const Station& station, std::string& method) const {
  if (station.sunshine_h) {
    method = "from sunshine hours (Angstrom-Prescott 0.25, 0.50)";
    return clearness_from_sunshine(*station.sunshine_h, monthly_daylight(station.site.latitude_deg));
  }
  double sea_km = std::numeric_limits<double>::infinity();
  for (const SeaCell& cell : sea_) sea_km = std::min(sea_km, great_circle_km(cell.site, station.site));
  const Months range_K = station.daily_range_K.value_or(Months{});
  const bool coast = sea_km <= kCoast_km && mean(range_K) < kCoastDailyRange_K;
  const bool high = coast || in_unrecorded_desert(station.site);
  method = high ? "from the daily range (Hargreaves 0.19, coast or desert)"
                : "from the daily range (Hargreaves 0.16, inland)";
  return clearness_from_range(range_K, high ? kCoastFactor : kInlandFactor);
}

void ClimateTable::add_temperature(const sky::Site& site, const std::vector<Near>& near, Draft& draft) {
  sky::MonthlyClimate& climate = draft.climate;
  std::string names;
  const std::vector<Near> chosen = choose(near);
  const double sum = sum_of_weights(chosen);
  for (const Near& n : chosen) {
    const double weight = weight_of(n) / sum;
    const double lapse_K = kLapse_K_m * (n.station->site.elevation_m - site.elevation_m);
    add(climate.temperature_C, weight, n.station->temperature_C);
    for (double& t : climate.temperature_C) t += weight * lapse_K;
    names += fmt::format("{}{} {:.0f} km (WMO {})", names.empty() ? "" : ", ", n.station->name, n.distance_km,
                         n.station->wmo);
    draft.sources.push_back(source_of("temperature", n, site, weight));
  }
  climate.origin += fmt::format("Climate: {}; mean temperature moved to {:.0f} m at \u22126.5 K/km. ", names,
                                site.elevation_m);
}

void ClimateTable::add_daily_range(const sky::Site& site, const std::vector<Near>& near, Draft& draft) {
  sky::MonthlyClimate& climate = draft.climate;
  std::vector<Near> ranged;
  for (const Near& n : near) {
    if (n.station->daily_range_K) ranged.push_back(n);
  }
  if (ranged.empty()) {
    climate.daily_range_K.fill(kAssumedDailyRange_K);
    climate.origin += fmt::format("A daily range of {} K is an assumption. ", kAssumedDailyRange_K);
    return;
  }
  const std::vector<Near> chosen = choose(ranged);
  const double sum = sum_of_weights(chosen);
  for (const Near& n : chosen) {
    const double weight = weight_of(n) / sum;
    add(climate.daily_range_K, weight, n.station->daily_range_K.value_or(Months{}));
    draft.sources.push_back(source_of("daily range", n, site, weight));
  }
}

void ClimateTable::add_clearness(const sky::Site& site, const std::vector<Near>& near, Draft& draft) const {
  sky::MonthlyClimate& climate = draft.climate;
  std::vector<Near> ranked = near;
  for (Near& n : ranked) {
    if (!n.station->sunshine_h) n.apart_km += kNoSunshinePenalty_km;
  }
  std::string names;
  std::string methods;
  const std::vector<Near> chosen = choose(ranked);
  const double sum = sum_of_weights(chosen);
  for (const Near& n : chosen) {
    const double weight = weight_of(n) / sum;
    std::string method;
    add(climate.clearness, weight, station_clearness(*n.station, method));
    names += fmt::format("{}{} {:.0f} km", names.empty() ? "" : ", ", n.station->name, n.distance_km);
    if (methods.find(method) == std::string::npos) methods += ", " + method;
    draft.sources.push_back(source_of("sunshine", n, site, weight));
  }
  climate.origin += fmt::format("Sunshine: {}{}. ", names, methods);
}

void ClimateTable::land_climate(const sky::Site& site, const std::vector<Near>& near, Draft& draft) const {
  add_temperature(site, near, draft);
  add_daily_range(site, near, draft);
  add_clearness(site, near, draft);
  draft.climate.wind_m_s.fill(kLandWind_m_s);
  draft.climate.origin += fmt::format("Wind {} m/s is an assumption. ", kLandWind_m_s);
  draft.climate.origin += "Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt.";
}

}  // namespace voltwright::files
