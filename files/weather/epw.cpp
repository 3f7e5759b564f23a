#include "files/weather/epw.h"

#include <fmt/format.h>

#include <utility>

#include "files/weather/epw_rows.h"

namespace voltwright::files {

base::Result<WeatherSeries> read_epw(std::string_view text, const std::string& name) {
  auto rows = read_epw_rows(text, name);
  if (!rows.ok()) return rows.problems();
  const EpwRows& file = rows.value();
  WeatherSeries series;
  series.format = "EPW";
  series.place = file.city;
  series.site = file.site;
  series.records_per_hour = file.records_per_hour;
  series.last_line = file.last_line;
  series.clock_remedy =
      "If the rows are in UTC or another clock, write that time zone into the LOCATION line.";
  // Row H is the hour up to H; several rows of an hour are averaged, and so are their instants.
  const double records = file.records_per_hour;
  series.timings.push_back({.zone_h = file.zone_h,
                            .interval_h = -1.0,
                            .temperature_h = -(records - 1.0) / (2.0 * records),
                            .words = "the hour that ends at its number, in the time zone of the header"});
  if (file.radiation_offset_h) {
    // One maker's converter: row H holds the values of the stamp H - 1, the radiation that of H + offset.
    const double interval_h = *file.radiation_offset_h - 0.5;
    const std::string words = fmt::format("instants at the hour {:+g} h", *file.radiation_offset_h);
    series.timings.push_back(
        {.zone_h = 0.0, .interval_h = interval_h, .temperature_h = -1.0, .words = words + " in UTC"});
    series.timings.push_back({.zone_h = file.zone_h,
                              .interval_h = interval_h,
                              .temperature_h = -1.0,
                              .words = words + " in the time zone of the header"});
  }
  series.records.reserve(file.rows.size());
  for (const EpwRow& row : file.rows) {
    series.records.push_back({.line = row.line,
                              .month = row.month,
                              .day = row.day,
                              .stamp_s = std::int64_t{row.hour} * 3600,
                              .value = row.value});
  }
  return series;
}

}  // namespace voltwright::files
