#include "engine/ageing/measured_storage.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "engine/ageing/storage_error.h"

namespace voltwright::ageing {
namespace {

StorageCondition at(double temperature_C, double soc, double rate) {
  StorageCondition condition;
  condition.temperature_C = temperature_C;
  condition.soc = soc;
  condition.loss_percent_per_root_day = rate;
  return condition;
}

StorageTable table() {
  return {at(0, 0.5, 0.1),   at(25, 0, 0.1),   at(25, 0.5, 0.2),  at(25, 1, 0.8), at(40, 0, 0.2),
          at(40, 0.25, 0.3), at(40, 0.5, 0.4), at(40, 0.75, 0.8), at(40, 1, 1.6)};
}

double percent_per_root_day(const StorageRates& rates, double temperature_C, double soc) {
  return 100.0 * rates.per_root_h(temperature_C, soc) * std::sqrt(24.0);
}

TEST(StorageRates, MeetEveryCondition) {
  const StorageRates rates(table());
  for (const StorageCondition& c : table())
    EXPECT_NEAR(percent_per_root_day(rates, c.temperature_C, c.soc), c.loss_percent_per_root_day, 1e-12);
}

// Between two temperatures ln k is linear in 1/T: at the mean of the reciprocals the rate is the geometric
// mean.
TEST(StorageRates, BetweenTemperatures) {
  const StorageRates rates(table());
  const double middle_C = 2.0 / (1.0 / 298.15 + 1.0 / 313.15) - 273.15;
  EXPECT_NEAR(percent_per_root_day(rates, middle_C, 0.5), std::sqrt(0.2 * 0.4), 1e-12);
  EXPECT_NEAR(percent_per_root_day(rates, middle_C, 1.0), std::sqrt(0.8 * 1.6), 1e-12);
}

// Between charges the way of the sweep at 40 degC is taken: from half to full it covers ln 4, to 75 % half of
// it.
TEST(StorageRates, BetweenCharges) {
  const StorageRates rates(table());
  EXPECT_NEAR(percent_per_root_day(rates, 25.0, 0.75), std::sqrt(0.2 * 0.8), 1e-12);
  EXPECT_NEAR(percent_per_root_day(rates, 40.0, 0.625), 0.4 * std::pow(4.0, 0.25), 1e-12);
}

// Where only half charge was stored, the ratio of the coldest full sweep is kept; colder than all, the rate.
TEST(StorageRates, InTheCold) {
  const StorageRates rates(table());
  EXPECT_NEAR(percent_per_root_day(rates, 0.0, 1.0), 0.1 * 4.0, 1e-12);
  EXPECT_NEAR(percent_per_root_day(rates, 0.0, 0.0), 0.1 * 0.5, 1e-12);
  EXPECT_EQ(rates.per_root_h(-20.0, 0.5), rates.per_root_h(0.0, 0.5));
}

// Hotter than all, the last slope goes on: heat must not be flattered.
TEST(StorageRates, InTheHeat) {
  const StorageRates rates(table());
  const double hotter_C = 1.0 / (2.0 / 313.15 - 1.0 / 298.15) - 273.15;
  EXPECT_NEAR(percent_per_root_day(rates, hotter_C, 0.5), 0.8, 1e-12);
}

TEST(StorageRates, TablesThatAreNoSource) {
  EXPECT_EQ(std::string(fault_of(table())), "");
  EXPECT_NE(std::string(fault_of({})), "");
  StorageTable broken = table();
  broken[2].loss_percent_per_root_day = 0.0;
  EXPECT_NE(std::string(fault_of(broken)).find("above 0"), std::string::npos);
  broken = table();
  broken.erase(broken.begin() + 1);
  EXPECT_NE(std::string(fault_of(broken)).find("Empty and full"), std::string::npos);
  broken = table();
  broken.erase(broken.begin() + 5);
  EXPECT_NE(std::string(fault_of(broken)).find("sweep"), std::string::npos);
  broken = table();
  broken.erase(broken.begin());
  EXPECT_NE(std::string(fault_of(broken)).find("three temperatures"), std::string::npos);
}

// Deviations by hand: 0.2 % per root day is 2 % after 100 days and 4 % after 400, measured 1.5 and 4.5.
TEST(StorageError, ByHand) {
  StorageTable tests = {at(25, 0.5, 0.2)};
  tests[0].loss_percent_by_day = {{100.0, 1.5}, {400.0, 4.5}};
  const ComposedLaw law({std::make_shared<MeasuredStorage>(table(), Validity{})});
  const StorageError error = storage_error(law, tests, 0.0, 60.0);
  EXPECT_EQ(error.check_ups, 2);
  EXPECT_NEAR(error.bias_points, 0.0, 1e-12);
  EXPECT_NEAR(error.rms_points, 0.5, 1e-12);
  EXPECT_NEAR(std::fabs(error.worst_points), 0.5, 1e-12);
  EXPECT_NEAR(over_measured(law, tests, 25.0, 0.5, 100.0), 4.0 / 3.0, 1e-12);
  EXPECT_EQ(over_measured(law, tests, 25.0, 0.5, 200.0), 0.0);
  EXPECT_EQ(storage_error(law, tests, 30.0, 60.0).check_ups, 0);
}

}  // namespace
}  // namespace voltwright::ageing
