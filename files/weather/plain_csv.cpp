#include "files/weather/plain_csv.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "files/number_table.h"
#include "files/weather/column_titles.h"
#include "files/weather/layout.h"
#include "files/weather/lines.h"
#include "files/weather/stamp_text.h"

namespace voltwright::files {

namespace {

constexpr int kLinesAboveTitles = 60;
constexpr double kNightOffset_W_m2 = -20.0;  // a pyranometer cools against the sky and reads a little below 0
constexpr double kMissingBelow = -90.0;

/// The separator with which a line becomes usable titles; nothing for any other line.
std::optional<char> separator_of(std::string_view line) {
  for (const char separator : {',', ';', '\t'}) {
    if (line.find(separator) == std::string_view::npos) continue;
    if (weather_titles(line, separator).usable()) return separator;
  }
  return std::nullopt;
}

class PlainCsv {
 public:
  PlainCsv(std::string_view text, const std::string& name, const WeatherOptions& options)
      : lines_(text), problems_(name), options_(options) {}

  base::Result<WeatherSeries> read() {
    series_.format = "CSV";
    series_.clock_remedy = "Put a line \"# zone: +1\" (hours from UTC) above the titles.";
    if (read_head()) {
      while (lines_.next()) {
        if (!trimmed(lines_.text()).empty() && trimmed(lines_.text()).front() != '#') read_row();
      }
      series_.last_line = lines_.number();
      if (problems_.empty()) settle();
    }
    if (!problems_.empty()) return problems_.take();
    return std::move(series_);
  }

 private:
  void problem(std::string_view field, ProblemWords words) {
    if (words.given.empty()) words.given = std::string(field);
    problems_.add(lines_.number(), field.data() == nullptr ? 1 : place_in(lines_.text(), field), words);
  }

  void read_fact(std::string_view line) {
    while (!line.empty() && line.front() == '#') line.remove_prefix(1);
    const std::size_t split = line.find_first_of(":=,;\t");
    if (split == std::string_view::npos) return;
    const std::string key = lower_case(trimmed(line.substr(0, split)));
    const std::string_view text = trimmed(line.substr(split + 1));
    const auto number = [&](double lowest, double highest) {
      const auto value = to_number(text);
      if (value && *value >= lowest && *value <= highest) return value;
      problem(text, {.what = "A number in range is wanted here.",
                     .field = key,
                     .given = std::string(text),
                     .limit = fmt::format("{:g} to {:g}", lowest, highest),
                     .remedy = "Mend the line."});
      return std::optional<double>();
    };
    if (key == "latitude" || key == "lat") {
      latitude_ = number(-90.0, 90.0);
    } else if (key == "longitude" || key == "lon") {
      longitude_ = number(-180.0, 180.0);
    } else if (key == "elevation" || key == "height" || key == "altitude") {
      elevation_ = number(-500.0, 9000.0);
    } else if (key == "place") {
      series_.place = text;
    } else if (key == "zone" || key == "time zone" || key == "timezone") {
      zone_ = zone_hours(text);
      if (!zone_) {
        problem(text, {.what = "The time zone cannot be read.",
                       .field = key,
                       .given = std::string(text),
                       .limit = "hours from UTC, -12 to 14, such as +1 or +05:30",
                       .remedy = "Names of zones are not read here."});
      }
    } else if (key == "stamp") {
      stamp_ = lower_case(text);
      if (stamp_ == "start" || stamp_ == "middle" || stamp_ == "end") return;
      problem(text, {.what = "This word is not known here.",
                     .field = key,
                     .given = std::string(text),
                     .limit = "start, middle or end of the interval",
                     .remedy = "Use one of them."});
    } else if (key == "temperature") {
      at_stamp_ = lower_case(text) == "at stamp";
    }
  }

  bool read_head() {
    while (lines_.number() < kLinesAboveTitles && lines_.next()) {
      const auto separator = separator_of(lines_.text());
      if (!separator) {
        read_fact(trimmed(lines_.text()));
        continue;
      }
      separator_ = *separator;
      title_line_ = lines_.text();
      titles_ = weather_titles(title_line_, separator_);
      if (titles_.unknown_unit.empty()) return problems_.empty();
      problem(title_line_, {.what = "The unit of this column is not known here.",
                            .field = "title",
                            .given = titles_.unknown_unit,
                            .limit = "W/m2, kW/m2, Wh/m2, kWh/m2, MJ/m2, J/cm2; C, F, K; m/s, km/h, mph, kn",
                            .remedy = "Write the unit in brackets after the name."});
      return false;
    }
    problem({}, {.what = "There is no line of column titles.",
                 .field = "",
                 .given = "",
                 .limit = "time,ghi,temperature and, if there are, dni,dhi,wind",
                 .remedy = "Name the columns in one line above the rows."});
    return false;
  }

  bool read_stamp(const std::vector<std::string_view>& fields, WeatherRecord& record) {
    if (titles_.time) {
      bool utc = false;
      if (!read_stamp_text(fields[*titles_.time], record, utc)) return false;
      utc_ = utc_ || utc;
      if (!titles_.clock) return true;
      const auto clock = clock_seconds(fields[*titles_.clock]);
      record.stamp_s = clock.value_or(0);
      return clock.has_value();
    }
    const auto part = [&](const std::optional<std::size_t>& index, int absent) {
      return index ? digits(trimmed(fields[*index])) : std::optional<int>(absent);
    };
    const auto year = part(titles_.year, 2023);
    const auto month = part(titles_.month, 1);
    const auto day = part(titles_.day, 1);
    const auto hour = part(titles_.hour, 0);
    const auto minute = part(titles_.minute, 0);
    if (!year || !month || !day || !hour || !minute || !is_date(*year, *month, *day)) return false;
    if (*hour > 24 || *minute > 60) return false;
    record.year = *year;
    record.month = *month;
    record.day = *day;
    record.stamp_s = std::int64_t{*hour} * 3600 + std::int64_t{*minute} * 60;
    return true;
  }

  void read_row() {
    const auto fields = split_at(lines_.text(), separator_);
    if (trimmed(lines_.text()) == trimmed(title_line_)) {
      series_.repairs.push_back(fmt::format(
          "The titles stand in the file again in line {}; that line was left out.", lines_.number()));
      return;
    }
    if (fields.size() != titles_.count) {
      const bool more = fields.size() > titles_.count && separator_ == ',';
      problem({}, {.what = fields.size() < titles_.count ? "The row is cut short."
                                                         : "The row has more fields than there are titles.",
                   .field = "",
                   .given = fmt::format("{} fields", fields.size()),
                   .limit = fmt::format("{} fields", titles_.count),
                   .remedy = more ? "With decimal commas the fields must be split by semicolons or tabs."
                                  : "Mend the row or fetch the file again."});
      return;
    }
    WeatherRecord record;
    record.line = lines_.number();
    if (!read_stamp(fields, record)) {
      const std::size_t index = titles_.time.value_or(titles_.month.value_or(0));
      problem(fields[index], {.what = "The date or time cannot be read.",
                              .field = "time",
                              .given = std::string(fields[index]),
                              .limit = "2026-03-01 14:00, 2026-03-01T14:00Z or 01.03.2026 14:00",
                              .remedy = "Write the date with the year first; day and month between slashes "
                                        "cannot be told apart."});
      return;
    }
    series_.records.push_back(record);
    for (std::size_t c = 0; c < kWeatherColumns; ++c) {
      const auto& title = titles_.column.at(c);
      if (title) raw_.push_back(value_of(fields[title->index]));
    }
  }

  std::optional<double> value_of(std::string_view field) {
    std::string text(trimmed(field));
    const std::string lower = lower_case(text);
    if (text.empty() || lower == "nan" || lower == "na" || lower == "n/a" || lower == "null") {
      return std::nullopt;
    }
    if (separator_ != ',') {
      std::replace(text.begin(), text.end(), ',', '.');
    }
    const auto value = to_number(text);
    if (!value) {
      problem(field, {.what = "This is not a number.",
                      .field = "",
                      .given = std::string(field),
                      .limit = "a number, or nothing where it is missing",
                      .remedy = "Mend the row."});
    }
    return value;
  }

  /// Hours between two rows: the step that most of the first rows have.
  std::optional<double> step_h() {
    constexpr std::size_t kRowsLookedAt = 200;
    std::vector<std::int64_t> steps;
    for (std::size_t i = 1; i < series_.records.size() && i < kRowsLookedAt; ++i) {
      steps.push_back(stamp_of(series_.records[i]) - stamp_of(series_.records[i - 1]));
    }
    if (steps.empty()) return 1.0;
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    if (*middle >= 60 && *middle <= 3600 && 3600 % *middle == 0) return static_cast<double>(*middle) / 3600.0;
    problems_.add(0, 0,
                  {.what = "The rows are not a whole part of an hour apart.",
                   .field = "time",
                   .given = fmt::format("{} s between rows", *middle),
                   .limit = "1 h, or 30, 20, 15, 10, 5 or 1 min",
                   .remedy = "Fetch hourly or finer values, in order of time."});
    return std::nullopt;
  }

  /// Units, clock and kind of year, when all rows are known.
  void settle() {
    const auto interval_h = step_h();
    if (!interval_h) return;
    set_values(*interval_h);
    if (latitude_ && longitude_) {
      series_.site = sky::Site{*latitude_, *longitude_, elevation_.value_or(0.0)};
    } else if (options_.place) {
      series_.repairs.emplace_back(
          "The file does not say where it is from; the place given with it was used.");
    }
    series_.records_per_hour = static_cast<int>(std::lround(1.0 / *interval_h));
    set_timings(*interval_h);
    set_kind();
  }

  void set_values(double interval_h) {
    std::size_t at = 0;
    std::size_t below = 0;
    for (WeatherRecord& record : series_.records) {
      for (std::size_t c = 0; c < kWeatherColumns; ++c) {
        const auto& title = titles_.column.at(c);
        if (!title) continue;
        const auto raw = raw_[at++];
        if (!raw || *raw < kMissingBelow) continue;
        const ColumnUnit& unit = title->unit;
        double value = *raw * unit.factor / (unit.per_interval ? interval_h : 1.0) + unit.shift;
        const auto column = static_cast<WeatherColumn>(c);
        const bool radiation = column != WeatherColumn::kTemperature;
        if (radiation && value < 0.0 && value >= kNightOffset_W_m2) {
          ++below;
          value = 0.0;
        }
        record.value.at(c) =
            problems_.in_range(value + 0.0, fmt::format("{:g}", *raw), column, record.line, 0);
      }
    }
    if (below > 0) {
      series_.repairs.push_back(fmt::format("{} values a little below zero were set to zero.", below));
    }
  }

  void set_timings(double interval_h) {
    const auto& site = series_.site ? series_.site : options_.place;
    std::vector<std::pair<double, std::string>> zones;
    if (utc_ || titles_.utc) {
      zones = {{0.0, "UTC"}};
    } else if (zone_) {
      zones = {{*zone_, fmt::format("time zone {:+g} h", *zone_)}};
    } else {
      const double by_place = site ? std::round(site->longitude_deg / 15.0) : 0.0;
      zones = {{0.0, "UTC"}, {by_place, fmt::format("time zone {:+g} h", by_place)}};
      series_.repairs.emplace_back(
          "The file names no time zone; UTC was taken unless the sun says otherwise.");
    }
    std::vector<std::pair<double, std::string>> stamps = {
        {0.0, "start"}, {-interval_h, "end"}, {-0.5 * interval_h, "middle"}};
    if (!stamp_.empty()) {
      std::erase_if(stamps, [this](const auto& s) { return s.second != stamp_; });
    } else {
      stamps.pop_back();
      series_.repairs.emplace_back(
          "The file does not say what its stamps mean; the start of the interval was taken unless the sun "
          "says "
          "otherwise.");
    }
    for (const auto& zone : zones) {
      for (const auto& stamp : stamps) {
        WeatherTiming timing;
        timing.zone_h = zone.first;
        timing.interval_h = stamp.first;
        if (at_stamp_ && series_.records_per_hour == 1) timing.temperature_h = 0.0;
        timing.words = fmt::format("stamps at the {} of the interval in {}", stamp.second, zone.second);
        series_.timings.push_back(timing);
      }
    }
  }

  /// Months of different years in the order of one year make a typical year.
  void set_kind() {
    const auto& records = series_.records;
    const auto whole = static_cast<std::size_t>(series_.records_per_hour) * kHoursOfYear;
    const auto time_order = [](const auto& a, const auto& b) { return stamp_of(a) < stamp_of(b); };
    const auto month_order = [](const auto& a, const auto& b) { return a.month < b.month; };
    const bool mixed = !std::is_sorted(records.begin(), records.end(), time_order) &&
                       std::is_sorted(records.begin(), records.end(), month_order);
    series_.typical = records.size() == whole && (mixed || !(titles_.time || titles_.year));
  }

  Lines lines_;
  WeatherProblems problems_;
  const WeatherOptions& options_;
  WeatherSeries series_;
  WeatherTitles titles_;
  std::string_view title_line_;
  char separator_ = ',';
  std::optional<double> latitude_, longitude_, elevation_, zone_;
  std::string stamp_;
  bool at_stamp_ = false;
  bool utc_ = false;
  std::vector<std::optional<double>> raw_;
};

}  // namespace

bool is_plain_csv(std::string_view text) {
  Lines lines(text);
  while (lines.number() < kLinesAboveTitles && lines.next()) {
    if (separator_of(lines.text())) return true;
  }
  return false;
}

base::Result<WeatherSeries> read_plain_csv(std::string_view text, const std::string& name,
                                           const WeatherOptions& options) {
  return PlainCsv(text, name, options).read();
}

}  // namespace voltwright::files
