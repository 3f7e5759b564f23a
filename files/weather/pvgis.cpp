#include "files/weather/pvgis.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sky/split.h"
#include "engine/sky/sun.h"
#include "files/weather/layout.h"

namespace voltwright::files {

namespace {

constexpr double kRad = std::numbers::pi / 180.0;
/// PVGIS reckons with this share of light thrown back by the ground (from memory).
constexpr double kAlbedo = 0.2;
/// Below this slope the reflected light is too little to tell the global radiation from its two decimals.
constexpr double kLeastSlope_deg = 10.0;
constexpr double kLeastCosine = 0.05;
constexpr double kMostGlobal_W_m2 = 1500.0;
constexpr double kFlat_deg = 0.01;

using Values = std::array<std::optional<double>, kPvgisColumns>;

std::optional<double> at(const Values& values, PvgisColumn column) {
  return values.at(static_cast<std::size_t>(column));
}

bool has(const PvgisFile& file, PvgisColumn column) { return file.has.at(static_cast<std::size_t>(column)); }

/// YYYYMMDD:HHMM.
bool read_stamp(std::string_view time, WeatherRecord& record) {
  if (time.size() != 13 || time[8] != ':') return false;
  const auto year = digits(time.substr(0, 4));
  const auto month = digits(time.substr(4, 2));
  const auto day = digits(time.substr(6, 2));
  const auto hour = digits(time.substr(9, 2));
  const auto minute = digits(time.substr(11, 2));
  if (!year || !month || !day || !hour || !minute || !is_date(*year, *month, *day)) return false;
  if (*hour > 23 || *minute > 59) return false;
  record.year = *year;
  record.month = *month;
  record.day = *day;
  record.stamp_s = std::int64_t{*hour} * 3600 + std::int64_t{*minute} * 60;
  return true;
}

void set(WeatherRecord& record, WeatherColumn column, std::optional<double> value) {
  record.value.at(static_cast<std::size_t>(column)) = value;
}

/// Horizontal radiation from that on a tilted plane: the ground's share gives the global, the beam the
/// direct.
void take_back(const PvgisFile& file, const sky::Site& site, const Values& values, WeatherRecord& record) {
  const auto beam = at(values, PvgisColumn::kPlaneBeam);
  const auto diffuse = at(values, PvgisColumn::kPlaneDiffuse);
  const auto reflected = at(values, PvgisColumn::kPlaneReflected);
  if (!beam || !diffuse || !reflected) return;
  const double slope = file.slope_deg.value_or(0.0) * kRad;
  const double ground = kAlbedo * 0.5 * (1.0 - std::cos(slope));
  const double global = std::min(kMostGlobal_W_m2, *reflected / ground);
  const sky::SunPosition sun = sky::sun_position(static_cast<double>(stamp_of(record)), site);
  const double cos_zenith = std::cos(sun.zenith_deg * kRad);
  const double cos_incidence =
      cos_zenith * std::cos(slope) +
      std::sin(sun.zenith_deg * kRad) * std::sin(slope) *
          std::cos((sun.azimuth_deg - (file.azimuth_deg.value_or(0.0) + 180.0)) * kRad);
  double normal = 0.0;
  if (cos_incidence > kLeastCosine && cos_zenith > sky::kLowestCosForBeam) {
    normal = std::min(*beam / cos_incidence, global / cos_zenith);
  }
  normal = std::min(normal, kMostGlobal_W_m2);
  set(record, WeatherColumn::kGhi, global);
  set(record, WeatherColumn::kDni, normal);
  set(record, WeatherColumn::kDhi, std::max(0.0, global - normal * std::max(0.0, cos_zenith)));
}

/// Radiation of an hourly row on a horizontal plane.
void take_flat(const Values& values, WeatherRecord& record) {
  const auto beam = at(values, PvgisColumn::kPlaneBeam);
  const auto diffuse = at(values, PvgisColumn::kPlaneDiffuse);
  const auto plane = at(values, PvgisColumn::kPlane);
  if (beam && diffuse) {
    set(record, WeatherColumn::kGhi, std::min(kMostGlobal_W_m2, *beam + *diffuse));
    set(record, WeatherColumn::kDhi, diffuse);
  } else {
    set(record, WeatherColumn::kGhi, plane);
  }
}

bool components(const PvgisFile& file) {
  return has(file, PvgisColumn::kPlaneBeam) && has(file, PvgisColumn::kPlaneDiffuse);
}

/// True if the radiation of an hourly file can be brought onto the horizontal.
bool check_plane(const PvgisFile& file, WeatherProblems& problems) {
  ProblemWords words{.what = "",
                     .field = "slope",
                     .given = file.slope_deg ? fmt::format("{:g} deg", *file.slope_deg) : "",
                     .limit = "a horizontal plane (slope 0), or 10 to 90 deg with radiation components",
                     .remedy =
                         "Fetch the hourly values with slope 0 and radiation components, or the typical "
                         "year (TMY) of the place."};
  if (!has(file, PvgisColumn::kPlane) && !components(file)) {
    words.what = "The file holds power only, or no radiation that is known here.";
    words.field = "G(i) or Gb(i), Gd(i), Gr(i)";
  } else if (!file.slope_deg || !file.azimuth_deg) {
    words.what = "The file does not say how its plane stands, or the plane follows the sun.";
  } else if (*file.slope_deg > kFlat_deg && (!components(file) || !has(file, PvgisColumn::kPlaneReflected))) {
    words.what = "Radiation on a tilted plane without its components cannot be taken back to the horizontal.";
  } else if (*file.slope_deg > kFlat_deg && *file.slope_deg < kLeastSlope_deg) {
    words.what = "The plane is too flat for its reflected light to tell the global radiation.";
  } else {
    return true;
  }
  problems.add(0, 0, words);
  return false;
}

std::optional<sky::Site> site_of(const PvgisFile& file, const WeatherOptions& options) {
  if (!file.latitude_deg || !file.longitude_deg) return options.place;
  sky::Site site;
  site.latitude_deg = *file.latitude_deg;
  site.longitude_deg = *file.longitude_deg;
  site.elevation_m = file.elevation_m.value_or(0.0);
  return site;
}

}  // namespace

WeatherColumn rule_for(PvgisColumn column) {
  switch (column) {
    case PvgisColumn::kTemperature:
      return WeatherColumn::kTemperature;
    case PvgisColumn::kWind:
      return WeatherColumn::kWind;
    case PvgisColumn::kDirectNormal:
      return WeatherColumn::kDni;
    case PvgisColumn::kDiffuse:
    case PvgisColumn::kPlaneDiffuse:
      return WeatherColumn::kDhi;
    default:
      return WeatherColumn::kGhi;
  }
}

base::Result<WeatherSeries> series_of(const PvgisFile& file, WeatherProblems& problems,
                                      const WeatherOptions& options) {
  WeatherSeries series;
  series.format = file.typical ? "PVGIS TMY" : "PVGIS hourly";
  series.typical = file.typical;
  series.last_line = file.last_line;
  series.site = site_of(file, options);
  series.clock_remedy = "Fetch the file again: its rows should be in UTC.";
  WeatherTiming timing;
  double offset_h = file.radiation_offset_h.value_or(options.radiation_offset_h.value_or(0.0));
  if (!file.typical) offset_h = 0.0;  // there the minute of the stamp is that of the radiation
  if (file.typical && !file.radiation_offset_h) {
    series.repairs.push_back(
        fmt::format("The file does not say how long after its stamp the radiation holds; {:g} h was {}.",
                    offset_h, options.radiation_offset_h ? "given" : "assumed"));
  }
  if (!file.latitude_deg && series.site) {
    series.repairs.emplace_back("The file does not say where it is from; the place given with it was used.");
  }
  timing.interval_h = offset_h - 0.5;
  timing.temperature_h = 0.0;
  timing.words = "instants in UTC";
  series.timings.push_back(timing);
  bool tilted = false;
  if (!file.typical) {
    if (!check_plane(file, problems)) return problems.take();
    const double slope_deg = file.slope_deg.value_or(0.0);
    tilted = slope_deg > kFlat_deg;
    if (tilted) {
      series.repairs.push_back(fmt::format(
          "Radiation on a plane of {:g} deg was taken back to the horizontal: global from the light "
          "reflected by the ground (albedo {:g}, an assumption), direct from the beam.",
          slope_deg, kAlbedo));
    }
  }
  for (const PvgisRow& row : file.rows) {
    WeatherRecord record;
    record.line = row.line;
    if (!read_stamp(trimmed(row.time), record)) {
      problems.add(row.line, row.line > 0 ? 1 : 0,
                   {.what = "The date or time cannot be read.",
                    .field = "time",
                    .given = std::string(row.time),
                    .limit = "YYYYMMDD:HHMM",
                    .remedy = "Mend the row."});
      continue;
    }
    set(record, WeatherColumn::kTemperature, at(row.value, PvgisColumn::kTemperature));
    set(record, WeatherColumn::kWind, at(row.value, PvgisColumn::kWind));
    if (file.typical) {
      set(record, WeatherColumn::kGhi, at(row.value, PvgisColumn::kGlobal));
      set(record, WeatherColumn::kDni, at(row.value, PvgisColumn::kDirectNormal));
      set(record, WeatherColumn::kDhi, at(row.value, PvgisColumn::kDiffuse));
    } else if (!tilted) {
      take_flat(row.value, record);
    } else if (series.site) {
      take_back(file, *series.site, row.value, record);
    }
    series.records.push_back(record);
  }
  if (!problems.empty()) return problems.take();
  return series;
}

}  // namespace voltwright::files
