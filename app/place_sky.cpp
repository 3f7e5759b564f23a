#include "app/place_sky.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "app/battery_on_hand.h"
#include "app/parallel.h"
#include "engine/sky/made_weather.h"
#include "engine/sky/sun.h"
#include "engine/units/parse.h"
#include "files/climate.h"
#include "files/climate_override.h"
#include "files/daylight.h"
#include "files/gazetteer.h"
#include "files/text_file.h"

namespace voltwright::app {

namespace {

constexpr std::int64_t kYearStart_utc_s = 1672531200;  // 2023-01-01, a year of 365 days
constexpr double kSecondsPerDegree = 240.0;            // the sun's course over a degree of longitude
constexpr std::int64_t kMinute_s = 60;
constexpr std::size_t kDayMinutes = 1440;
constexpr std::size_t kYearMinutes = 365 * kDayMinutes;
constexpr double kMinutesPerHour = 60.0;
constexpr double kPerThousand = 1e-3;
constexpr double kDefaultPeak_W = 100.0;
constexpr double kDefaultLosses = 0.10;
constexpr double kLeastPeak_W = 0.1;
constexpr double kMostPeak_W = 1e6;
constexpr double kMostLosses = 0.9;
constexpr double kLowest_m = -450.0;
constexpr double kHighest_m = 6000.0;
constexpr int kMostYears = 1000;
constexpr double kLowShare = 0.1;
constexpr double kSouth_deg = 180.0;

double metres_of(units::Length length) { return units::as_metres(length); }
double fraction_of(units::Fraction fraction) { return units::as_fraction(fraction); }
double degrees_of(double degrees) { return degrees; }

void add_problem(OptionReader& reader, const char* field, std::string what, std::string given,
                 std::string remedy) {
  base::Problem problem;
  problem.field = field;
  problem.what = std::move(what);
  problem.given = std::move(given);
  problem.remedy = std::move(remedy);
  reader.add(std::move(problem));
}

/// The place of the request; without one there is a problem in the reader.
journey::Place place_of(const SkyRequest& request, const files::Gazetteer& gazetteer, OptionReader& reader) {
  journey::Place place;
  if (request.latitude_deg && request.longitude_deg) {
    const double north = *request.latitude_deg;
    const double east = *request.longitude_deg;
    place.site.latitude_deg = reader.checked(north, fmt::format("{}", north), "--lat", 0.0, -90.0, 90.0);
    place.site.longitude_deg = reader.checked(east, fmt::format("{}", east), "--lon", 0.0, -180.0, 180.0);
    place.name = request.place.empty() ? fmt::format("{:.2f}, {:.2f}", north, east) : request.place;
    place.zone = gazetteer.zone_at(place.site.latitude_deg, place.site.longitude_deg);
  } else if (request.latitude_deg || request.longitude_deg) {
    add_problem(reader, request.latitude_deg ? "--lon" : "--lat", "A point needs both.", "",
                "Give --lat and --lon in degrees, north and east positive.");
  } else if (request.place.empty()) {
    add_problem(reader, "PLACE", "No place is given.", "", "Give a town, or --lat and --lon.");
  } else if (auto found = gazetteer.find(request.place)) {
    place = std::move(*found);
  } else {
    std::string near;
    for (const std::string& name : gazetteer.near_names(request.place)) {
      near += (near.empty() ? "Near: " : ", ") + name;
    }
    add_problem(reader, "PLACE", "This place is not in the list.", request.place,
                near.empty() ? "Give --lat and --lon." : near + ". Or give --lat and --lon.");
  }
  place.site.elevation_m = reader.take(request.elevation, "--elevation", units::parse_length, metres_of,
                                       place.site.elevation_m, kLowest_m, kHighest_m);
  return place;
}

void take_panel(const SkyRequest& request, SkyResponse& response, OptionReader& reader) {
  response.peak_W = reader.take(request.peak, "--peak", units::parse_power, units::as_watts, kDefaultPeak_W,
                                kLeastPeak_W, kMostPeak_W);
  response.losses = reader.take(request.losses, "--losses", units::parse_fraction, fraction_of,
                                kDefaultLosses, 0.0, kMostLosses);
  response.plane.tilt_deg =
      reader.take(request.tilt, "--tilt", units::parse_angle_deg, degrees_of, 0.0, 0.0, 90.0);
  const double equator_deg = response.place.site.latitude_deg < 0.0 ? 0.0 : kSouth_deg;
  response.plane.azimuth_deg = reader.take(request.azimuth, "--azimuth", units::parse_direction_deg,
                                           degrees_of, equator_deg, 0.0, 360.0);
  bool known = request.mounting.empty();
  for (const auto mounting :
       {sky::Mounting::kOpenRack, sky::Mounting::kVentilatedRoof, sky::Mounting::kGluedFlat}) {
    if (request.mounting != name_of(mounting)) continue;
    response.plane.mounting = mounting;
    known = true;
  }
  if (!known) {
    add_problem(reader, "--mounting", "This is no mounting.", request.mounting,
                "Write \"open rack\", \"ventilated roof\" or \"glued flat\".");
  }
  response.years = static_cast<int>(
      reader.checked(request.years, fmt::format("{}", request.years), "--years", 1.0, 1.0, kMostYears));
  response.seed = request.seed;
}

/// Sums of one made year.
struct MadeMonth {
  double ground_kWh_m2_day = 0.0;
  double panel_Wh_day = 0.0;
  double coldest_C = 0.0;
  double warmest_C = 0.0;
};
using MadeYear = std::array<MadeMonth, 12>;

MadeYear year_of(const SkyResponse& r, const sky::WeatherMinutes& weather, const sky::SunMinutes& sun) {
  sky::Module module;
  module.peak = units::watts(r.peak_W);
  const std::vector<float> power_W = sky::array_power_W(sky::plane_minutes(sun, weather, r.plane), module, 1);
  MadeYear year;
  std::size_t from = 0;
  for (std::size_t m = 0; m < year.size(); ++m) {
    const auto days = static_cast<std::size_t>(files::kDaysInMonth[m]);
    const std::size_t to = from + days * kDayMinutes;
    MadeMonth& month = year[m];
    month.coldest_C = month.warmest_C = static_cast<double>(weather.temperature_C[from]);
    double ground = 0.0;
    double panel = 0.0;
    for (std::size_t i = from; i < to; ++i) {
      ground += static_cast<double>(weather.ghi_W_m2[i]);
      panel += static_cast<double>(power_W[i]);
      month.coldest_C = std::min(month.coldest_C, static_cast<double>(weather.temperature_C[i]));
      month.warmest_C = std::max(month.warmest_C, static_cast<double>(weather.temperature_C[i]));
    }
    const double hours = kMinutesPerHour * static_cast<double>(days);
    month.ground_kWh_m2_day = ground / hours * kPerThousand;
    month.panel_Wh_day = panel / hours * (1.0 - r.losses);
    from = to;
  }
  return year;
}

/// Value below which a share of the values lies, on straight lines between them.
double share_of(const std::vector<double>& sorted, double share) {
  const double at = share * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(at);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (sorted[above] - sorted[below]) * (at - static_cast<double>(below));
}

template <class Value>
YearSpread spread_of(const std::vector<MadeYear>& years, const Value& value) {
  std::vector<double> values;
  values.reserve(years.size());
  for (const MadeYear& year : years) values.push_back(value(year));
  std::sort(values.begin(), values.end());
  return {share_of(values, kLowShare), share_of(values, 0.5), share_of(values, 1.0 - kLowShare)};
}

/// Sum over the year of a daily mean of each month.
template <class Daily>
double year_sum(const Daily& daily) {
  double sum = 0.0;
  for (std::size_t m = 0; m < files::kDaysInMonth.size(); ++m) sum += files::kDaysInMonth[m] * daily(m);
  return sum;
}

void add_spreads(const std::vector<MadeYear>& years, SkyResponse& r) {
  for (std::size_t m = 0; m < r.months.size(); ++m) {
    SkyMonth& month = r.months[m];
    month.ground_kWh_m2_day = spread_of(years, [m](const MadeYear& y) { return y[m].ground_kWh_m2_day; });
    month.panel_Wh_day = spread_of(years, [m](const MadeYear& y) { return y[m].panel_Wh_day; });
    month.coldest_C = years.front()[m].coldest_C;
    month.warmest_C = years.front()[m].warmest_C;
    for (const MadeYear& year : years) {
      month.coldest_C = std::min(month.coldest_C, year[m].coldest_C);
      month.warmest_C = std::max(month.warmest_C, year[m].warmest_C);
    }
  }
  r.ground_kWh_m2_year = spread_of(years, [](const MadeYear& y) {
    return year_sum([&](std::size_t m) { return y[m].ground_kWh_m2_day; });
  });
  r.panel_kWh_year = spread_of(years, [](const MadeYear& y) {
    return kPerThousand * year_sum([&](std::size_t m) { return y[m].panel_Wh_day; });
  });
  const auto colder = [](const MadeMonth& a, const MadeMonth& b) { return a.coldest_C < b.coldest_C; };
  const auto cooler = [](const MadeMonth& a, const MadeMonth& b) { return a.warmest_C < b.warmest_C; };
  r.coldest_C = spread_of(
      years, [&](const MadeYear& y) { return std::min_element(y.begin(), y.end(), colder)->coldest_C; });
  r.warmest_C = spread_of(
      years, [&](const MadeYear& y) { return std::max_element(y.begin(), y.end(), cooler)->warmest_C; });
}

}  // namespace

const char* name_of(sky::Mounting mounting) {
  switch (mounting) {
    case sky::Mounting::kOpenRack:
      return "open rack";
    case sky::Mounting::kVentilatedRoof:
      return "ventilated roof";
    case sky::Mounting::kGluedFlat:
      break;
  }
  return "glued flat";
}

base::Result<SkyResponse> place_sky(const SkyRequest& request) {
  auto gazetteer = files::Gazetteer::built_in();
  if (!gazetteer) return gazetteer.problems();
  auto climates = files::ClimateTable::built_in();
  if (!climates) return climates.problems();
  SkyResponse r;
  OptionReader reader;
  r.place = place_of(request, gazetteer.value(), reader);
  take_panel(request, r, reader);
  if (!reader.problems().empty()) return reader.problems();
  if (!request.climate_file.empty()) {
    const auto text = files::read_text(request.climate_file);
    if (!text) return text.problems();
    auto given = files::read_climate_override(text.value(), request.climate_file, r.place.site.latitude_deg);
    if (!given) return given.problems();
    r.overridden = given.value();
  }
  auto climate = files::climate_of(climates.value(), r.place.site, r.overridden, &r.sources);
  if (!climate) return climate.problems();
  r.climate = std::move(climate).value();

  const files::MonthlyDaylight daylight = files::monthly_daylight(r.place.site.latitude_deg);
  for (std::size_t m = 0; m < r.months.size(); ++m) {
    r.months[m].above_air_kWh_m2_day = daylight.horizontal_kWh_m2_day[m];
    r.months[m].normal_kWh_m2_day = r.climate.clearness[m] * daylight.horizontal_kWh_m2_day[m];
  }
  r.normal_kWh_m2_year = year_sum([&](std::size_t m) { return r.months[m].normal_kWh_m2_day; });

  // Days of the place's own sun, so that no day is cut in two at the edge of a month.
  const auto ahead_min = static_cast<std::int64_t>(
      std::lround(r.place.site.longitude_deg * kSecondsPerDegree / static_cast<double>(kMinute_s)));
  const sky::SunMinutes sun =
      sky::sun_minutes(r.place.site, kYearStart_utc_s - ahead_min * kMinute_s, kYearMinutes);
  std::vector<MadeYear> years(static_cast<std::size_t>(r.years));
  on_threads()(years.size(), [&](std::size_t i) {
    years[i] = year_of(r,
                       sky::make_weather(r.place.site, r.climate, climates.value().matrices(), sun, r.seed,
                                         static_cast<std::uint64_t>(i), 0),
                       sun);
  });
  add_spreads(years, r);
  return r;
}

}  // namespace voltwright::app
