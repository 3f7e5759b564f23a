#pragma once
// Civil time of places from the time-zone database of the system.
#include <cstdint>
#include <string>

#include "engine/base/result.h"
#include "engine/journey/leg.h"

namespace voltwright::files {

/// Offsets from UTC that hold in a zone ("Europe/Madrid", "Etc/GMT+3") between two instants. An unknown zone
/// is a problem that offers near names. Spans of up to 20 years are meant; `to_utc_s` must not lie before
/// `from_utc_s`.
base::Result<journey::CivilClock> civil_clock(const std::string& zone, std::int64_t from_utc_s,
                                              std::int64_t to_utc_s);

/// UTC second at which a day begins in a zone. Where the clock skips midnight, the day begins at the first
/// instant that exists; where midnight comes twice, at the first of them. Years 1900 to 2200.
base::Result<std::int64_t> local_midnight_utc(const std::string& zone, int year, int month, int day);

}  // namespace voltwright::files
