#include "engine/sky/made_weather.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "engine/sky/bendt_clearness.h"
#include "engine/sky/calendar.h"
#include "engine/sky/cloud_passages.h"
#include "engine/sky/daily_clearness.h"
#include "engine/sky/day_light.h"
#include "engine/sky/hour_shape.h"
#include "engine/sky/hourly_clearness.h"
#include "engine/sky/made_air.h"
#include "engine/sky/minute_split.h"
#include "engine/sky/month_anomaly.h"
#include "engine/sky/monthly_curve.h"

namespace voltwright::sky {
namespace {

constexpr double kHourLimit = 1.1;     // of an hour's clear sky
constexpr double kDayLimit = 1.08;     // of a day's clear sky, so that the hours can always hold the day
constexpr double kMinuteLimit = 1.29;  // of a minute's clear sky
constexpr double kFullest = 0.94;      // of the clearest day, for the mean of a month

enum class Purpose : std::uint64_t { kDailyClearness, kHourlyClearness, kTemperature, kClouds };

/// Months without a usable clearness get the straight line between the nearest months that have one.
std::array<double, 12> filled_clearness(const std::array<double, 12>& given) {
  const auto usable = [&](std::size_t m) { return std::isfinite(given[m % 12]) && given[m % 12] > 0.0; };
  std::array<double, 12> filled = given;
  for (std::size_t m = 0; m < 12; ++m) {
    if (usable(m)) continue;
    std::size_t back = 1;
    while (back < 12 && !usable(m + 12 - back)) ++back;
    if (back == 12) return {};
    std::size_t forth = 1;
    while (!usable(m + forth)) ++forth;
    const double part = static_cast<double>(back) / static_cast<double>(back + forth);
    filled[m] = given[(m + 12 - back) % 12] * (1.0 - part) + given[(m + forth) % 12] * part;
  }
  return filled;
}

class Maker {
 public:
  Maker(const Site& site, const MonthlyClimate& climate, const ClearnessMatrices& matrices,
        const SunMinutes& sun, std::uint64_t seed, std::uint64_t season, std::uint64_t leg, DailyModel model,
        DiffuseModel diffuse)
      : site_(site),
        sun_(sun),
        seed_(seed),
        season_(season),
        leg_(leg),
        model_(model),
        diffuse_(diffuse),
        clearness_(filled_clearness(climate.clearness)),
        turbidity_(climate.linke_turbidity),
        wind_(climate.wind_m_s),
        sequence_(matrices),
        light_(site.elevation_m),
        air_(site, climate),
        offset_s_(60 * std::llround(4.0 * site.longitude_deg)),
        phase_s_(sun.start_utc_s - 60 * floor_divide(sun.start_utc_s, 60)) {}

  WeatherMinutes make() {
    const std::size_t minutes = sun_.cos_zenith.size();
    weather_.start_utc_s = sun_.start_utc_s;
    weather_.ghi_W_m2 = std::vector<float>(minutes);
    weather_.dni_W_m2 = std::vector<float>(minutes);
    weather_.dhi_W_m2 = std::vector<float>(minutes);
    weather_.temperature_C = std::vector<float>(minutes);
    weather_.wind_m_s = std::vector<float>(minutes);
    if (minutes == 0) return std::move(weather_);
    const std::int64_t end_s = sun_.start_utc_s + 60 * static_cast<std::int64_t>(minutes) - 60;
    const std::int64_t first_day = floor_divide(sun_.start_utc_s + offset_s_, kSecondsPerDay);
    const std::int64_t last_day = floor_divide(end_s + offset_s_, kSecondsPerDay);
    // One day more at each end, because temperatures run from noon to noon.
    for (std::int64_t day = first_day - 1; day <= last_day + 1; ++day) make_day(day);
    for (std::int64_t day = first_day; day <= last_day; ++day) {
      const Part part = part_of(day);
      air_.write(static_cast<std::size_t>(day - first_day + 1), part.from, part.count,
                 weather_.temperature_C.data() + part.index);
    }
    return std::move(weather_);
  }

 private:
  base::RandomStream stream(std::int64_t day, Purpose purpose) const {
    const auto key = static_cast<std::uint64_t>(day) * 4 + static_cast<std::uint64_t>(purpose);
    return base::RandomStream(seed_, season_, leg_, key);
  }

  std::int64_t day_start_s(std::int64_t day) const { return day * kSecondsPerDay - offset_s_ + phase_s_; }

  /// The part of a day inside the stay, as minutes of the day and an index into the stay.
  struct Part {
    std::size_t from = 0;
    std::size_t count = 0;
    std::size_t index = 0;
  };
  Part part_of(std::int64_t day) const {
    const std::int64_t minutes = static_cast<std::int64_t>(sun_.cos_zenith.size());
    const std::int64_t first = (day_start_s(day) - sun_.start_utc_s) / 60;
    const std::int64_t from = std::max<std::int64_t>(0, first);
    const std::int64_t to = std::min<std::int64_t>(minutes, first + static_cast<std::int64_t>(kDayMinutes));
    if (to <= from) return {};
    return {static_cast<std::size_t>(from - first), static_cast<std::size_t>(to - from),
            static_cast<std::size_t>(from)};
  }

  DaySun day_sun(std::int64_t day) {
    const Part part = part_of(day);
    if (part.count == kDayMinutes) {
      return {sun_.cos_zenith.data() + part.index, sun_.extraterrestrial_W_m2.data() + part.index};
    }
    outside_ = sun_minutes(site_, day_start_s(day), kDayMinutes);
    return {outside_.cos_zenith.data(), outside_.extraterrestrial_W_m2.data()};
  }

  void make_day(std::int64_t day) {
    const double year = part_of_year(day);
    const DaySun sun = day_sun(day);
    const double mean_clearness = std::clamp(clearness_.at(year), 0.0, 0.95);
    // Clear days must leave room above the mean, or the long-run mean could not be reached.
    const DayMeans means = light_.of(sun, turbidity_.at(year), kDayLimit * mean_clearness);
    const bool light = means.clear_sum > 0.0;
    const double largest = light ? std::min(1.0, kDayLimit * means.clear_sum / means.above_sum) : 0.8;
    base::RandomStream daily = stream(day, Purpose::kDailyClearness);
    // The anomaly may ask for more than a month of clear days, which the models cannot reach.
    const double month_mean =
        std::min(mean_clearness * month_anomaly(mean_clearness, day, seed_, season_), kFullest * largest);
    const double clearness = model_ == DailyModel::kExponential
                                 ? exponential_.next(month_mean, largest, daily)
                                 : sequence_.next(month_mean, largest, daily);
    air_.add_day(year, mean_clearness > 0.0 ? clearness / mean_clearness : 1.0,
                 stream(day, Purpose::kTemperature));

    const Part part = part_of(day);
    if (part.count == 0) return;
    std::fill_n(weather_.wind_m_s.data() + part.index, part.count,
                static_cast<float>(std::max(0.0, wind_.at(year))));
    if (light) {
      make_hours(day, means, clearness);
    } else {
      global_.fill(0.0F);
    }
    float* const ghi = weather_.ghi_W_m2.data() + part.index;
    std::copy_n(global_.data() + part.from, part.count, ghi);
    split(sun, part, ghi);
  }

  void split(const DaySun& sun, const Part& part, const float* ghi) {
    float* const dni = weather_.dni_W_m2.data() + part.index;
    float* const dhi = weather_.dhi_W_m2.data() + part.index;
    const float* const above = sun.extraterrestrial + part.from;
    const float* const cos_zenith = sun.cos_zenith + part.from;
    if (diffuse_ == DiffuseModel::kErbs) {
      split_minutes(ghi, above, cos_zenith, part.count, dni, dhi);
      return;
    }
    // Days begin at midnight of mean solar time, up to 17 min off the apparent time that the model takes;
    // that moves the diffuse share by less than 0.001.
    const float hour = (static_cast<float>(part.from) + 0.5F) / 60.0F;
    split_ramping_minutes(ghi, light_.minutes() + part.from, above, cos_zenith, hour, part.count, dni, dhi);
  }

  void make_hours(std::int64_t day, const DayMeans& means, double clearness) {
    base::RandomStream hourly = stream(day, Purpose::kHourlyClearness);
    DayHours hours = hourly_clearness(clearness, means.sin_height, hourly);
    DayHours limits{};
    for (std::size_t h = 0; h < 24; ++h) {
      hours[h] *= means.above[h];
      limits[h] = kHourLimit * means.clear[h];
    }
    hours = scale_within_limits(hours, limits, clearness * means.above_sum);
    base::RandomStream clouds = stream(day, Purpose::kClouds);
    const auto ratio = [&](std::size_t h) { return hours[h] / means.clear[h]; };
    for (std::size_t h = 0; h < 24; ++h) {
      float* const global = global_.data() + h * 60;
      if (!(means.clear[h] > 0.0)) {
        std::fill_n(global, 60, 0.0F);
        continue;
      }
      const double own = ratio(h);
      const double before = h > 0 && means.clear[h - 1] > 0.0 ? ratio(h - 1) : own;
      const double after = h < 23 && means.clear[h + 1] > 0.0 ? ratio(h + 1) : own;
      shape_hour(light_.minutes() + h * 60, before, own, after, kMinuteLimit, global);
      lay_cloud_passages(light_.minutes() + h * 60, own, kMinuteLimit, clouds, global);
    }
  }

  Site site_;
  const SunMinutes& sun_;
  std::uint64_t seed_, season_, leg_;
  DailyModel model_;
  DiffuseModel diffuse_;
  MonthlyCurve clearness_, turbidity_, wind_;
  ClearnessSequence sequence_;
  BendtSequence exponential_;
  DayLight light_;
  MadeAir air_;
  std::int64_t offset_s_;  // mean solar time of the place minus UTC, whole minutes
  std::int64_t phase_s_;   // second within the minute at which the stay's minutes start
  std::array<float, kDayMinutes> global_{};
  SunMinutes outside_;
  WeatherMinutes weather_;
};

}  // namespace

WeatherMinutes make_weather(const Site& site, const MonthlyClimate& climate,
                            const ClearnessMatrices& matrices, const SunMinutes& sun, std::uint64_t seed,
                            std::uint64_t season, std::uint64_t leg, DailyModel model, DiffuseModel diffuse) {
  return Maker(site, climate, matrices, sun, seed, season, leg, model, diffuse).make();
}

}  // namespace voltwright::sky
