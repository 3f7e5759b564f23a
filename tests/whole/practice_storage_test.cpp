// A bank laid up for the winter: common practice, no source.
#include <gtest/gtest.h>

#include "engine/bank/protection.h"
#include "engine/season/setup.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

constexpr double kDrain_A = 0.0133;
constexpr double kRoom_C = 15.0;
constexpr int kHours = 249 * 24;

struct LaidUp {
  double charge = 0.0;
  double volts = 0.0;
};

/// Five iron-phosphate batteries of 100 Ah, 95.9 % full, after so many hours of the drain.
LaidUp after(int hours, double self_discharge_per_month) {
  const bank::Battery& battery = *catalogue().battery("lfp-12v-100ah");
  cell::Chemistry kind = *catalogue().chemistry("lfp");
  kind.self_discharge_per_month = self_discharge_per_month;
  const cell::Tables tables = cell::make_tables(kind);
  const auto p = bank::assemble(battery, kind, tables, {1, 5, 0.0}, 0.0, 1e6, 3600.0);
  bank::State<double> s;
  s.charge = 0.959;
  s.temperature_C = kRoom_C;
  for (int hour = 0; hour < hours; ++hour) {
    bank::advance<double>(p, bank::terminal<double>(p, s), s, kDrain_A, kRoom_C, 0.0);
  }
  return {s.charge, bank::terminal<double>(p, s).source_V};
}

// 13.3 mA x 24 h x 249 days are 79.5 Ah, 15.9 % of 500 Ah: from 95.9 to 80 %.
TEST(LaidUpBank, LosesWhatIsDrawn) { EXPECT_NEAR(after(kHours, 0.0).charge, 0.80, 0.0005); }

// The cells lose charge of their own too, 2.5 % a month at 25 degC in the record and half of it 10 K cooler:
// about 51 Ah more in 8.2 months. Who reckons with the drain alone comes home to a bank emptier by that.
TEST(LaidUpBank, LosesChargeOfItsOwn) {
  const double own = catalogue().chemistry("lfp")->self_discharge_per_month;
  const double lost = after(kHours, 0.0).charge - after(kHours, own).charge;
  const double months = kHours / 730.5;
  EXPECT_NEAR(lost, 0.5 * own * months, 0.005);
}

// A drain of milliamperes cannot be told from the voltage: between 30 days of rest on the flat of the curve a
// bank of iron-phosphate falls by less than the 10 mV that a monitor shows.
TEST(LaidUpBank, VoltageDoesNotTellTheDrain) {
  constexpr int kMonth = 30 * 24;
  const LaidUp early = after(5 * kMonth, 0.0);
  const LaidUp late = after(6 * kMonth, 0.0);
  EXPECT_GT(early.charge, late.charge);
  EXPECT_GE(early.volts, late.volts);
  EXPECT_LT(early.volts - late.volts, 0.010);
}

}  // namespace
}  // namespace voltwright::whole
