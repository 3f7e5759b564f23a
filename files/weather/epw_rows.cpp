#include "files/weather/epw_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "engine/base/trimmed.h"
#include "files/daylight.h"
#include "files/number_table.h"
#include "files/weather/lines.h"

namespace voltwright::files {

namespace {

constexpr int kMostHeaderLines = 40;

// Positions of the fields in a row, counted from 0.
constexpr std::size_t kMonth = 1;
constexpr std::size_t kDay = 2;
constexpr std::size_t kHour = 3;
constexpr std::size_t kMinute = 4;
constexpr std::size_t kFewestFields = 22;  // up to the wind speed; later fields are optional

struct ColumnRule {
  WeatherColumn column;
  std::size_t field;
  double missing_from;  // this value or more means missing
};

constexpr std::array<ColumnRule, kWeatherColumns> kColumns = {{
    {WeatherColumn::kGhi, 13, 9999.0},
    {WeatherColumn::kDni, 14, 9999.0},
    {WeatherColumn::kDhi, 15, 9999.0},
    {WeatherColumn::kTemperature, 6, 99.9},
    {WeatherColumn::kWind, 21, 999.0},
}};

bool same_keyword(std::string_view field, std::string_view keyword) {
  field = base::trimmed(field);
  return field.size() == keyword.size() &&
         std::equal(field.begin(), field.end(), keyword.begin(),
                    [](char a, char b) { return a == b || (a >= 'a' && a <= 'z' && a - 'a' + 'A' == b); });
}

class Reading {
 public:
  Reading(std::string_view text, const std::string& name) : lines_(text), problems_(name) {}

  base::Result<EpwRows> read() {
    if (read_header()) {
      while (next_line()) read_row();
      result_.last_line = lines_.number();
    }
    if (!problems_.empty()) return problems_.take();
    return std::move(result_);
  }

 private:
  bool next_line() {
    if (!lines_.next()) return false;
    fields_ = split_at(lines_.text(), ',');
    return true;
  }

  int column_of(std::size_t field) const {
    return field < fields_.size() ? place_in(lines_.text(), fields_[field])
                                  : static_cast<int>(lines_.text().size()) + 1;
  }

  void problem(std::size_t field, std::string_view what, std::string_view name, std::string_view given,
               std::string_view limit, std::string_view remedy) {
    problems_.add(lines_.number(), column_of(field),
                  {.what = std::string(what),
                   .field = std::string(name),
                   .given = std::string(given),
                   .limit = std::string(limit),
                   .remedy = std::string(remedy)});
  }

  double header_number(std::size_t field, std::string_view name, double lowest, double highest) {
    const std::string_view given = field < fields_.size() ? fields_[field] : std::string_view();
    const auto value = to_number(given);
    if (value && *value >= lowest && *value <= highest) return *value;
    problem(field, value ? "The value in the header is out of range." : "The header needs a number here.",
            name, given, fmt::format("{} to {}", lowest, highest), "Mend the header line.");
    return 0.0;
  }

  bool read_header() {
    if (!next_line() || !same_keyword(fields_[0], "LOCATION")) {
      problem(0, "The file does not begin with a LOCATION line.", "",
              lines_.number() > 0 ? fields_[0] : std::string_view(),
              "LOCATION,city,region,country,source,number,latitude,longitude,time zone,height",
              "Is this an EPW file?");
      return false;
    }
    if (fields_.size() > 1) result_.city = base::trimmed(fields_[1]);
    result_.site.latitude_deg = header_number(6, "latitude", -90.0, 90.0);
    result_.site.longitude_deg = header_number(7, "longitude", -180.0, 180.0);
    result_.zone_h = header_number(8, "time zone", -12.0, 14.0);
    result_.site.elevation_m = header_number(9, "height", -500.0, 9000.0);
    while (lines_.number() < kMostHeaderLines && next_line()) {
      if (same_keyword(fields_[0], "DATA PERIODS")) return read_data_periods();
      if (!known_header()) {
        problem(0, "This is not a header line of an EPW file.", "", fields_[0],
                "DESIGN CONDITIONS, TYPICAL/EXTREME PERIODS, GROUND TEMPERATURES, HOLIDAYS/DAYLIGHT SAVING, "
                "COMMENTS 1, COMMENTS 2, DATA PERIODS",
                "Mend or remove the line.");
        return false;
      }
      if (same_keyword(fields_[0], "COMMENTS 2")) read_offset();
    }
    problem(0, "The header ends without a DATA PERIODS line.", "", "", "", "Is the file complete?");
    return false;
  }

  void read_offset() {
    constexpr std::string_view kLabel = "Irradiance Time Offset (h):";
    const std::string_view line = lines_.text();
    const std::size_t at = line.find(kLabel);
    if (at == std::string_view::npos) return;
    const std::string_view rest = line.substr(at + kLabel.size());
    const auto offset_h = to_number(rest.substr(0, rest.find(',')));
    if (offset_h && std::abs(*offset_h) <= 2.0) result_.radiation_offset_h = *offset_h;
  }

  bool known_header() const {
    constexpr std::array<std::string_view, 7> kKnown = {"DESIGN CONDITIONS",
                                                        "TYPICAL/EXTREME PERIODS",
                                                        "GROUND TEMPERATURES",
                                                        "HOLIDAYS/DAYLIGHT SAVING",
                                                        "HOLIDAYS/DAYLIGHT SAVINGS",
                                                        "COMMENTS 1",
                                                        "COMMENTS 2"};
    return std::any_of(kKnown.begin(), kKnown.end(),
                       [this](std::string_view keyword) { return same_keyword(fields_[0], keyword); });
  }

  bool read_data_periods() {
    const double records = header_number(2, "records per hour", 1.0, 60.0);
    if (records >= 1.0 && (std::floor(records) != records || 60 % static_cast<int>(records) != 0)) {
      problem(2, "The records per hour do not divide an hour.", "records per hour", fields_[2],
              "1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30 or 60", "Mend the header line.");
    }
    result_.records_per_hour = std::max(1, static_cast<int>(records));
    return true;
  }

  /// A whole number of the date of a row; nothing (and a problem) if it is not one from lowest to highest.
  std::optional<int> date_part(std::size_t field, std::string_view name, int lowest, int highest) {
    const auto value = to_number(fields_[field]);
    if (value && std::floor(*value) == *value && *value >= lowest && *value <= highest) {
      return static_cast<int>(*value);
    }
    problem(field, value ? "The date or time is out of range." : "The date or time is not a number.", name,
            fields_[field], fmt::format("a whole number from {} to {}", lowest, highest), "Mend the row.");
    return std::nullopt;
  }

  void read_row() {
    if (base::trimmed(lines_.text()).empty()) return;
    if (fields_.size() < kFewestFields) {
      problem(fields_.size(), "The row is cut short.", "", fmt::format("{} fields", fields_.size()),
              fmt::format("at least {} fields", kFewestFields), "Fetch the file again.");
      return;
    }
    const auto month = date_part(kMonth, "month", 1, 12);
    const int days = month ? kDaysInMonth[static_cast<std::size_t>(*month - 1)] + (*month == 2 ? 1 : 0) : 31;
    const auto day = date_part(kDay, "day", 1, days);
    const auto hour = date_part(kHour, "hour", 1, 24);
    const auto minute = date_part(kMinute, "minute", 0, 60);
    if (!month || !day || !hour || !minute) return;
    EpwRow row{.line = lines_.number(), .month = *month, .day = *day, .hour = *hour, .value = {}};
    for (const ColumnRule& rule : kColumns) row.value[static_cast<std::size_t>(rule.column)] = value_of(rule);
    const bool leap_day = *month == 2 && *day == 29;
    if (!leap_day) result_.rows.push_back(row);
  }

  std::optional<double> value_of(const ColumnRule& rule) {
    const std::string_view field = fields_[rule.field];
    const WeatherColumnRule& limits = rule_of(rule.column);
    if (base::trimmed(field).empty()) return std::nullopt;
    const auto value = to_number(field);
    if (!value) {
      problem(rule.field, "This is not a number.", limits.name, field, "a number",
              fmt::format("Write {:g} where the value is missing.", rule.missing_from));
      return std::nullopt;
    }
    if (*value >= rule.missing_from) return std::nullopt;
    if (*value < limits.lowest || *value > limits.highest) {
      problem(rule.field, "The value is out of range.", limits.name, field,
              fmt::format("{:g} to {:g}, {:g} for missing", limits.lowest, limits.highest, rule.missing_from),
              "Mend the row or mark the value as missing.");
      return std::nullopt;
    }
    return *value + 0.0;  // turns -0 into 0
  }

  Lines lines_;
  std::vector<std::string_view> fields_;
  EpwRows result_;
  WeatherProblems problems_;
};

}  // namespace

base::Result<EpwRows> read_epw_rows(std::string_view text, const std::string& name) {
  return Reading(text, name).read();
}

}  // namespace voltwright::files
