// Broken cloud within the hour: energy, limits, two groups of minutes.
#include "engine/sky/cloud_passages.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

namespace voltwright::sky {
namespace {

constexpr float kLimit = 1.29F;

/// An hour of clear sky that rises, as in the morning.
std::array<float, 60> morning() {
  std::array<float, 60> clear{};
  for (std::size_t i = 0; i < clear.size(); ++i) clear[i] = 200.0F + 3.0F * static_cast<float>(i);
  return clear;
}

TEST(CloudPassages, KeepEnergyAndLimits) {
  // Identities: the hour's energy to 1e-6, no minute above the limit or below nothing.
  const std::array<float, 60> clear = morning();
  base::RandomStream random(1);
  for (int hour = 0; hour < 5000; ++hour) {
    const double ratio = 0.3 + 0.8 * random.uniform();
    std::array<float, 60> light{};
    double before = 0.0;
    for (std::size_t i = 0; i < light.size(); ++i) {
      light[i] = static_cast<float>(ratio) * clear[i];
      before += static_cast<double>(light[i]);
    }
    lay_cloud_passages(clear.data(), ratio, static_cast<double>(kLimit), random, light.data());
    double after = 0.0;
    for (std::size_t i = 0; i < light.size(); ++i) {
      ASSERT_LE(light[i], kLimit * clear[i] * 1.000001F) << ratio;
      ASSERT_GE(light[i], 0.0F) << ratio;
      after += static_cast<double>(light[i]);
    }
    ASSERT_NEAR(after / before, 1.0, 1e-6) << ratio;
  }
}

TEST(CloudPassages, LeaveClearAndOvercastHoursAlone) {
  const std::array<float, 60> clear = morning();
  base::RandomStream random(2);
  for (const double ratio : {0.1, 0.44, 0.96, 1.05}) {
    std::array<float, 60> light{};
    for (std::size_t i = 0; i < light.size(); ++i) light[i] = static_cast<float>(ratio) * clear[i];
    const std::array<float, 60> before = light;
    lay_cloud_passages(clear.data(), ratio, static_cast<double>(kLimit), random, light.data());
    EXPECT_EQ(light, before) << ratio;
  }
}

TEST(CloudPassages, MinutesFallIntoTwoGroups) {
  // Suehrcke and McCormick 1988 (finding read in secondary literature): minutes gather near a bright and a
  // dark value, with few between. Here at a ratio of 0.7, the middle of the range.
  const std::array<float, 60> clear = morning();
  int dark = 0;
  int middle = 0;
  int bright = 0;
  int jumps = 0;
  constexpr int kHours = 2000;
  for (std::uint64_t hour = 0; hour < kHours; ++hour) {
    base::RandomStream random(3, hour);
    std::array<float, 60> light{};
    for (std::size_t i = 0; i < light.size(); ++i) light[i] = 0.7F * clear[i];
    lay_cloud_passages(clear.data(), 0.7, static_cast<double>(kLimit), random, light.data());
    for (std::size_t i = 0; i < light.size(); ++i) {
      const float ratio = light[i] / clear[i];
      dark += ratio < 0.55F ? 1 : 0;
      bright += ratio > 0.85F ? 1 : 0;
      middle += ratio >= 0.55F && ratio <= 0.85F ? 1 : 0;
      if (i > 0) jumps += std::abs(ratio - light[i - 1] / clear[i - 1]) > 0.3F ? 1 : 0;
    }
  }
  EXPECT_GT(dark, 2 * middle);
  EXPECT_GT(bright, 2 * middle);
  // Two edges each 14 min (our assumption) make some 8 an hour; about half of them jump by more than 0.3
  // within one minute, the others are spread over two.
  EXPECT_GT(jumps, 2 * kHours);
  EXPECT_LT(jumps, 10 * kHours);
}

}  // namespace
}  // namespace voltwright::sky
