#pragma once
// A leg is a stay at a place or a drive that starts there, with its dates, driving hours and shore power.
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "engine/sky/climate_override.h"
#include "engine/sky/weather.h"
#include "engine/units/day_window.h"
#include "engine/units/quantity.h"

namespace voltwright::journey {

/// Civil time of a place: the offset from UTC that holds from an instant on.
struct OffsetChange {
  std::int64_t utc_s = 0;
  int offset_s = 0;
};

/// Converts UTC to local civil seconds of a place. The first change holds for all earlier instants too.
class CivilClock {
 public:
  explicit CivilClock(std::vector<OffsetChange> changes = {{0, 0}}) : changes_(std::move(changes)) {}
  int offset_s(std::int64_t utc_s) const;
  std::int64_t local_s(std::int64_t utc_s) const { return utc_s + offset_s(utc_s); }

 private:
  std::vector<OffsetChange> changes_;
};

struct Place {
  std::string name;
  std::string zone;  // IANA
  sky::Site site;
};

struct Leg {
  Place place;
  std::optional<Place>
      end_place;  // where the leg's driving has led to when it is done; none = back at `place`
  CivilClock clock;
  std::int64_t start_utc_s = 0;  // local midnight of the first day
  std::int64_t end_utc_s = 0;    // local midnight after the last day
  units::Duration drive_per_day;
  int drive_from_s = 9 * 3600;                  // local time at which the day's drive starts
  std::optional<units::DayWindow> shore_power;  // hours of the day with mains; none = no mains
  std::optional<double>
      facing_deg;                // where the front points, from north over east; none = another way each day
  bool occupied = true;          // false: only loads that run always are on
  std::string weather_file;      // typical-year file to use instead of made weather; empty = none
  sky::ClimateOverride climate;  // monthly figures in place of those of the climate tables
};

}  // namespace voltwright::journey
