#pragma once
#include <vector>

namespace voltwright::files {

/// How far the clock of a year of radiation is off, in hours: mean hour of the day weighted with the
/// radiation, minus the mean solar noon 12 - (longitude - 15 zone) / 15. The equation of time is left out
/// because it averages to nearly zero over a year. `ghi_local` holds 8760 hours, hour i of the day in local
/// standard time covering (i, i + 1). Positive: the radiation comes too late. 0 if there is no radiation.
double solar_noon_offset_h(const std::vector<double>& ghi_local, double longitude_deg, double zone_h);

}  // namespace voltwright::files
