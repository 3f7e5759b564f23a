#pragma once
#include <string>
#include <string_view>

#include "engine/sky/sun.h"

namespace voltwright::files {

/// "59.91° N, 10.75° E"; `between` stands between the two.
std::string position_text(const sky::Site& site, std::string_view between = ", ");

}  // namespace voltwright::files
