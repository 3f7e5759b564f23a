// The splits that run minute by minute in single precision.
#include "engine/sky/split.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdint>
#include <random>

#include "engine/sky/angle.h"
#include "engine/sky/minute_split.h"

namespace voltwright::sky {
namespace {

struct Minute {
  float ghi = 0.0F;
  float clear = 0.0F;
  float cos_zenith = 0.0F;
};

constexpr float kExtraterrestrial = 1361.1F;

struct Parts {
  float dni = 0.0F;
  float dhi = 0.0F;
};

Parts ramping(const Minute& m, float solar_time_h) {
  Parts out;
  split_ramping_minutes(&m.ghi, &m.clear, &kExtraterrestrial, &m.cos_zenith, solar_time_h, 1, &out.dni,
                        &out.dhi);
  return out;
}

// The same relation in double precision (Bright and Engerer 2019).
TEST(RampingSplit, IsTheRelationOfOneMinute) {
  const Minute m{600.0F, 800.0F, 0.75F};
  const double above = 1361.1 * 0.75;
  const double fraction = engerer_diffuse_fraction(engerer_weights(SplitStep::kMinute), 600.0 / above, 10.5,
                                                   degrees(std::acos(0.75)), 800.0 / above, 0.0);
  EXPECT_NEAR(static_cast<double>(ramping(m, 10.5F).dhi), 600.0 * fraction, 0.01);
}

TEST(RampingSplit, BrighterThanClearSkyIsDiffuse) {
  const Minute clear{800.0F, 800.0F, 0.75F};
  const Minute bright{900.0F, 800.0F, 0.75F};
  EXPECT_GT(ramping(bright, 12.0F).dhi / bright.ghi, ramping(clear, 12.0F).dhi / clear.ghi);
}

TEST(RampingSplit, LowSunAndDarkHaveNoBeam) {
  EXPECT_EQ(ramping({30.0F, 40.0F, 0.05F}, 6.0F).dni, 0.0F);
  EXPECT_EQ(ramping({30.0F, 40.0F, 0.05F}, 6.0F).dhi, 30.0F);
  EXPECT_EQ(ramping({0.0F, 0.0F, -0.2F}, 0.0F).dni, 0.0F);
  EXPECT_EQ(ramping({0.0F, 0.0F, -0.2F}, 0.0F).dhi, 0.0F);
}

TEST(RampingSplit, KeepsTheWholeAndItsBounds) {
  const bool holds = rc::check("beam and diffuse make up the global irradiance", [] {
    std::mt19937_64 random(*rc::gen::arbitrary<std::uint64_t>());
    const auto between = [&](double low, double high) {
      return std::uniform_real_distribution<double>(low, high)(random);
    };
    const auto cos_zenith = static_cast<float>(between(0.0, 1.0));
    const auto clear = static_cast<float>(between(0.3, 0.85)) * kExtraterrestrial * cos_zenith;
    const Minute m{static_cast<float>(between(0.0, 1.3)) * clear, clear, cos_zenith};
    const Parts parts = ramping(m, static_cast<float>(between(0.0, 24.0)));
    RC_ASSERT(parts.dni >= 0.0F);
    RC_ASSERT(parts.dni <= kExtraterrestrial);
    RC_ASSERT(parts.dhi >= 0.0F);
    RC_ASSERT(std::abs(parts.dhi + parts.dni * m.cos_zenith - m.ghi) <= 1e-5F * m.ghi + 1e-4F);
  });
  EXPECT_TRUE(holds);
}

}  // namespace
}  // namespace voltwright::sky
