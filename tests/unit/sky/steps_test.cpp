// The small steps between a day and its minutes, and the fast functions in them.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "engine/sky/angle.h"
#include "engine/sky/atmosphere.h"
#include "engine/sky/clear_sky.h"
#include "engine/sky/hour_shape.h"
#include "engine/sky/hourly_clearness.h"
#include "engine/sky/sun.h"
#include "engine/sky/transposition.h"

namespace voltwright::sky {
namespace {

/// A number from `low` to `high`, over the whole range from the first case on.
double between(double low, double high) {
  return low + (high - low) * *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001)) / 1000000.0;
}

TEST(FastFunctions, StayWithinTheirError) {
  for (int i = -1000; i <= 1000; ++i) {
    const double x = i / 1000.0;
    if (i >= 0) {
      EXPECT_NEAR(static_cast<double>(fast_acos(static_cast<float>(x))), std::acos(x), 2e-6);
    }
    const double turn = 12.5 * x;
    EXPECT_NEAR(static_cast<double>(fast_cos(static_cast<float>(turn))), std::cos(turn), 3e-6);
    const double angle = 3.14159 * x;
    EXPECT_NEAR(static_cast<double>(
                    fast_atan2(static_cast<float>(std::sin(angle)), static_cast<float>(std::cos(angle)))),
                angle, 1e-6);
  }
  EXPECT_EQ(fast_atan2(0.0F, 0.0F), 0.0F);
}

TEST(SunMinutes, AgreesWithTheSinglePosition) {
  const bool holds = rc::check("minutes equal instants within 0.001 deg", [] {
    const Site site{between(-90.0, 90.0), between(-180.0, 180.0), 0.0};
    // 2020 to 2050, any second
    const std::int64_t start = 1577836800 + static_cast<std::int64_t>(between(0.0, 9.4e8));
    const SunMinutes sun = sun_minutes(site, start, 200);
    for (const std::size_t i : {std::size_t{0}, std::size_t{61}, std::size_t{199}}) {
      const SunPosition at =
          sun_position(static_cast<double>(start + static_cast<std::int64_t>(i) * 60 + 30), site);
      RC_ASSERT(std::abs(static_cast<double>(sun.cos_zenith[i]) - std::cos(radians(at.zenith_deg))) < 2e-6);
      const double turn = std::remainder(static_cast<double>(sun.azimuth_rad[i]) - radians(at.azimuth_deg),
                                         2.0 * std::numbers::pi);
      RC_ASSERT(std::abs(turn * std::sin(radians(at.zenith_deg))) < 2e-5);
      RC_ASSERT(sun.azimuth_rad[i] >= 0.0F && sun.azimuth_rad[i] < 6.2832F);
      RC_ASSERT(at.zenith_deg >= 0.0 && at.zenith_deg <= 180.0);
      RC_ASSERT(at.azimuth_deg >= 0.0 && at.azimuth_deg < 360.0);
    }
  });
  EXPECT_TRUE(holds);
}

TEST(SunMinutes, DoesNotDependOnWhereTheStayStarts) {
  const Site site{47.0, 8.0, 400.0};
  const SunMinutes all = sun_minutes(site, 1767225600, 4000);
  const SunMinutes later = sun_minutes(site, 1767225600 + 1234 * 60, 2000);
  for (std::size_t i = 0; i < later.cos_zenith.size(); ++i) {
    ASSERT_EQ(all.cos_zenith[1234 + i], later.cos_zenith[i]);
    ASSERT_EQ(all.azimuth_rad[1234 + i], later.azimuth_rad[i]);
    ASSERT_EQ(all.extraterrestrial_W_m2[1234 + i], later.extraterrestrial_W_m2[i]);
  }
}

TEST(ClearSkyTable, FollowsTheModel) {
  const AirMassTable masses;
  for (const double elevation : {0.0, 1800.0}) {
    ClearSkyTable table(masses, elevation);
    for (const double turbidity : {2.0, 4.5, 7.5}) {
      table.set_turbidity(turbidity);
      for (double zenith = 0.0; zenith < 90.0; zenith += 0.37) {
        const double c = std::cos(radians(zenith));
        const double lifted = 90.0 - zenith + refraction_deg(90.0 - zenith, 1013.25, 15.0);
        const double mass = sky::air_mass(90.0 - std::min(90.0, lifted)) * pressure_Pa(elevation) / 101325.0;
        const double exact = ineichen_perez(c, mass, turbidity, elevation, 1361.0).ghi_W_m2;
        EXPECT_NEAR(1361.0 * static_cast<double>(table.fraction(static_cast<float>(c))), exact, 0.1)
            << zenith;
      }
    }
  }
}

TEST(HourShape, KeepsTheEnergyOfTheHour) {
  const bool holds = rc::check("60 minutes average to the hour", [] {
    std::array<float, 60> clear{};
    const double from = between(-0.2, 0.9);
    const double to = between(-0.2, 0.9);
    double sum = 0.0;
    for (std::size_t i = 0; i < 60; ++i) {
      const double c = std::max(0.0, from + (to - from) * (static_cast<double>(i) + 0.5) / 60.0);
      clear[i] = static_cast<float>(1000.0 * c * c);
      sum += static_cast<double>(clear[i]);
    }
    RC_PRE(sum > 0.0);
    const double ratio = between(0.0, 1.1);
    std::array<float, 60> made{};
    shape_hour(clear.data(), between(0.0, 1.1), ratio, between(0.0, 1.1), 1.29, made.data());
    double energy = 0.0;
    for (std::size_t i = 0; i < 60; ++i) {
      RC_ASSERT(made[i] >= 0.0F);
      RC_ASSERT(made[i] <= 1.3F * clear[i]);
      energy += static_cast<double>(made[i]);
    }
    RC_ASSERT(std::abs(energy - ratio * sum) <= 1e-6 * sum);
  });
  EXPECT_TRUE(holds);
}

TEST(HoursOfADay, SumToTheDayWithinTheirLimits) {
  const bool holds = rc::check("scaled hours sum to the day", [] {
    DayHours height{};
    DayHours above{};
    DayHours limit{};
    const double noon_height = between(0.1, 1.0);
    for (std::size_t h = 6; h < 18; ++h) {
      height[h] = noon_height * std::sin(std::numbers::pi * (static_cast<double>(h) - 5.5) / 12.0);
      above[h] = 1361.0 * height[h];
      limit[h] = 1.1 * haurwitz_W_m2(height[h]);
    }
    const double most = std::accumulate(limit.begin(), limit.end(), 0.0);
    const double total = std::accumulate(above.begin(), above.end(), 0.0);
    const double day = between(0.02, 0.98 * most / total);
    base::RandomStream random(static_cast<std::uint64_t>(*rc::gen::inRange(0, 1 << 30)));
    DayHours hours = hourly_clearness(day, height, random);
    for (std::size_t h = 0; h < 24; ++h) {
      RC_ASSERT(hours[h] >= 0.0 && hours[h] <= 0.88);
      hours[h] *= above[h];
    }
    hours = scale_within_limits(hours, limit, day * total);
    for (std::size_t h = 0; h < 24; ++h) RC_ASSERT(hours[h] >= 0.0 && hours[h] <= limit[h]);
    const double made = std::accumulate(hours.begin(), hours.end(), 0.0);
    RC_ASSERT(std::abs(made - day * total) <= 1e-6 * day * total);
  });
  EXPECT_TRUE(holds);
}

TEST(Transposition, LevelPlaneSeesTheHorizontal) {
  const bool holds = rc::check("tilt 0 returns the global irradiance", [] {
    const PlaneInstant instant{between(0.0, 89.9), between(0.0, 360.0),  1361.0,
                               between(1.0, 35.0), between(0.0, 1000.0), between(0.0, 600.0)};
    const double ghi = instant.dhi_W_m2 + instant.dni_W_m2 * std::cos(radians(instant.zenith_deg));
    for (const SkyModel model : {SkyModel::kIsotropic, SkyModel::kHayDavies, SkyModel::kPerez}) {
      const PlaneIrradiance plane = on_plane(model, instant, 0.0, between(0.0, 360.0), between(0.0, 0.9));
      RC_ASSERT(std::abs(plane.total_W_m2() - ghi) <= 1e-12 * ghi);
      RC_ASSERT(plane.sky_W_m2 == instant.dhi_W_m2);
    }
  });
  EXPECT_TRUE(holds);
}

TEST(Transposition, IsNeverNegativeAndMirrorsEastAndWest) {
  const bool holds = rc::check("never negative, symmetric about the sun's meridian", [] {
    PlaneInstant instant{between(0.0, 120.0), 180.0, 1361.0, between(1.0, 35.0), between(0.0, 1000.0),
                         between(0.0, 600.0)};
    const double tilt = between(0.0, 90.0);
    const double turn = between(0.0, 180.0);
    for (const SkyModel model : {SkyModel::kIsotropic, SkyModel::kHayDavies, SkyModel::kPerez}) {
      const PlaneIrradiance east = on_plane(model, instant, tilt, 180.0 - turn, 0.2);
      const PlaneIrradiance west = on_plane(model, instant, tilt, 180.0 + turn, 0.2);
      RC_ASSERT(east.beam_W_m2 >= 0.0 && east.sky_W_m2 >= 0.0 && east.ground_W_m2 >= 0.0);
      RC_ASSERT(std::abs(east.total_W_m2() - west.total_W_m2()) <= 1e-9 * (1.0 + east.total_W_m2()));
    }
  });
  EXPECT_TRUE(holds);
}

}  // namespace
}  // namespace voltwright::sky
