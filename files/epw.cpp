#include "files/epw.h"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <cmath>
#include <optional>
#include <utility>

#include "files/daylight.h"
#include "files/epw_rows.h"
#include "files/gap_filling.h"
#include "files/solar_noon.h"
#include "files/text_problem.h"

namespace voltwright::files {

namespace {

constexpr std::size_t kHours = 8760;
constexpr double kClockTolerance_h = 0.2;
constexpr double kAssumedWind_m_s = 2.5;
constexpr std::size_t kLinesShown = 8;

using Sparse = std::vector<std::optional<double>>;
using Columns = std::array<Sparse, kEpwColumns>;

base::Problem problem_at(const std::string& name, int line, std::string what, std::string given,
                         std::string limit, std::string remedy) {
  return text_problem(name, line, line > 0 ? 1 : 0,
                      {.what = std::move(what),
                       .field = "",
                       .given = std::move(given),
                       .limit = std::move(limit),
                       .remedy = std::move(remedy)});
}

/// Hour of the year 0..8759 in which a row lies.
std::size_t hour_of_year(const EpwRow& row) {
  int days = row.day - 1;
  for (int m = 1; m < row.month; ++m) days += kDaysInMonth[static_cast<std::size_t>(m - 1)];
  return static_cast<std::size_t>(days * 24 + row.hour - 1);
}

/// Lays the rows onto the hours of the year and averages several records of an hour.
base::Result<Columns> lay_out(const EpwRows& file, const std::string& name) {
  const auto records = static_cast<std::size_t>(file.records_per_hour);
  if (file.rows.size() != kHours * records) {
    return problem_at(name, file.last_line, "The file does not hold a whole year.",
                      fmt::format("{} rows without 29 February", file.rows.size()),
                      fmt::format("{} rows ({} an hour), or {} with 29 February", kHours * records, records,
                                  (kHours + 24) * records),
                      "Fetch the file again, or one that covers the year.");
  }
  std::vector<std::size_t> seen(kHours, 0);
  Columns columns;
  std::array<std::vector<std::size_t>, kEpwColumns> count;
  for (std::size_t c = 0; c < kEpwColumns; ++c) {
    columns[c].resize(kHours);
    count[c].resize(kHours, 0);
  }
  base::Problems problems;
  for (const EpwRow& row : file.rows) {
    const std::size_t hour = hour_of_year(row);
    if (++seen[hour] > records && problems.size() < 10) {
      problems.push_back(problem_at(name, row.line, "This hour stands in the file more than once.",
                                    fmt::format("month {}, day {}, hour {}", row.month, row.day, row.hour),
                                    fmt::format("{} rows an hour", records),
                                    "Remove the row that is too many."));
    }
    for (std::size_t c = 0; c < kEpwColumns; ++c) {
      const auto& value = row.value[c];
      if (!value) continue;
      const auto records_so_far = static_cast<double>(count[c][hour]++);
      const double mean = columns[c][hour].value_or(0.0);
      columns[c][hour] = mean + (*value - mean) / (records_so_far + 1.0);
    }
  }
  if (!problems.empty()) return problems;
  return columns;
}

/// Lines of the rows that lack a value, as "9, 10, 11 and 40 more".
std::string lines_of_missing(const EpwRows& file, std::size_t column, std::size_t& missing) {
  std::string text;
  for (const EpwRow& row : file.rows) {
    if (row.value[column]) continue;
    if (missing < kLinesShown) text += fmt::format("{}{}", missing == 0 ? "" : ", ", row.line);
    ++missing;
  }
  if (missing > kLinesShown) text += fmt::format(" and {} more", missing - kLinesShown);
  return text;
}

void warn_of_filled(const EpwRows& file, const std::string& name, base::Problems& warnings) {
  std::string given;
  std::size_t total = 0;
  for (std::size_t c = 0; c < kEpwColumns; ++c) {
    std::size_t missing = 0;
    const std::string lines = lines_of_missing(file, c, missing);
    if (missing == 0) continue;
    total += missing;
    given += fmt::format("{}{} {} (lines {})", given.empty() ? "" : "; ",
                         epw_column_name(static_cast<EpwColumn>(c)), missing, lines);
  }
  if (total == 0) return;
  warnings.push_back(text_warning(
      name, 0, 0,
      {.what = fmt::format("{} missing values were filled from the hours and days around them.", total),
       .field = "",
       .given = given,
       .limit = "",
       .remedy = "Gaps of up to 3 h are bridged by a straight line, longer ones by the same hour "
                 "of the days around."}));
}

/// Mean over the hour from values that hold at its end: the mean of its two ends.
std::vector<double> means_of_ends(const std::vector<double>& ends) {
  std::vector<double> means(ends.size());
  for (std::size_t i = 0; i < ends.size(); ++i) {
    means[i] = 0.5 * (ends[(i + ends.size() - 1) % ends.size()] + ends[i]);
  }
  return means;
}

/// Hours of local standard time as hours of UTC; with a zone of half or quarter hours each UTC hour takes its
/// share of the two local hours under it, so that the sum of the year stays.
std::vector<double> to_utc(const std::vector<double>& local, double zone_h) {
  const double whole = std::floor(zone_h);
  const double share = zone_h - whole;
  const auto n = static_cast<std::ptrdiff_t>(local.size());
  const auto shift = static_cast<std::ptrdiff_t>(whole);
  std::vector<double> utc(local.size());
  for (std::ptrdiff_t i = 0; i < n; ++i) {
    const auto first = static_cast<std::size_t>((i + shift + n) % n);
    const auto second = static_cast<std::size_t>((i + shift + 1 + n) % n);
    utc[static_cast<std::size_t>(i)] = (1.0 - share) * local[first] + share * local[second];
  }
  return utc;
}

void warn_of_clock(const std::vector<double>& ghi_local, const EpwRows& file, const std::string& name,
                   base::Problems& warnings) {
  const double offset_h = solar_noon_offset_h(ghi_local, file.site.longitude_deg, file.zone_h);
  if (std::abs(offset_h) <= kClockTolerance_h) return;
  warnings.push_back(text_warning(
      name, 1, 0,
      {.what =
           fmt::format("The sun of this file is {:.3f} h {} for its longitude and time zone: its clock is "
                       "shifted by {:+.3f} h.",
                       std::abs(offset_h), offset_h < 0.0 ? "early" : "late", offset_h),
       .field = "time zone",
       .given = fmt::format("zone {:g} h, longitude {:g}", file.zone_h, file.site.longitude_deg),
       .limit = fmt::format("within {:g} h of solar noon", kClockTolerance_h),
       .remedy = "If the rows are in UTC or another clock, write that time zone into the LOCATION line; "
                 "otherwise fetch the file in local standard time. It is used as it stands."}));
}

std::int64_t start_of_2023_utc_s() {
  using std::chrono::sys_days;
  const sys_days day = std::chrono::year{2023} / 1 / 1;
  return std::chrono::duration_cast<std::chrono::seconds>(day.time_since_epoch()).count();
}

}  // namespace

base::Result<ReadWeather> read_epw(std::string_view text, const std::string& name) {
  const auto rows = read_epw_rows(text, name);
  if (!rows.ok()) return rows.problems();
  const EpwRows& file = rows.value();
  auto laid_out = lay_out(file, name);
  if (!laid_out.ok()) return laid_out.problems();
  ReadWeather result;
  base::Problems problems;
  std::array<std::vector<double>, kEpwColumns> columns;
  for (std::size_t c = 0; c < kEpwColumns; ++c) {
    auto filled = fill_gaps(laid_out.value()[c]);
    const auto column = static_cast<EpwColumn>(c);
    if (filled) {
      columns[c] = std::move(*filled);
    } else if (column == EpwColumn::kWind) {
      columns[c].assign(kHours, kAssumedWind_m_s);
    } else {
      problems.push_back(problem_at(name, 0,
                                    fmt::format("The file holds no {} at all.", epw_column_name(column)), "",
                                    "", "Use a weather file that has it."));
    }
  }
  if (!problems.empty()) return problems;
  warn_of_filled(file, name, result.warnings);
  const auto& ghi = columns[static_cast<std::size_t>(EpwColumn::kGhi)];
  warn_of_clock(ghi, file, name, result.warnings);
  const auto mean_column = [&](EpwColumn column) {
    return to_utc(means_of_ends(columns[static_cast<std::size_t>(column)]), file.zone_h);
  };
  sky::HourlyWeather& weather = result.weather;
  weather.site = file.site;
  weather.start_utc_s = start_of_2023_utc_s();
  weather.ghi_W_m2 = to_utc(ghi, file.zone_h);
  weather.dni_W_m2 = to_utc(columns[static_cast<std::size_t>(EpwColumn::kDni)], file.zone_h);
  weather.dhi_W_m2 = to_utc(columns[static_cast<std::size_t>(EpwColumn::kDhi)], file.zone_h);
  weather.temperature_C = mean_column(EpwColumn::kTemperature);
  weather.wind_m_s = mean_column(EpwColumn::kWind);
  weather.origin = fmt::format("Typical year from {}: {}, {:.2f} N {:.2f} E, {:.0f} m.", name,
                               file.city.empty() ? "place not named" : file.city, file.site.latitude_deg,
                               file.site.longitude_deg, file.site.elevation_m);
  return result;
}

}  // namespace voltwright::files
