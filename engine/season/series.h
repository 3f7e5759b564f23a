#pragma once
// The minutes that all banks of one draw share: sky, temperatures, demand and sources.
#include <optional>
#include <span>
#include <vector>

#include "engine/bank/location.h"
#include "engine/demand/load.h"
#include "engine/journey/calendar.h"
#include "engine/season/system.h"
#include "engine/sky/clearness.h"
#include "engine/sky/sun.h"
#include "engine/sky/weather.h"
#include "engine/supply/source.h"

namespace voltwright::season {

/// Sky of a leg: climate normals, or a typical year to replay.
struct LegSky {
  sky::MonthlyClimate climate;
  std::optional<sky::MonthlyClimate> end_climate;  // where the leg's driving leads; none = the same
  std::optional<sky::HourlyWeather> typical_year;
};

/// What the series are made from. The spans must outlive the maker.
struct Circumstances {
  std::span<const journey::Leg> legs;
  std::span<const LegSky> skies;  // one a leg
  const sky::ClearnessMatrices* matrices = nullptr;
  sky::DailyModel daily_model = sky::DailyModel::kMatrices;
  sky::DiffuseModel diffuse_model = sky::DiffuseModel::kErbs;
  std::span<const demand::Load> loads;
  const demand::Inverter* inverter = nullptr;  // none = no alternating current
  std::span<const supply::SolarArray> arrays;
  bool has_engine = false;
  double engine_low_share = 0.0;                   // of the driving time, with a controlled alternator
  const supply::EngineCharging* engine = nullptr;  // for what changes from minute to minute
  const supply::Generator* generator = nullptr;
  const supply::WindCharging* wind = nullptr;
  const supply::WaterCharging* water = nullptr;
  bool has_mains = false;
  bank::Surroundings surroundings;
  double system_V = 12.0;
  std::uint64_t seed = 1;
};

struct Series {
  std::int64_t start_utc_s = 0;
  std::vector<Minute> minutes;
  std::vector<float> outside_C;
};

/// Makes the series of any season; what does not change from season to season is worked out once.
class SeriesMaker {
 public:
  explicit SeriesMaker(const Circumstances& circumstances);

  /// Depends on (seed, season) alone.
  Series draw(std::uint64_t season) const;

  std::size_t minutes() const;

 private:
  Circumstances circumstances_;
  /// Of a stretch that leads to another place.
  struct Way {
    std::vector<float> share;
    sky::SunMinutes start_sun, end_sun;
    sky::Site end_site;
  };
  sky::WeatherMinutes weather(std::size_t stretch, std::uint64_t season) const;

  // One entry a stretch: neighbouring legs at the same place, drawn together so that cutting a leg in two
  // changes nothing.
  std::vector<std::size_t> first_leg_;
  std::vector<sky::SunMinutes> suns_;
  std::vector<journey::Calendar> calendars_;
  std::vector<std::optional<Way>> ways_;
};

}  // namespace voltwright::season
