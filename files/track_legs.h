#pragma once
// The legs of a journey found in a recorded track.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "files/gazetteer.h"
#include "files/gpx.h"

namespace voltwright::files {

/// Days in a row that are alike: the same place at both ends of the day, the same driving; or one day that
/// leads from a place to another.
struct TrackLeg {
  std::string label;  // nearest town within 25 km, else degrees
  std::string zone;   // IANA
  sky::Site site;
  std::optional<sky::Site> to;  // where the day ends, if more than 2 km away
  std::string to_label;
  int days = 1;
  int drive_min = 0;     // driving a day, in steps of 5 min
  int drive_from_s = 0;  // local time of day, in steps of 5 min
};

struct TrackJourney {
  int first_day = 0;  // local days since 1970
  std::vector<TrackLeg> legs;
  std::size_t stays = 0;
  std::size_t drives = 0;
  double driven_km = 0.0;
  double driven_h = 0.0;
  base::Problems warnings;  // those of the track too
};

/// Cuts a track into local days and these into legs. A day is that of the place at its start; its driving is
/// gathered into one piece that begins with the day's first drive. Days under 5 min of driving do not drive.
/// A track of more than 3653 days is a problem; `name` is shown in problems.
base::Result<TrackJourney> track_journey(const Track& track, const std::string& name,
                                         const Gazetteer& gazetteer);

/// The legs as [[leg]] sections of a plan, docs/formats/plan.md.
std::string legs_toml(const TrackJourney& journey);

}  // namespace voltwright::files
