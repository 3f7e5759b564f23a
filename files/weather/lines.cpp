#include "files/weather/lines.h"

#include <fmt/format.h>

#include "files/daylight.h"
#include "files/number_table.h"

namespace voltwright::files {

namespace {

constexpr std::size_t kMostProblems = 25;
constexpr std::size_t kLongestShown = 40;
constexpr double kMissingBelow = -90.0;  // -99, -999, -9900: no quantity here is so low

constexpr std::array<WeatherColumnRule, kWeatherColumns> kRules = {{
    {"global horizontal radiation", 0.0, 1500.0},
    {"direct normal radiation", 0.0, 1500.0},
    {"diffuse horizontal radiation", 0.0, 1500.0},
    {"dry bulb temperature", -70.0, 70.0},
    {"wind speed", 0.0, 40.0},
}};

}  // namespace

const WeatherColumnRule& rule_of(WeatherColumn column) { return kRules.at(static_cast<std::size_t>(column)); }

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlank = " \t\r";
  const std::size_t first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

Lines::Lines(std::string_view text) : rest_(text) {
  if (rest_.substr(0, 3) == "\xEF\xBB\xBF") rest_.remove_prefix(3);
}

bool Lines::next() {
  if (rest_.empty()) return false;
  const std::size_t end = rest_.find('\n');
  current_ = rest_.substr(0, end);
  rest_ = end == std::string_view::npos ? std::string_view() : rest_.substr(end + 1);
  if (!current_.empty() && current_.back() == '\r') current_.remove_suffix(1);
  ++number_;
  return true;
}

void WeatherProblems::add(int line, int column, const ProblemWords& words) {
  if (problems_.size() >= kMostProblems) {
    ++further_;
    return;
  }
  ProblemWords shown = words;
  if (shown.given.size() > kLongestShown) shown.given.resize(kLongestShown);
  problems_.push_back(text_problem(name_, line, column, shown));
}

base::Problems WeatherProblems::take() {
  if (further_ > 0) {
    problems_.push_back(text_problem(name_, 0, 0,
                                     {.what = fmt::format("{} further problems are not shown.", further_),
                                      .field = "",
                                      .given = "",
                                      .limit = "",
                                      .remedy = ""}));
  }
  return std::move(problems_);
}

std::optional<double> WeatherProblems::value(std::string_view field, WeatherColumn column, int line,
                                             int where, double factor) {
  if (trimmed(field).empty()) return std::nullopt;
  const WeatherColumnRule& rule = rule_of(column);
  const auto number = to_number(field);
  if (!number) {
    add(line, where,
        {.what = "This is not a number.",
         .field = std::string(rule.name),
         .given = std::string(field),
         .limit = "a number with a decimal point",
         .remedy = "Mend the row, or leave the field empty where the value is missing."});
    return std::nullopt;
  }
  const double value = *number * factor + 0.0;  // turns -0 into 0
  if (value < kMissingBelow) return std::nullopt;
  return in_range(value, field, column, line, where);
}

std::optional<double> WeatherProblems::in_range(double value, std::string_view field, WeatherColumn column,
                                                int line, int where) {
  const WeatherColumnRule& rule = rule_of(column);
  if (value >= rule.lowest && value <= rule.highest) return value;
  add(line, where,
      {.what = "The value is out of range.",
       .field = std::string(rule.name),
       .given = std::string(field),
       .limit = fmt::format("{:g} to {:g}", rule.lowest, rule.highest),
       .remedy = "Check the unit, or leave the field empty where the value is missing."});
  return std::nullopt;
}

int place_in(std::string_view line, std::string_view field) {
  return static_cast<int>(field.data() - line.data()) + 1;
}

int most_days(int month) {
  return kDaysInMonth.at(static_cast<std::size_t>(month - 1)) + (month == 2 ? 1 : 0);
}

bool is_date(int year, int month, int day) {
  constexpr int kFirstYear = 1900;
  constexpr int kLastYear = 2200;
  return year >= kFirstYear && year <= kLastYear && month >= 1 && month <= 12 && day >= 1 &&
         day <= most_days(month);
}

std::optional<int> digits(std::string_view text) {
  constexpr std::size_t kMostDigits = 8;
  if (text.empty() || text.size() > kMostDigits) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = 10 * value + (c - '0');
  }
  return value;
}

}  // namespace voltwright::files
