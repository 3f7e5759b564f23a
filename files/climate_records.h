#pragma once
// Rows of the climate tables. Texts are views into the tables packed into the program.
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

#include "engine/sky/weather.h"
#include "files/climate.h"

namespace voltwright::files {

using Months = std::array<double, 12>;

// Shared by the averages on land and at sea; the rules stand in docs/method/climate.md.
inline constexpr std::size_t kMostAveraged = 4;
inline constexpr double kSoftening_km = 10.0;
inline constexpr double kSeaCellReach_km = 360.0;
inline constexpr double kSeaDailyRange_K = 3.0;
inline constexpr double kLandWind_m_s = 2.5;

struct ClimateTable::Station {
  std::string_view wmo;
  std::string_view name;
  sky::Site site;
  Months temperature_C{};
  std::optional<Months> daily_range_K;
  std::optional<Months> sunshine_h;  // per month; 0 where polar night leaves none
};

struct ClimateTable::SeaCell {
  sky::Site site;
  Months net_solar_W_m2{};
  Months temperature_C{};
  Months wind_m_s{};
};

/// A box of an enclosed sea; a sea has several of the same name.
struct ClimateTable::EnclosedSea {
  std::string_view name;
  double south_deg = 0.0;
  double north_deg = 0.0;
  double west_deg = 0.0;
  double east_deg = 0.0;
  double surface_m = 0.0;

  bool holds(const sky::Site& site) const {
    return site.latitude_deg >= south_deg && site.latitude_deg <= north_deg &&
           site.longitude_deg >= west_deg && site.longitude_deg <= east_deg;
  }
};

struct ClimateTable::TurbiditySite {
  std::string_view name;
  sky::Site site;
  Months linke{};
};

/// A stretch of the world with common turbidity, used where no turbidity site is near. First match wins.
struct ClimateTable::TurbidityGroup {
  std::string_view name;
  bool at_sea = false;
  double south_deg = -90.0;
  double north_deg = 90.0;
  double west_deg = -180.0;
  double east_deg = 180.0;
  double lowest_m = -1000.0;
  Months linke{};
};

/// A station and how far it is from the point asked for.
struct ClimateTable::Near {
  const Station* station = nullptr;
  double distance_km = 0.0;
  double apart_km = 0.0;   // distance, with 400 m of height counted like 150 km
  bool preferred = false;  // within 150 km and 400 m of height
};

/// A climate while it is put together, and what it rests on.
struct ClimateTable::Draft {
  sky::MonthlyClimate climate;
  std::vector<ClimateSource> sources;
};

/// Fills months without a value on a straight line between the months before and after, around the year.
/// With no value at all, every month is `otherwise`.
Months fill_months(const std::array<std::optional<double>, 12>& months, double otherwise);

}  // namespace voltwright::files
