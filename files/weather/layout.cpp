#include "files/weather/layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "engine/sky/calendar.h"
#include "files/daylight.h"
#include "files/text_problem.h"

namespace voltwright::files {

namespace {

using sky::floor_divide;
using sky::kSecondsPerDay;
using sky::kSecondsPerHour;

constexpr std::int64_t kYear_s = 365 * kSecondsPerDay;
constexpr std::int64_t kLeapDay = 59;        // 29 February, counted from 0
constexpr std::int64_t kStampJitter_s = 90;  // clocks of recorders that are a minute out
constexpr std::size_t kMostProblems = 10;

std::int64_t remainder(std::int64_t a, std::int64_t b) { return a - b * floor_divide(a, b); }

bool has_leap_day(const WeatherSeries& series) {
  return std::any_of(series.records.begin(), series.records.end(),
                     [](const WeatherRecord& r) { return r.month == 2 && r.day == 29; });
}

std::int64_t day_of_year(int month, int day, bool leap) {
  std::int64_t days = day - 1;
  for (int m = 1; m < month; ++m) days += kDaysInMonth.at(static_cast<std::size_t>(m - 1));
  return days + (leap && month > 2 ? 1 : 0);
}

/// Start of a record's interval in the file's clock, in seconds of a year of 365 days; nothing on 29
/// February.
std::optional<std::int64_t> start_in_year(const WeatherRecord& record, std::int64_t shift_s, bool leap) {
  const std::int64_t year_s = kYear_s + (leap ? kSecondsPerDay : 0);
  const std::int64_t stamp_s =
      day_of_year(record.month, record.day, leap) * kSecondsPerDay + record.stamp_s + shift_s;
  const std::int64_t start_s = remainder(stamp_s, year_s);
  if (!leap || start_s < kLeapDay * kSecondsPerDay) return start_s;
  if (start_s < (kLeapDay + 1) * kSecondsPerDay) return std::nullopt;
  return start_s - kSecondsPerDay;
}

base::Problem row_problem(const std::string& name, const WeatherRecord& record, std::string what,
                          std::string limit, std::string remedy) {
  const std::int64_t minute = record.stamp_s / 60;
  return text_problem(name, record.line, record.line > 0 ? 1 : 0,
                      {.what = std::move(what),
                       .field = "time",
                       .given = fmt::format("{}-{:02}-{:02} {:02}:{:02}", record.year, record.month,
                                            record.day, minute / 60, minute % 60),
                       .limit = std::move(limit),
                       .remedy = std::move(remedy)});
}

void add_value(WeatherHours& hours, std::size_t hour, std::size_t column, double value,
               std::vector<std::uint8_t>& count) {
  auto& mean = hours.value.at(column)[hour];
  const double before = mean.value_or(0.0);
  mean = before + (value - before) / (static_cast<double>(count[hour]++) + 1.0);
}

void add_record(const WeatherRecord& record, std::size_t hour,
                std::array<std::vector<std::uint8_t>, kWeatherColumns>& count, WeatherHours& hours) {
  for (std::size_t c = 0; c < kWeatherColumns; ++c) {
    const std::optional<double>& value = record.value.at(c);
    if (value) add_value(hours, hour, c, *value, count.at(c));
  }
}

/// A record with the start of its interval in the file's clock, in seconds of a year of 365 days.
struct Begun {
  const WeatherRecord* record;
  std::int64_t start_s;
};

/// The records outside 29 February; those of one hour begin together where they are to be averaged.
std::vector<Begun> begun(const WeatherSeries& series, std::int64_t shift_s) {
  const bool leap = has_leap_day(series);
  const bool averaged = series.records_per_hour > 1;
  std::vector<Begun> all;
  for (const WeatherRecord& record : series.records) {
    const std::optional<std::int64_t> start_s = start_in_year(record, shift_s, leap);
    if (!start_s) continue;
    all.push_back({&record, averaged ? *start_s - remainder(*start_s, kSecondsPerHour) : *start_s});
  }
  return all;
}

/// The last year of which at most two days are missing.
std::optional<int> last_whole_year(const WeatherSeries& series) {
  constexpr std::int64_t kNearlyWhole_h = 8760 - 48;
  const auto& records = series.records;
  for (int y = records.back().year; y >= records.front().year; --y) {
    const auto rows =
        std::count_if(records.begin(), records.end(), [y](const auto& r) { return r.year == y; });
    if (rows >= kNearlyWhole_h * series.records_per_hour) return y;
  }
  return std::nullopt;
}

/// What the rows span, from the earliest stamp to the latest.
void set_span(const WeatherSeries& series, std::size_t first_index, WeatherHours& hours) {
  hours.first_hour = first_index;
  if (series.typical || series.records.empty()) {
    hours.hours = kHoursOfYear;
    return;
  }
  const auto [first, last] =
      std::minmax_element(series.records.begin(), series.records.end(),
                          [](const auto& a, const auto& b) { return stamp_of(a) < stamp_of(b); });
  std::int64_t span_h = (stamp_of(*last) - stamp_of(*first)) / kSecondsPerHour + 1;
  if (has_leap_day(series)) span_h -= 24;
  hours.hours =
      static_cast<std::size_t>(std::clamp<std::int64_t>(span_h, 1, static_cast<std::int64_t>(kHoursOfYear)));
}

}  // namespace

std::int64_t stamp_of(const WeatherRecord& record) {
  using namespace std::chrono;
  const sys_days month{year{record.year} / month_day{std::chrono::month{static_cast<unsigned>(record.month)},
                                                     std::chrono::day{1}}};
  return (month.time_since_epoch().count() + record.day - 1) * kSecondsPerDay + record.stamp_s;
}

base::Result<WeatherHours> lay_out(const WeatherSeries& series, const WeatherTiming& timing,
                                   const std::string& name) {
  const auto shift_s = static_cast<std::int64_t>(std::llround(timing.interval_h * 3600.0));
  const auto zone_s = static_cast<std::int64_t>(std::llround(timing.zone_h * 3600.0));
  WeatherHours hours;
  hours.seen.assign(kHoursOfYear, 0);
  std::array<std::vector<std::uint8_t>, kWeatherColumns> count;
  for (std::size_t c = 0; c < kWeatherColumns; ++c) {
    hours.value.at(c).resize(kHoursOfYear);
    count.at(c).assign(kHoursOfYear, 0);
  }
  base::Problems problems;
  bool first = true;
  std::size_t first_index = 0;
  for (const Begun& row : begun(series, shift_s)) {
    const WeatherRecord& record = *row.record;
    const std::int64_t utc_s = row.start_s - zone_s;
    if (first) hours.phase_s = remainder(utc_s, kSecondsPerHour);
    const std::int64_t since_s = utc_s - hours.phase_s;
    const std::int64_t whole = floor_divide(since_s + kSecondsPerHour / 2, kSecondsPerHour);
    if (std::abs(since_s - whole * kSecondsPerHour) > kStampJitter_s) {
      problems.push_back(row_problem(name, record, "The minute of the hour changes from row to row.",
                                     "one row an hour at the same minute, or several rows in every hour",
                                     "Fetch the file as hourly values, or mend the row."));
      if (problems.size() >= kMostProblems) break;
      continue;
    }
    const auto hour = static_cast<std::size_t>(remainder(whole, static_cast<std::int64_t>(kHoursOfYear)));
    if (first) first_index = hour;
    first = false;
    if (++hours.seen[hour] > series.records_per_hour) {
      problems.push_back(row_problem(name, record, "This hour stands in the file more than once.",
                                     fmt::format("{} rows an hour", series.records_per_hour),
                                     "Remove the row that is too many."));
      if (problems.size() >= kMostProblems) break;
    }
    add_record(record, hour, count, hours);
  }
  if (!problems.empty()) return problems;
  set_span(series, series.typical ? 0 : first_index, hours);
  return hours;
}

void choose_year(WeatherSeries& series, std::optional<int> year) {
  if (series.typical || series.records.empty()) return;
  auto& records = series.records;
  const auto earlier = [](const auto& a, const auto& b) { return stamp_of(a) < stamp_of(b); };
  if (!std::is_sorted(records.begin(), records.end(), earlier)) {
    std::stable_sort(records.begin(), records.end(), earlier);
    series.repairs.emplace_back("The rows were not in order of time; they were sorted.");
  }
  const int first = records.front().year;
  const int last = records.back().year;
  const std::int64_t span_s = stamp_of(records.back()) - stamp_of(records.front()) + kSecondsPerHour;
  const std::int64_t most_s = kYear_s + (has_leap_day(series) ? kSecondsPerDay : 0);
  if (!year && span_s <= most_s) return;
  if (const std::optional<int> chosen = year ? year : last_whole_year(series)) {
    const int kept = *chosen;
    std::erase_if(records, [kept](const WeatherRecord& r) { return r.year != kept; });
    series.repairs.push_back(fmt::format("Of the years {} to {} the year {} was used.", first, last, kept));
    return;
  }
  // Half-open, so that the same hour of two years cannot both stay; a leap day in between is left out later.
  const std::int64_t end_s = stamp_of(records.back());
  std::erase_if(records, [&](const WeatherRecord& r) { return stamp_of(r) <= end_s - kYear_s; });
  series.repairs.push_back(fmt::format("Of the years {} to {} the last 365 days were used.", first, last));
}

}  // namespace voltwright::files
