#pragma once
// Where a track stays and when it drives.
#include <cstddef>
#include <vector>

#include "engine/sky/weather.h"
#include "files/gpx.h"

namespace voltwright::files {

/// Points that keep within 1 km of the first of them for more than 2 h; their mean place.
struct Stay {
  sky::Site site;
  std::int64_t from_utc_s = 0;
  std::int64_t to_utc_s = 0;
};

struct Drive {
  std::int64_t from_utc_s = 0;
  std::int64_t to_utc_s = 0;
  double length_km = 0.0;
};

struct Moves {
  std::vector<TrackPoint> points;  // thinned to one a minute; the last is always kept
  std::vector<Stay> stays;         // in order of time, apart from each other
  std::vector<Drive> drives;       // outside the stays, faster than 5 km/h; in order of time
  std::size_t gaps = 0;            // longer than 10 min, in which the place changed by more than 1 km
};

/// Stays and drives of a track of at least two points in order of time. Over a gap the driving is not known:
/// it is taken to begin when the gap begins and to go at 60 km/h over 1.3 times the straight line, but never
/// beyond the end of the gap (assumption).
Moves moves_of(const std::vector<TrackPoint>& points);

/// Where the track is at an instant: at the stay around it, else on the straight line between its points;
/// before the first and after the last point, there. Height 0 where the track has none.
sky::Site site_at(const Moves& moves, std::int64_t utc_s);

}  // namespace voltwright::files
