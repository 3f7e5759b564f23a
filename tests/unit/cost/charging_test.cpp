// Shares of the sources in a kilowatt-hour out of the bank, worked by hand.
#include "engine/cost/charging.h"

#include <gtest/gtest.h>

namespace voltwright::cost {
namespace {

TEST(Charging, SharesByTheirEnergyWithTheLossOfTheBank) {
  // 300 of 400 kWh are sun; 100 kWh went into the bank and 80 came out: 1.25 for each.
  const SourceEnergy sources[] = {{"solar", 300.0}, {"engine", 0.0}, {"mains", 100.0}};
  const std::vector<Charging> shares = charging_of(sources, 100.0, 80.0);
  ASSERT_EQ(shares.size(), 2U);
  EXPECT_EQ(shares[0].source, "solar");
  EXPECT_NEAR(shares[0].kWh_per_delivered_kWh, 0.9375, 1e-12);
  EXPECT_NEAR(shares[1].kWh_per_delivered_kWh, 0.3125, 1e-12);
}

TEST(Charging, NothingFromNothing) {
  const SourceEnergy sources[] = {{"solar", 0.0}};
  EXPECT_TRUE(charging_of(sources, 10.0, 5.0).empty());
  EXPECT_TRUE(charging_of({}, 10.0, 5.0).empty());
  const SourceEnergy sun[] = {{"solar", 3.0}};
  EXPECT_TRUE(charging_of(sun, 10.0, 0.0).empty());
}

}  // namespace
}  // namespace voltwright::cost
