// Air around the bank. Expected values are the exponentials of the stated time constants, worked by hand; single
// precision.
#include "engine/season/surroundings.h"

#include <gtest/gtest.h>

#include <cmath>

namespace voltwright::season {
namespace {

TEST(CabinTemperature, FollowsWithTwoHours) {
  bank::Surroundings at;
  std::vector<float> outside(241, 0.0F);
  outside[0] = 20.0F;
  const auto cabin = cabin_temperature_C(at, outside, false);
  EXPECT_NEAR(static_cast<double>(cabin[120]), 20.0 * std::exp(-1.0), 1e-3);
  EXPECT_NEAR(static_cast<double>(cabin[240]), 20.0 * std::exp(-2.0), 1e-3);
}

TEST(CabinTemperature, IsHeatedWhileOccupied) {
  bank::Surroundings at;
  at.cabin_heated_to = units::celsius(18.0);
  const std::vector<float> cold(100, -10.0F);
  const std::vector<float> hot(100, 35.0F);
  EXPECT_EQ(cabin_temperature_C(at, cold, true)[50], 18.0F);
  EXPECT_EQ(cabin_temperature_C(at, cold, false)[50], -10.0F);
  EXPECT_EQ(cabin_temperature_C(at, hot, true)[50], 35.0F) << "heating does not cool";
}

TEST(BankSurroundings, EngineBayWarmsAndCools) {
  bank::Surroundings at;
  at.location = bank::Location::kEngineBay;
  at.engine_bay_rise = units::kelvins(30.0);
  const std::vector<float> outside(400, 10.0F);
  std::vector<std::uint8_t> driving(400, 0);
  for (std::size_t i = 0; i < 200; ++i) driving[i] = 1;
  const auto bay = bank_surroundings_C(at, outside, outside, driving);
  EXPECT_NEAR(static_cast<double>(bay[19]), 10.0 + 30.0 * (1.0 - std::exp(-1.0)), 1e-3);
  EXPECT_NEAR(static_cast<double>(bay[199]), 40.0, 0.01);
  EXPECT_NEAR(static_cast<double>(bay[259]), 10.0 + 30.0 * std::exp(-1.0), 0.01);
}

TEST(BankSurroundings, CabinAndOutside) {
  bank::Surroundings at;
  const std::vector<float> outside{1.0F};
  const std::vector<float> cabin{2.0F};
  const std::vector<std::uint8_t> driving{0};
  at.location = bank::Location::kCabin;
  EXPECT_EQ(bank_surroundings_C(at, outside, cabin, driving)[0], 2.0F);
  for (const auto place : {bank::Location::kOutside, bank::Location::kHeatedBox}) {
    at.location = place;
    EXPECT_EQ(bank_surroundings_C(at, outside, cabin, driving)[0], 1.0F);
  }
}

}  // namespace
}  // namespace voltwright::season
