#pragma once
#include <cstddef>
#include <vector>

namespace voltwright::files {

/// How far the clock of a year of radiation is off, in hours: mean hour of the day in solar time, weighted
/// with the radiation, minus 12. Hour i begins `phase_h` + i hours after the start of the year in UTC. Over a
/// whole year the equation of time is left out because it averages to nearly zero; of fewer `hours` from
/// `first_hour` on (round the end of the year) it is taken into account. Positive: the radiation comes too
/// late. 0 if there is no radiation.
double solar_noon_offset_h(const std::vector<double>& ghi_utc, double phase_h, double longitude_deg,
                           std::size_t first_hour, std::size_t hours);

}  // namespace voltwright::files
