// What all formats share: one way of reading the stamps is chosen by the solar noon, gaps are filled, the
// three radiations are completed, temperature becomes the mean of each hour.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <utility>

#include "engine/sky/calendar.h"
#include "files/position_text.h"
#include "files/text_problem.h"
#include "files/weather/closure.h"
#include "files/weather/gap_filling.h"
#include "files/weather/layout.h"
#include "files/weather/read_weather.h"
#include "files/weather/solar_noon.h"

namespace voltwright::files {

namespace {

constexpr double kClockTolerance_h = 0.2;
constexpr std::size_t kFewestNoonHours = 672;  // 28 days; with fewer one cloudy week can outweigh the rest
constexpr double kAssumedWind_m_s = 2.5;
constexpr std::size_t kLinesShown = 8;
constexpr double kLargestMissingShare = 0.5;

std::int64_t start_of_2023_utc_s() {
  using std::chrono::sys_days;
  const sys_days day = std::chrono::year{2023} / 1 / 1;
  return std::chrono::duration_cast<std::chrono::seconds>(day.time_since_epoch()).count();
}

/// Means over the hour of a quantity known at instants, `after_h` hours after the start of each hour, on
/// straight lines from instant to instant. The sum of the year stays.
std::vector<double> means_of_instants(const std::vector<double>& instants, double after_h) {
  const double whole = std::floor(after_h);
  const double f = after_h - whole;
  const auto n = static_cast<std::int64_t>(instants.size());
  const auto at = [&](std::int64_t i) { return instants[static_cast<std::size_t>(((i % n) + n) % n)]; };
  std::vector<double> means(instants.size());
  for (std::int64_t i = 0; i < n; ++i) {
    const std::int64_t j = i - static_cast<std::int64_t>(whole);
    const double here = at(j);
    means[static_cast<std::size_t>(i)] =
        here + 0.5 * f * f * (at(j - 1) - here) + 0.5 * (1.0 - f) * (1.0 - f) * (at(j + 1) - here);
  }
  return means;
}

class Chain {
 public:
  Chain(WeatherSeries series, const std::string& name, const WeatherOptions& options)
      : series_(std::move(series)), name_(name), options_(options) {}

  base::Result<ReadWeather> run() {
    result_.format = series_.format;
    result_.place = series_.place;
    if (!place()) return problems_;
    if (series_.climate) {
      result_.climate = series_.climate;
      result_.weather.site = site_;
      result_.repairs = std::move(series_.repairs);
      return std::move(result_);
    }
    choose_year(series_, options_.year);
    if (!whole_year()) return problems_;
    if (options_.zone_h) {
      series_.timings.resize(1);
      series_.timings.front().zone_h = *options_.zone_h;
    }
    if (!choose_timing() || !fill()) return problems_;
    finish();
    return std::move(result_);
  }

 private:
  void problem(int line, const ProblemWords& words) {
    problems_.push_back(text_problem(name_, line, line > 0 ? 1 : 0, words));
  }

  bool place() {
    if (!series_.site) series_.site = options_.place;
    if (series_.site) {
      site_ = *series_.site;
      return true;
    }
    problem(0, {.what = "The file does not say where its weather is from.",
                .field = "latitude, longitude",
                .given = "",
                .limit = "a position in the file, or one given with it",
                .remedy = "Give the place with the file, or fetch it with its header lines."});
    return false;
  }

  bool whole_year() {
    const auto rows = std::count_if(series_.records.begin(), series_.records.end(),
                                    [](const auto& r) { return r.month != 2 || r.day != 29; });
    const auto wanted = static_cast<std::ptrdiff_t>(kHoursOfYear) * series_.records_per_hour;
    if (!series_.typical && rows == 0) {
      problem(series_.last_line, {.what = "The file holds no rows of weather.",
                                  .field = "",
                                  .given = options_.year ? fmt::format("year {}", *options_.year) : "",
                                  .limit = "",
                                  .remedy = "Fetch the file again, or ask for a year that it has."});
      return false;
    }
    if (!series_.typical || rows == wanted) return true;
    problem(series_.last_line, {.what = "The file does not hold a whole year.",
                                .field = "",
                                .given = fmt::format("{} rows without 29 February", rows),
                                .limit = fmt::format("{} rows ({} an hour), or {} with 29 February", wanted,
                                                     series_.records_per_hour,
                                                     wanted + std::ptrdiff_t{24} * series_.records_per_hour),
                                .remedy = "Fetch the file again, or one that covers the year."});
    return false;
  }

  /// How far the sun is off in a layout; nothing if the file is too short to tell.
  std::optional<double> noon_of(const WeatherHours& hours) const {
    if (hours.hours < kFewestNoonHours) return std::nullopt;
    auto column = WeatherColumn::kGhi;
    auto filled = fill_gaps(hours.value.at(static_cast<std::size_t>(column)));
    if (!filled) filled = fill_gaps(hours.value.at(static_cast<std::size_t>(WeatherColumn::kDni)));
    if (!filled) return std::nullopt;
    return solar_noon_offset_h(*filled, static_cast<double>(hours.phase_s) / 3600.0, site_.longitude_deg,
                               hours.first_hour, hours.hours);
  }

  /// Takes the first way of reading that puts the sun at noon, or else the one the file states.
  bool choose_timing() {
    for (std::size_t k = 0; k < series_.timings.size(); ++k) {
      auto laid_out = lay_out(series_, series_.timings[k], name_);
      if (!laid_out.ok()) {
        if (k > 0) continue;
        problems_ = laid_out.problems();
        return false;
      }
      const auto noon_h = noon_of(laid_out.value());
      const bool fits = !noon_h || std::abs(*noon_h) <= kClockTolerance_h;
      if (k == 0) stated_noon_h_ = noon_h;
      if (k > 0 && !fits) continue;
      timing_ = k;
      hours_ = std::move(laid_out).value();
      result_.noon_offset_h = noon_h;
      if (fits) break;
    }
    warn_of_clock();
    return true;
  }

  void warn_of_clock() {
    if (!stated_noon_h_ || std::abs(*stated_noon_h_) <= kClockTolerance_h) return;
    const double offset_h = *stated_noon_h_;
    const WeatherTiming& stated = series_.timings.front();
    std::string what = fmt::format(
        "The sun of this file is {:.3f} h {} for its longitude and time zone: its clock is shifted by "
        "{:+.3f} "
        "h.",
        std::abs(offset_h), offset_h < 0.0 ? "early" : "late", offset_h);
    // Half an hour is the step of nearly all time zones.
    const double fitting_h = std::round(2.0 * (stated.zone_h + offset_h)) / 2.0;
    std::string remedy =
        fmt::format("The nearest time zone that fits is {:+g} h. {} It is used as it stands.", fitting_h,
                    series_.clock_remedy);
    if (timing_ > 0) {
      const WeatherTiming& taken = series_.timings[timing_];
      const std::string repair = fmt::format("It was read as {}, {:+.3f} h from solar noon.", taken.words,
                                             result_.noon_offset_h.value_or(0.0));
      series_.repairs.push_back(what + " " + repair);
      what += " " + repair;
      remedy = "Mend the file if that is wrong. " + series_.clock_remedy;
    }
    result_.warnings.push_back(
        text_warning(name_, 1, 0,
                     {.what = std::move(what),
                      .field = "time zone",
                      .given = fmt::format("zone {:g} h, longitude {:g}", stated.zone_h, site_.longitude_deg),
                      .limit = fmt::format("within {:g} h of solar noon", kClockTolerance_h),
                      .remedy = std::move(remedy)}));
  }

  /// Covered hours without a value of a column.
  std::size_t missing_of(std::size_t column) const {
    std::size_t missing = 0;
    for (std::size_t k = 0; k < hours_.hours; ++k) {
      if (!hours_.value.at(column)[(hours_.first_hour + k) % kHoursOfYear]) ++missing;
    }
    return missing;
  }

  bool fill() {
    for (std::size_t c = 0; c < kWeatherColumns; ++c) {
      const auto column = static_cast<WeatherColumn>(c);
      const std::size_t missing = missing_of(c);
      const double share = static_cast<double>(missing) / static_cast<double>(hours_.hours);
      if (share <= kLargestMissingShare) {
        if (missing > 0) note_missing(column);
        columns_.at(c) = fill_gaps(hours_.value.at(c)).value_or(std::vector<double>());
        continue;
      }
      if (column == WeatherColumn::kTemperature) {
        problem(0, {.what = missing == hours_.hours
                                ? fmt::format("The file holds no {} at all.", rule_of(column).name)
                                : fmt::format("More than half of the {} is missing.", rule_of(column).name),
                    .field = std::string(rule_of(column).name),
                    .given = fmt::format("{} of {} hours missing", missing, hours_.hours),
                    .limit = "at most half",
                    .remedy = "Use a weather file that has it."});
      } else if (column == WeatherColumn::kWind) {
        columns_.at(c).assign(kHoursOfYear, kAssumedWind_m_s);
        series_.repairs.push_back(
            fmt::format("The file holds no wind to speak of; {:g} m/s was assumed.", kAssumedWind_m_s));
      } else if (missing < hours_.hours) {
        series_.repairs.push_back(
            fmt::format("More than half of the {} is missing; it was left out.", rule_of(column).name));
      }
    }
    const auto absent = [&](WeatherColumn c) { return columns_.at(static_cast<std::size_t>(c)).empty(); };
    if (absent(WeatherColumn::kGhi) && (absent(WeatherColumn::kDni) || absent(WeatherColumn::kDhi))) {
      problem(0,
              {.what = "The file holds no global horizontal radiation, or more than half of it is missing.",
               .field = "global horizontal radiation",
               .given = "",
               .limit = "global, or direct normal and diffuse",
               .remedy = "Use a weather file that has it."});
    }
    warn_of_filled();
    return problems_.empty();
  }

  void note_missing(WeatherColumn column) {
    const auto c = static_cast<std::size_t>(column);
    std::string lines;
    std::size_t missing = 0;
    for (const WeatherRecord& record : series_.records) {
      if (record.value.at(c)) continue;
      if (missing < kLinesShown && record.line > 0) {
        lines += fmt::format("{}{}", lines.empty() ? "" : ", ", record.line);
      }
      ++missing;
    }
    if (missing > kLinesShown && !lines.empty()) lines += fmt::format(" and {} more", missing - kLinesShown);
    const std::size_t hours = missing_of(c);
    result_.filled += std::max(missing, hours);
    filled_words_ += fmt::format("{}{} {}", filled_words_.empty() ? "" : "; ", rule_of(column).name,
                                 std::max(missing, hours));
    if (!lines.empty()) filled_words_ += fmt::format(" (lines {})", lines);
  }

  void warn_of_filled() {
    if (result_.filled == 0) return;
    std::size_t without_row = 0;
    for (std::size_t k = 0; k < hours_.hours; ++k) {
      if (hours_.seen[(hours_.first_hour + k) % kHoursOfYear] == 0) ++without_row;
    }
    if (without_row > 0) filled_words_ += fmt::format("; {} hours have no row", without_row);
    result_.warnings.push_back(text_warning(
        name_, 0, 0,
        {.what = fmt::format("{} missing values were filled from the hours and days around them.",
                             result_.filled),
         .field = "",
         .given = filled_words_,
         .limit = "",
         .remedy = "Gaps of up to 3 h are bridged by a straight line, longer ones by the same hour "
                   "of the days around."}));
  }

  void finish() {
    const WeatherTiming& timing = series_.timings[timing_];
    const auto take = [&](WeatherColumn c) { return std::move(columns_.at(static_cast<std::size_t>(c))); };
    sky::HourlyWeather& weather = result_.weather;
    weather.site = site_;
    weather.start_utc_s = start_of_2023_utc_s() + hours_.phase_s;
    weather.ghi_W_m2 = take(WeatherColumn::kGhi);
    weather.dni_W_m2 = take(WeatherColumn::kDni);
    weather.dhi_W_m2 = take(WeatherColumn::kDhi);
    weather.temperature_C = take(WeatherColumn::kTemperature);
    weather.wind_m_s = take(WeatherColumn::kWind);
    if (timing.temperature_h) {
      const double after_h = *timing.temperature_h - timing.interval_h;
      weather.temperature_C = means_of_instants(weather.temperature_C, after_h);
      weather.wind_m_s = means_of_instants(weather.wind_m_s, after_h);
    }
    note_split();
    close_radiation(weather);
    if (weather.dhi_W_m2.empty()) weather.dni_W_m2.clear();
    result_.first_hour = hours_.first_hour;
    result_.hours = hours_.hours;
    result_.repairs = std::move(series_.repairs);
    weather.origin =
        fmt::format("{} from {} ({}): {}, {}, {:.0f} m.", series_.typical ? "Typical year" : "Weather", name_,
                    series_.format, series_.place.empty() ? "place not named" : series_.place,
                    position_text(site_, " "), site_.elevation_m);
  }

  void note_split() {
    const sky::HourlyWeather& w = result_.weather;
    if (w.dhi_W_m2.empty() && w.dni_W_m2.empty()) {
      series_.repairs.emplace_back(
          "The file has global radiation only; beam and diffuse are split by Erbs, Klein and Duffie 1982.");
    } else if (w.ghi_W_m2.empty() || w.dni_W_m2.empty() || w.dhi_W_m2.empty()) {
      series_.repairs.push_back(
          fmt::format("The {} radiation was worked out from the other two.",
                      w.ghi_W_m2.empty() ? "global" : (w.dni_W_m2.empty() ? "direct normal" : "diffuse")));
    }
  }

  WeatherSeries series_;
  const std::string& name_;
  const WeatherOptions& options_;
  sky::Site site_;
  base::Problems problems_;
  ReadWeather result_;
  WeatherHours hours_;
  std::size_t timing_ = 0;
  std::optional<double> stated_noon_h_;
  std::array<std::vector<double>, kWeatherColumns> columns_;
  std::string filled_words_;
};

}  // namespace

bool ReadWeather::covers(std::int64_t start_utc_s, std::int64_t end_utc_s) const {
  if (climate || hours >= kHoursOfYear) return true;
  for (std::int64_t at = start_utc_s; at < end_utc_s; at += sky::kSecondsPerHour) {
    using namespace std::chrono;
    const std::int64_t day = sky::floor_divide(at, sky::kSecondsPerDay);
    const year_month_day date{sys_days{days{day}}};
    const bool leap_day = date.month() == February && date.day() == std::chrono::day{29};
    const sys_days typical{year{2023} / date.month() / (leap_day ? std::chrono::day{28} : date.day())};
    const std::int64_t second = typical.time_since_epoch().count() * sky::kSecondsPerDay +
                                (at - day * sky::kSecondsPerDay) - weather.start_utc_s;
    const auto n = static_cast<std::int64_t>(kHoursOfYear);
    const std::int64_t hour = sky::floor_divide(second, sky::kSecondsPerHour);
    const std::int64_t since = ((hour - static_cast<std::int64_t>(first_hour)) % n + n) % n;
    if (since >= static_cast<std::int64_t>(hours)) return false;
  }
  return true;
}

base::Result<ReadWeather> year_of(WeatherSeries series, const std::string& name,
                                  const WeatherOptions& options) {
  return Chain(std::move(series), name, options).run();
}

}  // namespace voltwright::files
