#include "engine/season/driven_minutes.h"

#include <chrono>

#include "engine/sky/calendar.h"
#include "engine/supply/engine_use.h"
#include "engine/supply/wind_draws.h"

namespace voltwright::season {

namespace {

/// Voltage at which the limit of a DC-DC converter counts as power, for each 12 V of the system: absorption
/// (assumption).
constexpr double kAbsorptionOver12V = 14.4 / 12.0;

void add_engine(const LegDrawn& drawn, std::span<Minute> minutes) {
  const supply::EngineCharging& engine = *drawn.all.engine;
  if (!engine.alternator && !engine.derating) return;
  const double output_V = drawn.all.system_V * kAbsorptionOver12V;
  supply::DriveMinute drive;
  for (std::size_t i = 0; i < minutes.size(); ++i) {
    Minute& m = minutes[i];
    if (!m.engine) {
      drive.driven_min = 0;
      continue;
    }
    drive.outside_C = static_cast<double>(drawn.weather.temperature_C[i]);
    drive.cabin_C = static_cast<double>(drawn.cabin_C[i]);
    const supply::EngineMinute limits = supply::engine_minute(engine, drive, output_V);
    m.engine_V = static_cast<float>(limits.alternator_V);
    m.engine_most_A = static_cast<float>(limits.most_A);
    m.engine_most_W = static_cast<float>(limits.most_W);
    ++drive.driven_min;
  }
}

void add_generator(const LegDrawn& drawn, std::span<Minute> minutes) {
  const supply::Generator& set = *drawn.all.generator;
  for (std::size_t i = 0; i < minutes.size(); ++i) {
    const int second = drawn.calendar.second_of_day[i];
    if (minutes[i].mains || (set.quiet && set.quiet->contains(second))) continue;
    const bool scheduled = set.runs && set.runs->contains(second);
    if (scheduled) minutes[i].generator = GeneratorMinute::kScheduled;
    if (!scheduled && set.start_below > 0.0) minutes[i].generator = GeneratorMinute::kMay;
  }
}

int year_of(std::int64_t utc_s) {
  using std::chrono::days;
  const std::chrono::sys_days day{days{sky::floor_divide(utc_s, sky::kSecondsPerDay)}};
  return static_cast<int>(std::chrono::year_month_day{day}.year());
}

std::int64_t year_start_s(int year) {
  const std::chrono::sys_days first{std::chrono::year{year} / 1 / 1};
  return sky::kSecondsPerDay * static_cast<std::int64_t>(first.time_since_epoch().count());
}

/// Wind at 10 m by the minute: of a replayed year, or drawn hour by hour from monthly means.
class WindAt10 {
 public:
  explicit WindAt10(const LegDrawn& drawn) : drawn_(&drawn) {
    const auto& stated = drawn.all.wind->mean_m_s;
    replayed_ = drawn.sky.typical_year.has_value() && !stated.has_value();
    habit_.mean_m_s = stated ? *stated : drawn.sky.climate.wind_m_s;
  }

  double operator()(std::size_t minute) {
    if (replayed_) return static_cast<double>(drawn_->weather.wind_m_s[minute]);
    const std::int64_t at_s = drawn_->leg.start_utc_s + 60 * static_cast<std::int64_t>(minute);
    if (hours_.empty() || at_s >= end_s_) {
      const int year = year_of(at_s);
      start_s_ = year_start_s(year);
      end_s_ = year_start_s(year + 1);
      hours_ = supply::wind_year(habit_, drawn_->leg.place.site, year, drawn_->all.seed, drawn_->season);
    }
    return hours_[static_cast<std::size_t>((at_s - start_s_) / sky::kSecondsPerHour)];
  }

 private:
  const LegDrawn* drawn_;
  bool replayed_ = false;
  supply::WindHabit habit_;
  std::vector<double> hours_;
  std::int64_t start_s_ = 0;
  std::int64_t end_s_ = 0;
};

void add_wind(const LegDrawn& drawn, std::span<Minute> minutes) {
  const supply::WindCharging& wind = *drawn.all.wind;
  WindAt10 at_10(drawn);
  const double kept = wind.count * wind.efficiency;
  for (std::size_t i = 0; i < minutes.size(); ++i) {
    const double hub_m_s = supply::wind_at_height(at_10(i), wind.turbine.height_m);
    const double density_kg_m3 = supply::air_kg_m3(static_cast<double>(drawn.weather.temperature_C[i]),
                                                   drawn.leg.place.site.elevation_m);
    minutes[i].wind_W = static_cast<float>(kept * supply::turbine_W(wind.turbine, hub_m_s, density_kg_m3));
  }
}

void add_water(const LegDrawn& drawn, std::span<Minute> minutes) {
  const supply::WaterCharging& water = *drawn.all.water;
  const auto power_W = static_cast<float>(supply::water_W(water.generator, water.boat_m_s));
  for (std::size_t i = 0; i < minutes.size(); ++i) {
    if (drawn.calendar.driving[i] != 0) minutes[i].water_W = power_W;
  }
}

}  // namespace

void add_driven(const LegDrawn& drawn, std::span<Minute> minutes) {
  if (drawn.all.engine != nullptr) add_engine(drawn, minutes);
  if (drawn.all.generator != nullptr) add_generator(drawn, minutes);
  if (drawn.all.wind != nullptr) add_wind(drawn, minutes);
  if (drawn.all.water != nullptr) add_water(drawn, minutes);
}

}  // namespace voltwright::season
