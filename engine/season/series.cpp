#include "engine/season/series.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/demand/minutes.h"
#include "engine/journey/moving.h"
#include "engine/season/driven_minutes.h"
#include "engine/season/heading.h"
#include "engine/season/sun_minutes.h"
#include "engine/season/surroundings.h"
#include "engine/sky/made_weather.h"
#include "engine/sky/replayed_weather.h"

namespace voltwright::season {

namespace {

/// Battery voltage around which the curve of a directly coupled array is taken as straight: 13.5 V for each
/// 12 V of the system (assumption).
constexpr double kTypicalChargeOver12V = 13.5 / 12.0;

/// A controlled alternator changes its voltage in turns of this length (assumption: it follows load and
/// slope).
constexpr int kAlternatorPeriod_min = 10;

void add_far(const std::vector<demand::FarMinutes>& far, std::size_t minute, Minute& m) {
  for (std::size_t k = 0; k < far.size() && k < kMostFarLoads; ++k) {
    m.far_W[k] = far[k].power_W[minute];
    m.essential_far_W[k] = far[k].essential_W[minute];
    const auto surge_W = static_cast<double>(far[k].surge_W[minute]);
    if (surge_W > m.surge_direct_W) {
      m.surge_direct_W = surge_W;
      m.surge_far = static_cast<int>(k);
    }
  }
}

/// True if one leg goes on where the other has ended: then one draw serves both.
bool drawn_together(const journey::Leg& before, const journey::Leg& leg) {
  const sky::Site& a = before.place.site;
  const sky::Site& b = leg.place.site;
  return a.latitude_deg == b.latitude_deg && a.longitude_deg == b.longitude_deg &&
         a.elevation_m == b.elevation_m && before.place.zone == leg.place.zone &&
         before.end_utc_s == leg.start_utc_s && before.occupied == leg.occupied &&
         before.weather_file == leg.weather_file && before.climate == leg.climate &&
         before.facing_deg == leg.facing_deg && !before.end_place.has_value() && !leg.end_place.has_value();
}

void append(journey::Calendar& to, const journey::Calendar& more) {
  to.second_of_day.insert(to.second_of_day.end(), more.second_of_day.begin(), more.second_of_day.end());
  to.day.insert(to.day.end(), more.day.begin(), more.day.end());
  to.driving.insert(to.driving.end(), more.driving.begin(), more.driving.end());
  to.shore.insert(to.shore.end(), more.shore.begin(), more.shore.end());
}

}  // namespace

SeriesMaker::SeriesMaker(const Circumstances& circumstances) : circumstances_(circumstances) {
  const std::span<const journey::Leg> legs = circumstances_.legs;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    journey::Calendar calendar = journey::calendar_of(legs[i]);
    if (i > 0 && drawn_together(legs[i - 1], legs[i])) {
      append(calendars_.back(), calendar);
    } else {
      first_leg_.push_back(i);
      calendars_.push_back(std::move(calendar));
    }
  }
  for (std::size_t k = 0; k < first_leg_.size(); ++k) {
    const journey::Leg& leg = legs[first_leg_[k]];
    const auto sun_at = [&](const sky::Site& site) {
      return sky::sun_minutes(site, leg.start_utc_s, calendars_[k].day.size());
    };
    if (leg.end_place.has_value()) {
      Way way{journey::driven_share(calendars_[k]), sun_at(leg.place.site), sun_at(leg.end_place->site),
              leg.end_place->site};
      suns_.push_back(journey::moving_sun(leg, way.share));
      ways_.emplace_back(std::move(way));
    } else {
      suns_.push_back(sun_at(leg.place.site));
      ways_.emplace_back();
    }
  }
}

sky::WeatherMinutes SeriesMaker::weather(std::size_t stretch, std::uint64_t season) const {
  const Circumstances& c = circumstances_;
  const journey::Leg& leg = c.legs[first_leg_[stretch]];
  const LegSky& leg_sky = c.skies[first_leg_[stretch]];
  const auto at = [&](const sky::Site& site, const sky::MonthlyClimate& climate, const sky::SunMinutes& sun) {
    return leg_sky.typical_year.has_value()
               ? sky::replay_weather(*leg_sky.typical_year, sun)
               : sky::make_weather(site, climate, *c.matrices, sun, c.seed, season, stretch, c.daily_model,
                                   c.diffuse_model);
  };
  const std::optional<Way>& way = ways_[stretch];
  if (!way.has_value()) return at(leg.place.site, leg_sky.climate, suns_[stretch]);
  sky::WeatherMinutes mixed = at(leg.place.site, leg_sky.climate, way->start_sun);
  const sky::MonthlyClimate& end_climate =
      leg_sky.end_climate.has_value() ? *leg_sky.end_climate : leg_sky.climate;
  journey::mix_weather(mixed, at(way->end_site, end_climate, way->end_sun), way->share, suns_[stretch]);
  return mixed;
}

std::size_t SeriesMaker::minutes() const {
  std::size_t sum = 0;
  for (const auto& calendar : calendars_) sum += calendar.day.size();
  return sum;
}

Series SeriesMaker::draw(std::uint64_t season) const {
  const Circumstances& c = circumstances_;
  Series series;
  series.minutes.resize(minutes());
  series.outside_C.reserve(series.minutes.size());
  if (!c.legs.empty()) series.start_utc_s = c.legs.front().start_utc_s;
  std::size_t begin = 0;
  for (std::size_t k = 0; k < first_leg_.size(); ++k) {
    const journey::Leg& leg = c.legs[first_leg_[k]];
    const journey::Calendar& calendar = calendars_[k];
    const sky::WeatherMinutes weather = this->weather(k, season);
    const std::vector<float> cabin_C =
        cabin_temperature_C(c.surroundings, weather.temperature_C, leg.occupied);
    const std::vector<float> bank_C =
        bank_surroundings_C(c.surroundings, weather.temperature_C, cabin_C, calendar.driving);
    const demand::Timeline timeline{calendar.second_of_day, calendar.day, calendar.driving, cabin_C,
                                    leg.occupied};
    const demand::DemandMinutes demand =
        demand::demand_minutes(c.loads, c.inverter, timeline, c.seed + 0x51ed * (k + 1), season);
    const auto low_min = std::lround(c.engine_low_share * kAlternatorPeriod_min);
    const std::span<Minute> minutes(series.minutes.data() + begin, calendar.day.size());
    int driven_min = 0;
    for (std::size_t i = 0; i < minutes.size(); ++i) {
      Minute& m = minutes[i];
      m.direct_W = static_cast<double>(demand.direct_W[i]);
      m.inverter_W = static_cast<double>(demand.inverter_W[i]);
      m.essential_direct_W = static_cast<double>(demand.essential_direct_W[i]);
      m.essential_inverter_W = static_cast<double>(demand.essential_inverter_W[i]);
      m.surge_direct_W = static_cast<double>(demand.surge_direct_W[i]);
      m.surge_inverter_W = static_cast<double>(demand.surge_inverter_W[i]);
      m.engine = c.has_engine && calendar.driving[i] != 0;
      m.engine_low = m.engine && driven_min % kAlternatorPeriod_min < low_min;
      driven_min = m.engine ? driven_min + 1 : 0;
      add_far(demand.far, i, m);
      m.mains = c.has_mains && calendar.shore[i] != 0;
      m.surroundings_C = static_cast<double>(bank_C[i]);
    }
    const Heading heading{leg.facing_deg, calendar.day, c.seed, season};
    for (const supply::SolarArray& array : c.arrays) {
      add_sun(array, array_minutes(array, suns_[k], weather, heading), weather.start_utc_s,
              c.system_V * kTypicalChargeOver12V, minutes);
    }
    add_driven({c, c.skies[first_leg_[k]], leg, calendar, weather, cabin_C, season}, minutes);
    series.outside_C.insert(series.outside_C.end(), weather.temperature_C.begin(),
                            weather.temperature_C.end());
    begin += minutes.size();
  }
  return series;
}

}  // namespace voltwright::season
