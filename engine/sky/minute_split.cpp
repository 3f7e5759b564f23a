#include "engine/sky/minute_split.h"

#include <algorithm>

#include "engine/sky/angle.h"
#include "engine/sky/split.h"

namespace voltwright::sky {
namespace {

constexpr float kLowest = static_cast<float>(kLowestCosForBeam);

}  // namespace

void split_minutes(const float* ghi, const float* extraterrestrial, const float* cos_zenith,
                   std::size_t count, float* dni, float* dhi) {
  for (std::size_t i = 0; i < count; ++i) {
    const float kt = clearness_index(ghi[i], extraterrestrial[i], cos_zenith[i]);
    const bool beam = cos_zenith[i] > kLowest;
    const float diffuse = beam ? ghi[i] * erbs_diffuse_fraction(kt) : ghi[i];
    dhi[i] = diffuse;
    dni[i] = (ghi[i] - diffuse) / std::max(cos_zenith[i], kLowest);
  }
}

void split_ramping_minutes(const float* ghi, const float* clear_ghi, const float* extraterrestrial,
                           const float* cos_zenith, float solar_time_h, std::size_t count, float* dni,
                           float* dhi) {
  const EngererWeights& weights = engerer_weights(SplitStep::kMinute);
  constexpr auto kDegreesPerRad = static_cast<float>(degrees(1.0));
  for (std::size_t i = 0; i < count; ++i) {
    const bool beam = cos_zenith[i] > kLowest && ghi[i] > 0.0F;
    const float kt = clearness_index(ghi[i], extraterrestrial[i], cos_zenith[i]);
    const float clear_kt = clearness_index(clear_ghi[i], extraterrestrial[i], cos_zenith[i]);
    const float enhancement = std::max(0.0F, 1.0F - clear_ghi[i] / std::max(ghi[i], 1e-3F));
    const float hour = solar_time_h + static_cast<float>(static_cast<int>(i)) / 60.0F;
    const float zenith_deg = fast_acos(cos_zenith[i]) * kDegreesPerRad;
    const float fraction = engerer_diffuse_fraction(weights, kt, hour, zenith_deg, clear_kt, enhancement);
    const float wanted = ghi[i] * (1.0F - fraction) / std::max(cos_zenith[i], kLowest);
    const float direct = beam ? std::min(wanted, extraterrestrial[i]) : 0.0F;
    dni[i] = direct;
    dhi[i] = beam ? std::max(0.0F, ghi[i] - direct * cos_zenith[i]) : ghi[i];
  }
}

void split_minutes_by_fraction(const float* ghi, const float* cos_zenith, float diffuse_fraction,
                               float largest_beam, std::size_t count, float* dni, float* dhi) {
  for (std::size_t i = 0; i < count; ++i) {
    const bool beam = cos_zenith[i] > kLowest;
    const float wanted = (ghi[i] - ghi[i] * diffuse_fraction) / std::max(cos_zenith[i], kLowest);
    const float direct = beam ? std::min(wanted, largest_beam) : 0.0F;
    dni[i] = direct;
    dhi[i] = beam ? std::max(0.0F, ghi[i] - direct * cos_zenith[i]) : ghi[i];
  }
}

}  // namespace voltwright::sky
