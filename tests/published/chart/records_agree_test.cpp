// The chart and the simulation must not say two things of one chemistry.
#include <gtest/gtest.h>

#include "files/catalogue.h"
#include "tests/published/chart/drawn.h"

namespace voltwright::published {
namespace {

using chart::Quantity;

class Agree : public ::testing::Test {
 protected:
  void SetUp() override {
    auto read = files::read_catalogue();
    ASSERT_TRUE(read);
    catalogue_ = std::move(read).value();
    ASSERT_EQ(catalogue_.chemistries.size(), chart_catalogue().kinds.size());
  }

  files::Catalogue catalogue_;
};

const chart::Fact& latest(const std::string& id, Quantity quantity) {
  const chart::Fact* found = chart::as_of_cell_or_block(kind(id), quantity, 2100);
  if (found == nullptr) throw std::out_of_range(id);
  return *found;
}

TEST_F(Agree, TemperatureWindowsAreThoseOfTheLimits) {
  for (const cell::Chemistry& record : catalogue_.chemistries) {
    EXPECT_EQ(latest(record.id, Quantity::kChargeFrom).value.typical, record.limits.charge_min_C)
        << record.id;
    EXPECT_EQ(latest(record.id, Quantity::kChargeTo).value.typical, record.limits.charge_max_C) << record.id;
    EXPECT_EQ(latest(record.id, Quantity::kDischargeFrom).value.typical, record.limits.discharge_min_C)
        << record.id;
    EXPECT_EQ(latest(record.id, Quantity::kDischargeTo).value.typical, record.limits.discharge_max_C)
        << record.id;
  }
}

TEST_F(Agree, LifeOnTheShelf) {
  for (const cell::Chemistry& record : catalogue_.chemistries) {
    const units::Ranged& shown = latest(record.id, Quantity::kCalendarLife).value;
    EXPECT_EQ(shown.min, record.life.calendar_years.min) << record.id;
    EXPECT_EQ(shown.typical, record.life.calendar_years.typical) << record.id;
    EXPECT_EQ(shown.max, record.life.calendar_years.max) << record.id;
  }
}

// Lead-acid records leave out what the side reaction takes at rest, which the chart counts.
TEST_F(Agree, SelfDischargeOfLithiumAndSodium) {
  for (const cell::Chemistry& record : catalogue_.chemistries) {
    const units::Ranged& shown = latest(record.id, Quantity::kSelfDischarge).value;
    if (record.family == cell::Family::kLeadAcid) {
      EXPECT_GE(shown.max, record.self_discharge_per_month) << record.id;
    } else {
      EXPECT_EQ(shown.typical, record.self_discharge_per_month) << record.id;
    }
  }
}

TEST_F(Agree, NamesAndWhatIsSimulated) {
  for (const cell::Chemistry& record : catalogue_.chemistries) {
    EXPECT_EQ(kind(record.id).name, record.name);
    EXPECT_EQ(kind(record.id).simulated, record.simulated) << record.id;
    EXPECT_EQ(kind(record.id).block, record.family == cell::Family::kLeadAcid) << record.id;
  }
}

}  // namespace
}  // namespace voltwright::published
