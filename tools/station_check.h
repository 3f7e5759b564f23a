#pragma once
// Station normals and what of them stands up to bounds and neighbours.
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "engine/sky/weather.h"

namespace voltwright::tools {

using Months = std::array<std::optional<double>, 12>;

struct Station {
  std::string wmo, name, country;
  voltwright::sky::Site site;
  Months temperature_C, range_K, sunshine_h;
  bool has_range = false;
  bool has_sunshine = false;
  bool sunshine_normal = false;
  bool dropped = false;
};

/// Something left out, or kept in spite of a doubt: the whole station, or its sunshine or daily range only.
struct LeftOut {
  std::string wmo, name, part, reason;
  bool kept = false;
};

/// True if every month has a value.
bool complete(const Months& months);

/// Drops what fails on its own and then, one at a time from the worst, what fails beside its neighbours, so
/// that a bad station does not condemn the good ones around it. Then marks what is kept
/// but doubtful: near a limit, or with too few neighbours to compare with. Returns all remarks, by station
/// number.
std::vector<LeftOut> clean(std::vector<Station>& stations);

}  // namespace voltwright::tools
