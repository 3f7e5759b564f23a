#pragma once
// GPX tracks as recorders write them. Format notes: docs/formats/gpx.md.
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"

namespace voltwright::files {

struct TrackPoint {
  int line = 0;  // of the file, from 1
  std::int64_t utc_s = 0;
  double latitude_deg = 0.0;   // -90 to 90, north positive
  double longitude_deg = 0.0;  // -180 to 180, east positive
  std::optional<double> elevation_m;
};

struct Track {
  std::vector<TrackPoint> points;  // at least two, time rising strictly
  base::Problems warnings;
};

/// Reads the track points of a GPX text of at most 64 MiB; `name` is shown in problems. Segments are put in
/// order of time; within a segment time must not run backwards, and segments must not overlap. Points without
/// a time are left out and counted in a warning. A DOCTYPE is refused, so that no entity is ever expanded.
/// Problems come all at once (25 at most), each with its line. Source: schema of GPX 1.1.
base::Result<Track> read_gpx(std::string_view text, const std::string& name);

}  // namespace voltwright::files
