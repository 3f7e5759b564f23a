#include "files/weather/power.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <map>
#include <utility>

#include "engine/units/month_names.h"
#include "files/daylight.h"
#include "files/number_table.h"
#include "files/position_text.h"
#include "files/weather/day_hours.h"
#include "files/weather/lines.h"
#include "files/weather/power_head.h"

namespace voltwright::files {

namespace {

constexpr std::array<std::string_view, kWeatherColumns> kParameters = {
    "allsky_sfc_sw_dwn", "allsky_sfc_sw_dni", "allsky_sfc_sw_diff", "t2m", "ws10m"};
constexpr double kAssumedRange_K = 8.0;
constexpr double kMostRange_K = 25.0;
constexpr double kAssumedTurbidity = 3.0;
constexpr double kAssumedWind_m_s = 2.5;

class Power {
 public:
  Power(std::string_view text, const std::string& name) : lines_(text), problems_(name) {}

  base::Result<WeatherSeries> read() {
    series_.typical = false;
    const auto head = read_power_head(lines_, problems_);
    if (head && read_titles(*head)) {
      while (lines_.next()) {
        if (!trimmed(lines_.text()).empty()) read_row();
      }
      series_.last_line = lines_.number();
      if (monthly_) make_climate();
    }
    if (!problems_.empty()) return problems_.take();
    return std::move(series_);
  }

 private:
  std::optional<std::size_t> title(std::string_view name) const {
    for (std::size_t i = 0; i < titles_.size(); ++i) {
      if (titles_[i] == name) return i;
    }
    return std::nullopt;
  }

  void add_timings() {
    const double swath_h = std::round(head_.site.longitude_deg / 15.0);
    const WeatherTiming solar{
        .zone_h = swath_h,
        .interval_h = 0.0,
        .temperature_h = std::nullopt,
        .words = fmt::format("local solar time of its 15 deg swath ({:+g} h)", swath_h)};
    const WeatherTiming utc{.zone_h = 0.0, .interval_h = 0.0, .temperature_h = std::nullopt, .words = "UTC"};
    if (head_.solar_time.value_or(true)) {
      series_.timings = {solar, utc};
    } else {
      series_.timings = {utc, solar};
    }
    if (!head_.solar_time) {
      series_.repairs.emplace_back(
          "The header does not say UTC or LST; LST was taken unless the sun says UTC.");
    }
  }

  bool read_titles(const PowerHead& head) {
    head_ = head;
    series_.site = head.site;
    series_.clock_remedy = "The Dates line of the header must say UTC or LST.";
    if (!head.has_elevation) series_.repairs.emplace_back("The header has no height; 0 m was assumed.");
    add_timings();
    lines_.next();
    for (const std::string_view field : split_at(lines_.text(), ',')) {
      titles_.push_back(lower_case(trimmed(field)));
    }
    monthly_ = !titles_.empty() && titles_.front() == "parameter";
    hourly_ = title("hr").has_value();
    const bool dated = title("year") && ((title("mo") && title("dy")) || title("doy"));
    if (!monthly_ && !dated) {
      problem(1, {.what = "These are not the column titles of an hourly, daily or climatology file.",
                  .field = "",
                  .given = std::string(lines_.text()),
                  .limit = "YEAR,MO,DY,HR,... or YEAR,MO,DY,... or YEAR,DOY,... or PARAMETER,JAN,...",
                  .remedy = "Fetch the file as CSV, its fields split by commas."});
      return false;
    }
    series_.format = monthly_ ? "POWER climatology" : (hourly_ ? "POWER hourly" : "POWER daily");
    if (monthly_) return true;
    for (std::size_t c = 0; c < kWeatherColumns; ++c) index_.at(c) = title(kParameters.at(c));
    if (!hourly_) {
      index_.at(static_cast<std::size_t>(WeatherColumn::kDni)) = std::nullopt;
      index_.at(static_cast<std::size_t>(WeatherColumn::kDhi)) = std::nullopt;
      series_.repairs.emplace_back(
          "Days were spread over their hours by a clear sky, the temperature by a mean daily course.");
    }
    return factor_known("allsky_sfc_sw_dwn", hourly_ ? 1.0 : 24.0);
  }

  bool factor_known(const std::string& parameter, double interval_h) {
    const auto unit = head_.unit.find(parameter);
    if (unit == head_.unit.end()) {
      factor_ = interval_h > 1.0 ? 1000.0 / 24.0 : 1.0;
      series_.repairs.push_back(fmt::format("The header gives no unit of radiation; {} was assumed.",
                                            interval_h > 1.0 ? "kWh/m2 a day" : "W/m2"));
      return true;
    }
    const auto factor = power_radiation_factor(unit->second, interval_h);
    if (factor) {
      factor_ = *factor;
      return true;
    }
    problem(1, {.what = "The unit of the radiation is not known here.",
                .field = parameter,
                .given = unit->second,
                .limit = "W/m^2, Wh/m^2, kW-hr/m^2/day, MJ/m^2/day, MJ/hr",
                .remedy = "Fetch the file for another user community."});
    return false;
  }

  void problem(int column, const ProblemWords& words) { problems_.add(lines_.number(), column, words); }

  void read_row() {
    const auto fields = split_at(lines_.text(), ',');
    if (fields.size() != titles_.size()) {
      problem(static_cast<int>(lines_.text().size()) + 1,
              {.what = "The row has another number of fields than there are titles.",
               .field = "",
               .given = fmt::format("{} fields", fields.size()),
               .limit = fmt::format("{} fields", titles_.size()),
               .remedy = "Fetch the file again."});
      return;
    }
    if (monthly_) {
      read_month_row(fields);
    } else {
      read_dated_row(fields);
    }
  }

  std::optional<int> date_part(const std::vector<std::string_view>& fields, std::string_view name) const {
    const auto index = title(name);
    return index ? digits(trimmed(fields[*index])) : std::nullopt;
  }

  bool read_date(const std::vector<std::string_view>& fields, WeatherRecord& record) const {
    const auto year = date_part(fields, "year");
    auto month = date_part(fields, "mo");
    auto day = date_part(fields, "dy");
    if (const auto doy = date_part(fields, "doy"); doy && year && *doy >= 1 && *doy <= 366) {
      const bool leap = std::chrono::year{*year}.is_leap();
      month = 1;
      day = *doy;
      while (*month < 12) {
        const int days =
            kDaysInMonth.at(static_cast<std::size_t>(*month - 1)) + (*month == 2 && leap ? 1 : 0);
        if (*day <= days) break;
        *day -= days;
        ++*month;
      }
    }
    const auto hour = hourly_ ? date_part(fields, "hr") : std::optional<int>(0);
    if (!year || !month || !day || !hour || !is_date(*year, *month, *day) || *hour > 23) return false;
    record.year = *year;
    record.month = *month;
    record.day = *day;
    record.stamp_s = std::int64_t{*hour} * 3600;
    return true;
  }

  std::optional<double> field_value(const std::vector<std::string_view>& fields,
                                    std::optional<std::size_t> index, WeatherColumn column,
                                    double factor = 1.0) {
    if (!index) return std::nullopt;
    const std::string_view field = fields[*index];
    return problems_.value(field, column, lines_.number(), place_in(lines_.text(), field), factor);
  }

  void read_dated_row(const std::vector<std::string_view>& fields) {
    WeatherRecord record;
    record.line = lines_.number();
    if (!read_date(fields, record)) {
      problem(1, {.what = "The date or time cannot be read.",
                  .field = "YEAR, MO, DY, HR or DOY",
                  .given = std::string(lines_.text()),
                  .limit = "a day of the calendar, hour 0 to 23",
                  .remedy = "Mend the row."});
      return;
    }
    for (std::size_t c = 0; c < kWeatherColumns; ++c) {
      const auto column = static_cast<WeatherColumn>(c);
      const bool radiation = column != WeatherColumn::kTemperature && column != WeatherColumn::kWind;
      record.value.at(c) = field_value(fields, index_.at(c), column, radiation ? factor_ : 1.0);
    }
    if (hourly_) {
      series_.records.push_back(record);
      return;
    }
    const auto highest = field_value(fields, title("t2m_max"), WeatherColumn::kTemperature);
    const auto lowest = field_value(fields, title("t2m_min"), WeatherColumn::kTemperature);
    const double range_K = highest && lowest ? std::max(0.0, *highest - *lowest) : kAssumedRange_K;
    add_hours_of_day(record, range_K, head_.site, series_.timings.front().zone_h, series_.records);
  }

  void read_month_row(const std::vector<std::string_view>& fields) {
    const std::string parameter = lower_case(trimmed(fields.front()));
    for (std::size_t m = 0; m < units::kMonthKeys.size(); ++m) {
      const auto index = title(units::kMonthKeys.at(m));
      const auto value = index ? to_number(fields[*index]) : std::nullopt;
      constexpr double kMissingBelow = -90.0;
      if (value && *value < kMissingBelow) continue;
      if (!value) {
        problem(index ? place_in(lines_.text(), fields[*index]) : 1,
                {.what = index ? "This is not a number." : "The line of titles lacks a month.",
                 .field = parameter,
                 .given = index ? std::string(fields[*index]) : std::string(units::kMonthKeys.at(m)),
                 .limit = "a number for each month",
                 .remedy = "Fetch the file again."});
        return;
      }
      // With several years of months the mean of the years is meant.
      auto& [sum, count] = months_[parameter].at(m);
      sum += *value;
      ++count;
    }
  }

  /// Mean of a parameter in a month; nothing if the file has none.
  std::optional<double> mean_of(const std::string& parameter, std::size_t month) const {
    const auto found = months_.find(parameter);
    if (found == months_.end() || found->second.at(month).second == 0) return std::nullopt;
    return found->second.at(month).first / found->second.at(month).second;
  }

  void make_climate() {
    if (!factor_known("allsky_sfc_sw_dwn", 24.0)) return;
    sky::MonthlyClimate climate;
    const MonthlyDaylight top = monthly_daylight(head_.site.latitude_deg);
    bool assumed_range = false;
    bool assumed_wind = false;
    for (std::size_t m = 0; m < 12; ++m) {
      const auto mean_W_m2 = mean_of("allsky_sfc_sw_dwn", m);
      const auto temperature = mean_of("t2m", m);
      if (!mean_W_m2 || !temperature || *temperature < -70.0 || *temperature > 70.0) {
        problems_.add(0, 0,
                      {.what = "A month lacks radiation or temperature.",
                       .field = "ALLSKY_SFC_SW_DWN, T2M",
                       .given = fmt::format("month {}", m + 1),
                       .limit = "both for every month",
                       .remedy = "Fetch the climatology with both parameters."});
        return;
      }
      constexpr double kLeastTop_kWh = 0.05;  // in polar night the clearness means nothing
      constexpr double kTypicalClearness = 0.45;
      const double day_kWh = std::max(0.0, *mean_W_m2) * factor_ * 24.0 / 1000.0;
      const double most_kWh = top.horizontal_kWh_m2_day.at(m);
      climate.clearness.at(m) =
          most_kWh < kLeastTop_kWh ? kTypicalClearness : std::clamp(day_kWh / most_kWh, 0.05, 0.85);
      climate.temperature_C.at(m) = *temperature;
      const auto range = mean_of("t2m_range", m);
      const bool usable = range && *range >= 0.0 && *range <= kMostRange_K;
      climate.daily_range_K.at(m) = usable ? *range : kAssumedRange_K;
      const auto wind = mean_of("ws10m", m);
      climate.wind_m_s.at(m) = wind && *wind >= 0.0 && *wind <= 40.0 ? *wind : kAssumedWind_m_s;
      climate.linke_turbidity.at(m) = kAssumedTurbidity;
      assumed_range = assumed_range || !usable;
      assumed_wind = assumed_wind || !wind;
    }
    if (assumed_range) {
      series_.repairs.push_back(
          fmt::format("There is no usable T2M_RANGE; a daily range of {:g} K was assumed.", kAssumedRange_K));
    }
    if (assumed_wind) {
      series_.repairs.push_back(fmt::format("There is no WS10M; {:g} m/s was assumed.", kAssumedWind_m_s));
    }
    series_.repairs.push_back(fmt::format(
        "A Linke turbidity of {:g} was assumed where nothing better is known.", kAssumedTurbidity));
    climate.origin =
        fmt::format("Monthly means of a POWER climatology at {}.", position_text(head_.site, " "));
    series_.climate = climate;
  }

  Lines lines_;
  WeatherProblems problems_;
  WeatherSeries series_;
  PowerHead head_;
  std::vector<std::string> titles_;
  std::array<std::optional<std::size_t>, kWeatherColumns> index_;
  std::map<std::string, std::array<std::pair<double, int>, 12>> months_;
  bool monthly_ = false;
  bool hourly_ = false;
  double factor_ = 1.0;
};

}  // namespace

base::Result<WeatherSeries> read_power(std::string_view text, const std::string& name) {
  return Power(text, name).read();
}

}  // namespace voltwright::files
