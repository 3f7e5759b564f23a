#pragma once
// Minutes of an hour from its mean irradiance.
#include <cstddef>

namespace voltwright::sky {

/// Writes 60 minutes of global irradiance whose mean is the hour's. The ratio of irradiance to clear sky runs
/// in straight lines from the mean with the hour before, through the middle, to the mean with the hour after;
/// the middle is set so that the hour's energy is kept to 1e-6. Where the ratio would leave 0 to
/// `largest_ratio`, the whole course is drawn towards the hour's own ratio. `clear_sky`: 60 values, W/m2, at
/// least one above 0. `before`, `ratio`, `after`: hourly ratios, the hour's own within 0 to `largest_ratio`.
void shape_hour(const float* clear_sky, double before, double ratio, double after, double largest_ratio,
                float* irradiance);

}  // namespace voltwright::sky
