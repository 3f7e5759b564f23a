#include <fmt/format.h>

#include <array>
#include <utility>

#include "files/number_table.h"
#include "files/weather/lines.h"
#include "files/weather/tmy3.h"

namespace voltwright::files {

namespace {

/// Where a value stands in a row: characters counted from 1, as the manual of the format does.
struct Span {
  WeatherColumn column;
  std::size_t first;
  std::size_t length;
  double factor;
  std::string_view missing;
};

constexpr std::array<Span, kWeatherColumns> kSpans = {{
    {WeatherColumn::kGhi, 18, 4, 1.0, "9999"},
    {WeatherColumn::kDni, 24, 4, 1.0, "9999"},
    {WeatherColumn::kDhi, 30, 4, 1.0, "9999"},
    {WeatherColumn::kTemperature, 68, 4, 0.1, "9999"},
    {WeatherColumn::kWind, 96, 3, 0.1, "999"},
}};
constexpr std::size_t kShortestRow = 98;  // up to the wind; a whole row has 142 characters

std::string_view part(std::string_view line, std::size_t first, std::size_t length) {
  return first - 1 < line.size() ? line.substr(first - 1, length) : std::string_view();
}

class Tmy2 {
 public:
  Tmy2(std::string_view text, const std::string& name) : lines_(text), problems_(name) {}

  base::Result<WeatherSeries> read() {
    series_.format = "TMY2";
    lines_.next();
    if (read_head()) {
      while (lines_.next()) {
        if (!trimmed(lines_.text()).empty()) read_row();
      }
      series_.last_line = lines_.number();
    }
    if (!problems_.empty()) return problems_.take();
    return std::move(series_);
  }

 private:
  double head_number(std::size_t first, std::size_t length, const char* what, double lowest, double highest) {
    const std::string_view field = part(lines_.text(), first, length);
    const auto value = to_number(field);
    if (value && *value >= lowest && *value <= highest) return *value;
    problems_.add(lines_.number(), static_cast<int>(first),
                  {.what = "The first line needs a number here.",
                   .field = what,
                   .given = std::string(field),
                   .limit = fmt::format("{:g} to {:g}", lowest, highest),
                   .remedy = "Is this a TMY2 file with its columns where they belong?"});
    return 0.0;
  }

  /// Degrees and minutes after a letter that says the side.
  double head_angle(std::size_t side, std::size_t degrees, std::size_t length, const char* what,
                    std::string_view positive, std::string_view negative, double most) {
    const std::string_view letter = part(lines_.text(), side, 1);
    if (letter != positive && letter != negative) {
      problems_.add(lines_.number(), static_cast<int>(side),
                    {.what = "The first line needs the side of the position here.",
                     .field = what,
                     .given = std::string(letter),
                     .limit = fmt::format("{} or {}", positive, negative),
                     .remedy = "Is this a TMY2 file with its columns where they belong?"});
    }
    const double angle = head_number(degrees, length, what, 0.0, most) +
                         head_number(degrees + length + 1, 2, what, 0.0, 59.0) / 60.0;
    return letter == negative ? -angle : angle;
  }

  bool read_head() {
    series_.place = trimmed(part(lines_.text(), 8, 22));
    WeatherTiming timing;
    timing.interval_h = -1.0;  // hour H ends at H; temperature and wind hold at its end
    timing.temperature_h = 0.0;
    timing.words = "the hour that ends at its number";
    timing.zone_h = head_number(34, 3, "time zone", -12.0, 14.0);
    sky::Site site;
    site.latitude_deg = head_angle(38, 40, 2, "latitude", "N", "S", 90.0);
    site.longitude_deg = head_angle(46, 48, 3, "longitude", "E", "W", 180.0);
    site.elevation_m = head_number(56, 4, "height", -500.0, 9000.0);
    series_.site = site;
    series_.timings.push_back(timing);
    series_.clock_remedy = "If the rows are in another clock, write its time zone into the first line.";
    return problems_.empty();
  }

  void read_row() {
    const std::string_view line = lines_.text();
    if (line.size() < kShortestRow) {
      problems_.add(lines_.number(), static_cast<int>(line.size()) + 1,
                    {.what = "The row is cut short.",
                     .field = "",
                     .given = fmt::format("{} characters", line.size()),
                     .limit = "142 characters",
                     .remedy = "Fetch the file again; an editor may have taken blanks away."});
      return;
    }
    WeatherRecord record;
    record.line = lines_.number();
    const auto year = digits(trimmed(part(line, 2, 2)));
    const auto month = digits(trimmed(part(line, 4, 2)));
    const auto day = digits(trimmed(part(line, 6, 2)));
    const auto hour = digits(trimmed(part(line, 8, 2)));
    if (!year || !month || !day || !hour || !is_date(1900 + *year, *month, *day) || *hour < 1 || *hour > 24) {
      problems_.add(lines_.number(), 2,
                    {.what = "The date or time cannot be read.",
                     .field = "year, month, day, hour",
                     .given = std::string(part(line, 2, 8)),
                     .limit = "two digits each, hour 1 to 24",
                     .remedy = "Mend the row."});
      return;
    }
    record.year = 1900 + *year;
    record.month = *month;
    record.day = *day;
    record.stamp_s = std::int64_t{*hour} * 3600;
    for (const Span& span : kSpans) {
      const std::string_view field = part(line, span.first, span.length);
      if (field == span.missing) continue;
      record.value.at(static_cast<std::size_t>(span.column)) =
          problems_.value(field, span.column, lines_.number(), static_cast<int>(span.first), span.factor);
    }
    series_.records.push_back(record);
  }

  Lines lines_;
  WeatherProblems problems_;
  WeatherSeries series_;
};

}  // namespace

base::Result<WeatherSeries> read_tmy2(std::string_view text, const std::string& name) {
  return Tmy2(text, name).read();
}

}  // namespace voltwright::files
