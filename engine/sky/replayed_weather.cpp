#include "engine/sky/replayed_weather.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "engine/sky/calendar.h"
#include "engine/sky/clear_sky.h"
#include "engine/sky/hour_shape.h"
#include "engine/sky/minute_split.h"

namespace voltwright::sky {
namespace {

constexpr double kTurbidity = 2.5;     // the shape of an hour hardly depends on it
constexpr double kLargestRatio = 1.6;  // of an hour to its clear sky, beyond which the shape means nothing
constexpr double kMinuteRatio = 1.8;
constexpr double kEmptyFileAir_C = 15.0;

/// The same month, day and second of day in 2023; 29 February becomes the 28th.
std::int64_t in_2023(std::int64_t utc_s) {
  using namespace std::chrono;
  const std::int64_t day = floor_divide(utc_s, kSecondsPerDay);
  const year_month_day date{sys_days{days{day}}};
  const bool leap_day = date.month() == February && static_cast<unsigned>(date.day()) == 29;
  const sys_days typical{year{2023} / date.month() / (leap_day ? std::chrono::day{28} : date.day())};
  return typical.time_since_epoch().count() * kSecondsPerDay + (utc_s - day * kSecondsPerDay);
}

class Replayer {
 public:
  Replayer(const HourlyWeather& hourly, const SunMinutes& sun)
      : hourly_(hourly), sun_(sun), table_(AirMassTable(), hourly.site.elevation_m) {
    table_.set_turbidity(kTurbidity);
  }

  WeatherMinutes replay() {
    const std::size_t minutes = sun_.cos_zenith.size();
    WeatherMinutes weather;
    weather.start_utc_s = sun_.start_utc_s;
    weather.ghi_W_m2 = std::vector<float>(minutes);
    weather.dni_W_m2 = std::vector<float>(minutes);
    weather.dhi_W_m2 = std::vector<float>(minutes);
    weather.temperature_C = std::vector<float>(minutes, static_cast<float>(kEmptyFileAir_C));
    weather.wind_m_s = std::vector<float>(minutes);
    if (minutes == 0 || hourly_.ghi_W_m2.empty()) return weather;
    // The file's hours may begin at any minute of the UTC hour.
    const std::int64_t since = sun_.start_utc_s - hourly_.start_utc_s;
    std::int64_t hour_s = hourly_.start_utc_s + kSecondsPerHour * floor_divide(since, kSecondsPerHour);
    std::size_t written = 0;
    while (written < minutes) {
      const auto from =
          static_cast<std::size_t>((sun_.start_utc_s - hour_s) / 60 + static_cast<std::int64_t>(written));
      const std::size_t count = std::min<std::size_t>(60 - from, minutes - written);
      write_hour(hour_s, from, count, written, weather);
      written += count;
      hour_s += kSecondsPerHour;
    }
    return weather;
  }

 private:
  std::size_t index_of(std::int64_t hour_s) const {
    const auto size = static_cast<std::int64_t>(hourly_.ghi_W_m2.size());
    const std::int64_t hour = floor_divide(in_2023(hour_s) - hourly_.start_utc_s, kSecondsPerHour);
    return static_cast<std::size_t>(hour - size * floor_divide(hour, size));
  }

  static double value_or(const std::vector<double>& values, std::size_t index, double fallback) {
    return index < values.size() ? values[index] : fallback;
  }

  /// Clear sky of an hour into `clear`; returns its mean.
  double clear_hour(const float* cos_zenith, const float* extraterrestrial, float* clear) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < 60; ++i) {
      clear[i] = extraterrestrial[i] * table_.fraction(cos_zenith[i]);
      sum += static_cast<double>(clear[i]);
    }
    return sum / 60.0;
  }

  /// Ratio of the file's hour to its clear sky, or `own` where the sun is too low to tell.
  double neighbour_ratio(std::int64_t hour_s, double own) {
    const std::int64_t ahead_s = hour_s + sun_offset_s() - sun_.start_utc_s;
    const std::int64_t minutes = static_cast<std::int64_t>(sun_.cos_zenith.size());
    const std::int64_t first = ahead_s / 60;
    double clear = 0.0;
    if (ahead_s >= 0 && first + 60 <= minutes) {
      const auto i = static_cast<std::size_t>(first);
      clear = clear_hour(sun_.cos_zenith.data() + i, sun_.extraterrestrial_W_m2.data() + i, scratch_.data());
    } else {
      outside_ = sun_minutes(hourly_.site, hour_s + sun_offset_s(), 60);
      clear = clear_hour(outside_.cos_zenith.data(), outside_.extraterrestrial_W_m2.data(), scratch_.data());
    }
    constexpr double kTellingClear_W_m2 = 5.0;
    if (clear < kTellingClear_W_m2) return own;
    return std::min(kLargestRatio, std::max(0.0, hourly_.ghi_W_m2[index_of(hour_s)]) / clear);
  }

  /// Seconds from a file hour to the first of the stay's minutes in it, less than a minute.
  std::int64_t sun_offset_s() const {
    const std::int64_t since = sun_.start_utc_s - hourly_.start_utc_s;
    return since - 60 * floor_divide(since, 60);
  }

  void write_hour(std::int64_t hour_s, std::size_t from, std::size_t count, std::size_t written,
                  WeatherMinutes& weather) {
    const std::size_t index = index_of(hour_s);
    const double ghi = std::max(0.0, hourly_.ghi_W_m2[index]);
    write_air(hour_s, index, from, count, written, weather);
    if (!(ghi > 0.0)) return;

    const float* cos_zenith = nullptr;
    const float* extraterrestrial = nullptr;
    SunMinutes whole;
    if (count == 60) {
      cos_zenith = sun_.cos_zenith.data() + written;
      extraterrestrial = sun_.extraterrestrial_W_m2.data() + written;
    } else {
      whole = sun_minutes(hourly_.site, hour_s + sun_offset_s(), 60);
      cos_zenith = whole.cos_zenith.data();
      extraterrestrial = whole.extraterrestrial_W_m2.data();
    }
    const double clear = clear_hour(cos_zenith, extraterrestrial, clear_.data());
    float* const out_ghi = weather.ghi_W_m2.data() + written;
    float* const out_dni = weather.dni_W_m2.data() + written;
    float* const out_dhi = weather.dhi_W_m2.data() + written;
    if (!(ghi <= kLargestRatio * clear)) {
      std::fill_n(out_ghi, count, static_cast<float>(ghi));
      std::fill_n(out_dni, count, 0.0F);
      std::fill_n(out_dhi, count, static_cast<float>(ghi));
      return;
    }
    const double own = ghi / clear;
    const double before = neighbour_ratio(hour_s - kSecondsPerHour, own);
    const double after = neighbour_ratio(hour_s + kSecondsPerHour, own);
    shape_hour(clear_.data(), before, own, after, kMinuteRatio, global_.data());
    std::copy_n(global_.data() + from, count, out_ghi);
    if (index < hourly_.dhi_W_m2.size()) {
      const auto diffuse = static_cast<float>(std::clamp(hourly_.dhi_W_m2[index] / ghi, 0.0, 1.0));
      split_minutes_by_fraction(out_ghi, cos_zenith + from, diffuse, extraterrestrial[0], count, out_dni,
                                out_dhi);
    } else {
      split_minutes(out_ghi, extraterrestrial + from, cos_zenith + from, count, out_dni, out_dhi);
    }
  }

  void write_air(std::int64_t hour_s, std::size_t index, std::size_t from, std::size_t count,
                 std::size_t written, WeatherMinutes& weather) const {
    const double own = value_or(hourly_.temperature_C, index, kEmptyFileAir_C);
    const double before = value_or(hourly_.temperature_C, index_of(hour_s - kSecondsPerHour), own);
    const double after = value_or(hourly_.temperature_C, index_of(hour_s + kSecondsPerHour), own);
    for (std::size_t k = 0; k < count; ++k) {
      const double x = (static_cast<double>(from + k) + 0.5) / 60.0 - 0.5;
      const double value = x < 0.0 ? own + (own - before) * x : own + (after - own) * x;
      weather.temperature_C[written + k] = static_cast<float>(value);
    }
    std::fill_n(weather.wind_m_s.data() + written, count,
                static_cast<float>(std::max(0.0, value_or(hourly_.wind_m_s, index, 0.0))));
  }

  const HourlyWeather& hourly_;
  const SunMinutes& sun_;
  ClearSkyTable table_;
  SunMinutes outside_;
  std::array<float, 60> clear_{};
  std::array<float, 60> scratch_{};
  std::array<float, 60> global_{};
};

}  // namespace

WeatherMinutes replay_weather(const HourlyWeather& hourly, const SunMinutes& sun) {
  return Replayer(hourly, sun).replay();
}

}  // namespace voltwright::sky
