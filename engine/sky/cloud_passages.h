#pragma once
// Minutes of an hour under broken cloud.
#include "engine/base/random.h"

namespace voltwright::sky {

/// Whether an hour of this ratio of irradiance to clear sky counts as broken cloud.
bool is_broken_cloud(double ratio);

/// Lays bright and dark spells over an hour of broken cloud; its energy is kept to 1e-6.
///
/// Bright spells stand at 1.05 of the clear sky (1.15 in the minute beside a cloud, which adds its reflected
/// light), dark ones at 0.35; their lengths are exponential, a bright and a dark one together 14 min on
/// average, shared so that the hour has its mean. All four numbers are assumptions (dark 0.25 to 0.45, pair 8
/// to 30 min); that minutes fall into a bright and a dark group while hours do not is the finding of Suehrcke
/// and McCormick 1988. Where a minute would leave 0.05 to `largest_ratio`, the spells are flattened.
/// `clear_sky`: 60 values, W/m2. `ratio`: of the hour. `irradiance`: 60 values, smooth on entry, each at most
/// `largest_ratio` times its clear sky.
void lay_cloud_passages(const float* clear_sky, double ratio, double largest_ratio,
                        base::RandomStream& random, float* irradiance);

}  // namespace voltwright::sky
