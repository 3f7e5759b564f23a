#pragma once
// Hourly values and typical years of the European Commission's PVGIS, as CSV and JSON. Format notes:
// docs/formats/pvgis.md.
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "files/weather/lines.h"
#include "files/weather/read_weather.h"
#include "files/weather/series.h"

namespace voltwright::files {

/// Columns of both kinds of file: h horizontal, n normal to the sun, i on the plane of the request.
enum class PvgisColumn : std::uint8_t {
  kGlobal,
  kDirectNormal,
  kDiffuse,
  kPlane,
  kPlaneBeam,
  kPlaneDiffuse,
  kPlaneReflected,
  kTemperature,
  kWind
};
inline constexpr std::size_t kPvgisColumns = 9;
inline constexpr std::array<std::string_view, kPvgisColumns> kPvgisNames = {
    "G(h)", "Gb(n)", "Gd(h)", "G(i)", "Gb(i)", "Gd(i)", "Gr(i)", "T2m", "WS10m"};
/// The rule of which quantity a column is checked by.
WeatherColumn rule_for(PvgisColumn column);

struct PvgisRow {
  int line = 0;  // of the CSV; 0 in JSON
  std::string_view time;
  std::array<std::optional<double>, kPvgisColumns> value;
};

/// A file of either layout as it was read.
struct PvgisFile {
  bool typical = false;  // "time(UTC)" and horizontal columns; otherwise hourly values of years
  std::optional<double> latitude_deg;
  std::optional<double> longitude_deg;
  std::optional<double> elevation_m;
  std::optional<double> radiation_offset_h;
  std::optional<double> slope_deg;
  std::optional<double> azimuth_deg;  // 0 south, 90 west, as PVGIS counts
  std::array<bool, kPvgisColumns> has{};
  std::vector<PvgisRow> rows;
  int last_line = 0;
};

/// Makes a series of it: stamps are UTC, radiation holds at an instant and stands for the hour around it.
/// Values on a tilted plane are taken back to the horizontal where beam and reflected light are given.
base::Result<WeatherSeries> series_of(const PvgisFile& file, WeatherProblems& problems,
                                      const WeatherOptions& options);

base::Result<WeatherSeries> read_pvgis_csv(std::string_view text, const std::string& name,
                                           const WeatherOptions& options);
base::Result<WeatherSeries> read_pvgis_json(std::string_view text, const std::string& name,
                                            const WeatherOptions& options);

}  // namespace voltwright::files
