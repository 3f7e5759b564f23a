#include "files/weather/tmy3.h"

#include <fmt/format.h>

#include <array>
#include <utility>

#include "files/number_table.h"
#include "files/weather/lines.h"

namespace voltwright::files {

namespace {

constexpr std::array<std::string_view, kWeatherColumns> kTitles = {
    "ghi (w/m^2)", "dni (w/m^2)", "dhi (w/m^2)", "dry-bulb (c)", "wspd (m/s)"};

class Tmy3 {
 public:
  Tmy3(std::string_view text, const std::string& name) : lines_(text), problems_(name) {}

  base::Result<WeatherSeries> read() {
    series_.format = "TMY3";
    if (read_head() && read_titles()) {
      while (lines_.next()) {
        if (!trimmed(lines_.text()).empty()) read_row();
      }
      series_.last_line = lines_.number();
    }
    if (!problems_.empty()) return problems_.take();
    return std::move(series_);
  }

 private:
  void problem(std::string_view field, ProblemWords words) {
    words.given = std::string(field);
    problems_.add(lines_.number(), field.data() == nullptr ? 1 : place_in(lines_.text(), field), words);
  }

  double head_number(const std::vector<std::string_view>& fields, std::size_t index, const char* what,
                     double lowest, double highest) {
    const std::string_view field = index < fields.size() ? fields[index] : std::string_view();
    const auto value = to_number(field);
    if (value && *value >= lowest && *value <= highest) return *value;
    problem(field,
            {.what = "The first line needs a number here.",
             .field = what,
             .given = "",
             .limit = fmt::format("{:g} to {:g}", lowest, highest),
             .remedy =
                 "Station number, name, state, time zone, latitude, longitude and height, split by commas."});
    return 0.0;
  }

  bool read_head() {
    lines_.next();
    const auto fields = split_at(lines_.text(), ',');
    if (fields.size() > 1) series_.place = trimmed(fields[1]);
    sky::Site site;
    WeatherTiming timing;
    // The stamp is the end of the hour; temperature and wind hold at the stamp.
    timing.interval_h = -1.0;
    timing.temperature_h = 0.0;
    timing.words = "the hour that ends at its stamp";
    timing.zone_h = head_number(fields, 3, "time zone", -12.0, 14.0);
    site.latitude_deg = head_number(fields, 4, "latitude", -90.0, 90.0);
    site.longitude_deg = head_number(fields, 5, "longitude", -180.0, 180.0);
    site.elevation_m = head_number(fields, 6, "height", -500.0, 9000.0);
    series_.site = site;
    series_.timings.push_back(timing);
    series_.clock_remedy = "If the rows are in another clock, write its time zone into the first line.";
    return problems_.empty();
  }

  bool read_titles() {
    lines_.next();
    const auto titles = split_at(lines_.text(), ',');
    count_ = titles.size();
    for (std::size_t c = 0; c < kWeatherColumns; ++c) {
      for (std::size_t i = 0; i < titles.size() && !index_.at(c); ++i) {
        if (lower_case(trimmed(titles[i])) == kTitles.at(c)) index_.at(c) = i;
      }
      if (index_.at(c)) continue;
      problem({}, {.what = "The second line lacks a column title.",
                   .field = std::string(rule_of(static_cast<WeatherColumn>(c)).name),
                   .given = "",
                   .limit = std::string(kTitles.at(c)),
                   .remedy = "Is this a TMY3 file, and are its fields split by commas?"});
    }
    return problems_.empty();
  }

  /// MM/DD/YYYY and HH:MM; 24:00 is the end of its day.
  bool read_stamp(std::string_view date, std::string_view time, WeatherRecord& record) {
    date = trimmed(date);
    time = trimmed(time);
    const bool shaped =
        date.size() == 10 && date[2] == '/' && date[5] == '/' && time.size() == 5 && time[2] == ':';
    const auto month = shaped ? digits(date.substr(0, 2)) : std::nullopt;
    const auto day = shaped ? digits(date.substr(3, 2)) : std::nullopt;
    const auto year = shaped ? digits(date.substr(6, 4)) : std::nullopt;
    const auto hour = shaped ? digits(time.substr(0, 2)) : std::nullopt;
    const auto minute = shaped ? digits(time.substr(3, 2)) : std::nullopt;
    if (month && day && year && hour && minute && is_date(*year, *month, *day) && *minute < 60 &&
        *hour * 60 + *minute <= 1440) {
      record.year = *year;
      record.month = *month;
      record.day = *day;
      record.stamp_s = std::int64_t{*hour} * 3600 + std::int64_t{*minute} * 60;
      return true;
    }
    problem(date, {.what = "The date or time cannot be read.",
                   .field = "date, time",
                   .given = "",
                   .limit = "MM/DD/YYYY, then 01:00 to 24:00",
                   .remedy = "Mend the row."});
    return false;
  }

  void read_row() {
    const auto fields = split_at(lines_.text(), ',');
    const bool more = fields.size() > count_ && !trimmed(fields[count_]).empty();
    if (fields.size() < count_ || more) {
      problems_.add(
          lines_.number(), static_cast<int>(lines_.text().size()) + 1,
          {.what = more ? "The row has more fields than there are titles." : "The row is cut short.",
           .field = "",
           .given = fmt::format("{} fields", fields.size()),
           .limit = fmt::format("{} fields", count_),
           .remedy = "Fetch the file again; decimal commas are not read here."});
      return;
    }
    WeatherRecord record;
    record.line = lines_.number();
    if (!read_stamp(fields[0], fields[1], record)) return;
    for (std::size_t c = 0; c < kWeatherColumns; ++c) {
      const std::string_view field = fields[index_.at(c).value_or(0)];
      record.value.at(c) = problems_.value(field, static_cast<WeatherColumn>(c), lines_.number(),
                                           place_in(lines_.text(), field));
    }
    series_.records.push_back(record);
  }

  Lines lines_;
  WeatherProblems problems_;
  WeatherSeries series_;
  std::array<std::optional<std::size_t>, kWeatherColumns> index_;
  std::size_t count_ = 0;
};

}  // namespace

base::Result<WeatherSeries> read_tmy3(std::string_view text, const std::string& name) {
  return Tmy3(text, name).read();
}

}  // namespace voltwright::files
