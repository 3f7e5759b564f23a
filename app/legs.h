#pragma once
// The legs of a journey that a recorded track holds.
#include <string>

#include "engine/base/result.h"
#include "files/track_legs.h"

namespace voltwright::app {

/// Reads the GPX file at `path` and finds its legs.
base::Result<files::TrackJourney> legs_of_track(const std::string& path);

/// Format: docs/formats/answer.md, version kAnswerFormat.
std::string to_json(const files::TrackJourney& journey);

}  // namespace voltwright::app
