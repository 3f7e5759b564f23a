#pragma once
#include <cstdint>
#include <string>

namespace voltwright::files {

/// "2026-11-25T06:30Z" for UTC seconds since 1970, to the minute.
std::string utc_text(std::int64_t utc_s);

}  // namespace voltwright::files
