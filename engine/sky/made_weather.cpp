#include "engine/sky/made_weather.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "engine/sky/air_temperature.h"
#include "engine/sky/calendar.h"
#include "engine/sky/clear_sky.h"
#include "engine/sky/daily_clearness.h"
#include "engine/sky/hour_shape.h"
#include "engine/sky/hourly_clearness.h"
#include "engine/sky/minute_split.h"
#include "engine/sky/monthly_curve.h"

namespace voltwright::sky {
namespace {

constexpr std::size_t kDayMinutes = 1440;
constexpr double kHourLimit = 1.1;     // of an hour's clear sky
constexpr double kDayLimit = 1.08;     // of a day's clear sky, so that the hours can always hold the day
constexpr double kMinuteLimit = 1.29;  // of a minute's clear sky
constexpr double kLowestTurbidity = 1.5;
constexpr double kRangeExponent = 0.5;  // daily range against relative clearness (assumption)

enum class Purpose : std::uint64_t { kDailyClearness, kHourlyClearness, kTemperature };

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

/// Pointers to the 1440 minutes of one solar day.
struct DaySun {
  const float* cos_zenith = nullptr;
  const float* extraterrestrial = nullptr;
};

/// Hourly means of one solar day.
struct DayMeans {
  DayHours above{};       // extraterrestrial on the horizontal, W/m2
  DayHours sin_height{};  // while the sun is up
  DayHours clear{};       // clear sky, W/m2
  double above_sum = 0.0;
  double clear_sum = 0.0;
};

/// What a day hands to the temperature pass.
struct DayAir {
  double mean_C = 0.0;
  double range_K = 0.0;
};

class Maker {
 public:
  Maker(const Site& site, const MonthlyClimate& climate, const ClearnessMatrices& matrices,
        const SunMinutes& sun, std::uint64_t seed, std::uint64_t season, std::uint64_t leg)
      : site_(site),
        sun_(sun),
        seed_(seed),
        season_(season),
        leg_(leg),
        clearness_(filled_clearness(climate.clearness)),
        temperature_(climate.temperature_C),
        range_(climate.daily_range_K),
        turbidity_(climate.linke_turbidity),
        wind_(climate.wind_m_s),
        sequence_(matrices),
        table_(AirMassTable(), site.elevation_m),
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
    first_day_ = floor_divide(sun_.start_utc_s + offset_s_, kSecondsPerDay);
    const std::int64_t last_day = floor_divide(end_s + offset_s_, kSecondsPerDay);
    // One day more at each end, because temperatures run from noon to noon.
    air_ = std::vector<DayAir>(static_cast<std::size_t>(last_day - first_day_ + 3));
    for (std::int64_t day = first_day_ - 1; day <= last_day + 1; ++day) make_day(day);
    for (std::int64_t day = first_day_; day <= last_day; ++day) make_temperature(day);
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

  void compute_clear_sky(const DaySun& sun, double turbidity, DayMeans& means) {
    if (turbidity != table_turbidity_) {
      table_.set_turbidity(turbidity);
      table_turbidity_ = turbidity;
    }
    means.clear_sum = 0.0;
    for (std::size_t hour = 0; hour < 24; ++hour) {
      means.clear[hour] = 0.0;
      float* const clear = clear_.data() + hour * 60;
      if (!(means.above[hour] > 0.0)) {
        std::fill_n(clear, 60, 0.0F);
        continue;
      }
      double sum = 0.0;
      for (std::size_t i = 0; i < 60; ++i) {
        const std::size_t m = hour * 60 + i;
        clear[i] = sun.extraterrestrial[m] * table_.fraction(sun.cos_zenith[m]);
        sum += static_cast<double>(clear[i]);
      }
      means.clear[hour] = sum / 60.0;
      means.clear_sum += means.clear[hour];
    }
  }

  static void compute_above(const DaySun& sun, DayMeans& means) {
    for (std::size_t hour = 0; hour < 24; ++hour) {
      float height = 0.0F;
      int up = 0;
      for (std::size_t i = 0; i < 60; ++i) {
        const float c = sun.cos_zenith[hour * 60 + i];
        height += std::max(0.0F, c);
        up += c > 0.0F ? 1 : 0;
      }
      if (up == 0) continue;
      means.sin_height[hour] = static_cast<double>(height) / up;
      means.above[hour] =
          static_cast<double>(height) / 60.0 * static_cast<double>(sun.extraterrestrial[hour * 60]);
      means.above_sum += means.above[hour];
    }
  }

  void make_day(std::int64_t day) {
    const double year = part_of_year(day);
    const DaySun sun = day_sun(day);
    DayMeans means;
    compute_above(sun, means);
    const double mean_clearness = std::clamp(clearness_.at(year), 0.0, 0.95);
    // Steps of 0.02 let neighbouring days share a table.
    double turbidity = std::max(kLowestTurbidity, std::round(50.0 * turbidity_.at(year)) / 50.0);
    compute_clear_sky(sun, turbidity, means);
    // Clear days must leave room above the mean, or the long-run mean could not be reached.
    while (means.clear_sum < 1.08 * mean_clearness * means.above_sum && turbidity > kLowestTurbidity) {
      turbidity = std::max(kLowestTurbidity, turbidity - 0.25);
      compute_clear_sky(sun, turbidity, means);
    }
    const bool light = means.clear_sum > 0.0;
    const double largest = light ? std::min(1.0, kDayLimit * means.clear_sum / means.above_sum) : 0.8;
    base::RandomStream daily = stream(day, Purpose::kDailyClearness);
    const double clearness = sequence_.next(mean_clearness, largest, daily);
    add_air(day, year, mean_clearness > 0.0 ? clearness / mean_clearness : 1.0);

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
    split_minutes(ghi, sun.extraterrestrial + part.from, sun.cos_zenith + part.from, part.count,
                  weather_.dni_W_m2.data() + part.index, weather_.dhi_W_m2.data() + part.index);
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
      shape_hour(clear_.data() + h * 60, before, own, after, kMinuteLimit, global);
    }
  }

  void add_air(std::int64_t day, double year, double relative_clearness) {
    const double range = std::max(0.0, range_.at(year));
    base::RandomStream random = stream(day, Purpose::kTemperature);
    const double normal = random.normal();
    constexpr double kRho = kTemperaturePersistence;
    const bool first = day < first_day_;
    departure_ = first ? normal : kRho * departure_ + std::sqrt(1.0 - kRho * kRho) * normal;
    const double stretch = std::clamp(std::pow(relative_clearness, kRangeExponent), 0.3, 1.5);
    air_[static_cast<std::size_t>(day - first_day_ + 1)] = {
        temperature_.at(year) + departure_ * day_to_day_deviation_K(range, site_.latitude_deg),
        range * stretch};
  }

  /// Temperature at a whole solar hour of a day, mean and range running in straight lines from noon to noon.
  double temperature_at(std::size_t record, std::size_t hour) const {
    const bool morning = hour < 12;
    const DayAir& from = air_[morning ? record - 1 : record];
    const DayAir& to = air_[morning ? record : record + 1];
    const double part = (static_cast<double>(hour) + (morning ? 12.0 : -12.0)) / 24.0;
    return from.mean_C + (to.mean_C - from.mean_C) * part +
           (from.range_K + (to.range_K - from.range_K) * part) * course_[hour];
  }

  void make_temperature(std::int64_t day) {
    const Part part = part_of(day);
    const auto record = static_cast<std::size_t>(day - first_day_ + 1);
    float* const out = weather_.temperature_C.data() + part.index;
    const std::size_t end = part.from + part.count;
    for (std::size_t hour = part.from / 60; hour * 60 < end; ++hour) {
      const double now = temperature_at(record, hour);
      const double slope = (temperature_at(record, hour + 1) - now) / 60.0;
      const auto base = static_cast<float>(now + 0.5 * slope);
      const auto step = static_cast<float>(slope);
      const std::size_t from = std::max(part.from, hour * 60);
      const std::size_t to = std::min(end, hour * 60 + 60);
      for (std::size_t m = from; m < to; ++m) {
        out[m - part.from] = base + step * static_cast<float>(static_cast<int>(m - hour * 60));
      }
    }
  }

  static std::array<double, 25> hourly_course() {
    std::array<double, 25> course{};
    for (std::size_t h = 0; h < course.size(); ++h)
      course[h] = daily_temperature_course(static_cast<double>(h));
    return course;
  }

  Site site_;
  const SunMinutes& sun_;
  std::uint64_t seed_, season_, leg_;
  MonthlyCurve clearness_, temperature_, range_, turbidity_, wind_;
  ClearnessSequence sequence_;
  ClearSkyTable table_;
  double table_turbidity_ = 0.0;
  std::int64_t offset_s_;  // mean solar time of the place minus UTC, whole minutes
  std::int64_t phase_s_;   // second within the minute at which the stay's minutes start
  std::int64_t first_day_ = 0;
  double departure_ = 0.0;
  std::array<double, 25> course_ = hourly_course();
  std::array<float, kDayMinutes> clear_{};
  std::array<float, kDayMinutes> global_{};
  std::vector<DayAir> air_;  // from the day before the stay
  SunMinutes outside_;
  WeatherMinutes weather_;
};

}  // namespace

WeatherMinutes make_weather(const Site& site, const MonthlyClimate& climate,
                            const ClearnessMatrices& matrices, const SunMinutes& sun, std::uint64_t seed,
                            std::uint64_t season, std::uint64_t leg) {
  return Maker(site, climate, matrices, sun, seed, season, leg).make();
}

}  // namespace voltwright::sky
