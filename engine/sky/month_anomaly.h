#pragma once
// How a month's sky departs from the normal in one year.
#include <cstdint>

namespace voltwright::sky {

/// Standard deviation, in parts of the month's clearness, of what a whole month has in common beyond the
/// chance of its days. Assumption: 0.06 up to a clearness of 0.45, falling to 0.02 from 0.65 (range 0 to
/// 0.08): sunny climates vary less from year to year (finding of Ineichen 2011).
double month_anomaly_deviation(double clearness);

/// Factor on the month's mean clearness, 1 on average, Gaussian and cut off at 2.5 deviations. Depends on
/// the arguments alone: all legs of one draw share a month's anomaly, as bad weather holds over a region.
/// `days_since_1970`: any day of the month.
double month_anomaly(double clearness, std::int64_t days_since_1970, std::uint64_t seed,
                     std::uint64_t season);

}  // namespace voltwright::sky
