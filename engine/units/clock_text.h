#pragma once
// Times of day as people type them.
#include <string_view>

#include "engine/base/result.h"
#include "engine/units/day_window.h"

namespace voltwright::units {

/// "18:00" or "18:00:30" as seconds after midnight; "24:00" is allowed. 0 to 86400.
base::Result<int> parse_clock(std::string_view text);

/// "22:00-06:00" (over midnight), or "all day".
base::Result<DayWindow> parse_day_window(std::string_view text);

}  // namespace voltwright::units
