// What passes through a battery in its life: a practitioners' case, no standard.
// Lead-acid to half: 0.5 x 500 to 800 cycles = 250 to 400 times its capacity; iron-phosphate to 80 %:
// 0.8 x 2000 to 4000 = 1600 to 3200. Between them 4 to 13 times.
#include "engine/ageing/life.h"
#include "tests/whole/practice_fixture.h"

namespace voltwright::whole {
namespace {

/// Every day at midnight a load takes the bank down, then mains fill it until the next midnight.
std::string daily_cycle(const std::string& power) {
  return warm_cabin() + R"(
[mains]
output_limit = "20 A"

[[load]]
name = "Night"
window = "00:00-05:00"
power = ")" +
         power + "\"\n" + winter_stay(20, "shore = \"05:00-23:59\"\n");
}

/// Throughput until cycling alone has worn the battery out, in rated capacities.
double lifetime_throughput(const Told& told, const std::string& battery) {
  const bank::Battery& entry = *catalogue().battery(battery);
  const cell::Chemistry& chemistry = *catalogue().chemistry(entry.chemistry);
  const ageing::Wear wear = ageing::wear_of(chemistry.life, told.fared.exposure, ageing::Spread::kTypical);
  return told.fared.ledger.discharged_Ah / entry.capacity_Ah / wear.by_cycles;
}

TEST(LifetimeThroughput, OfIronPhosphateIsFourToThirteenTimesThatOfLeadAcid) {
  // 46 Ah x 12.3 V / 5 h = 113 W and 78 Ah x 13.1 V / 5 h = 204 W, just above the depth at which loads go
  // off.
  const Told lead = Practice(daily_cycle("108 W")).tell("flooded-12v-100ah");
  const Told iron = Practice(daily_cycle("204 W")).tell("lfp-12v-100ah");
  EXPECT_FALSE(lead.fared.ran_short());
  EXPECT_FALSE(iron.fared.ran_short());
  EXPECT_NEAR(iron.fared.lowest_charge, 0.22, 0.02);
  EXPECT_NEAR(lead.fared.lowest_charge, 0.55, 0.05);
  const double of_lead = lifetime_throughput(lead, "flooded-12v-100ah");
  const double of_iron = lifetime_throughput(iron, "lfp-12v-100ah");
  EXPECT_GT(of_lead, 250.0);
  EXPECT_LT(of_lead, 400.0);
  EXPECT_GT(of_iron, 1600.0);
  EXPECT_LT(of_iron, 3200.0);
  EXPECT_GT(of_iron / of_lead, 4.0);
  EXPECT_LT(of_iron / of_lead, 13.0);
}

// What the season tells the ageing laws agrees with its ledger: hours, charge drawn, and for lead-acid alone
// what the plates went through. Shore power of nineteen hours fills the bank every day.
TEST(Exposure, AgreesWithTheLedger) {
  const Told lead = Practice(daily_cycle("108 W")).tell("flooded-12v-100ah");
  const Told iron = Practice(daily_cycle("204 W")).tell("lfp-12v-100ah");
  for (const Told* told : {&lead, &iron}) {
    const ageing::Exposure& exposure = told->fared.exposure;
    EXPECT_NEAR(exposure.hours, told->fared.minutes / 60.0, 1e-6);
    double moved = 0.0;
    for (const ageing::Swing& swing : exposure.swings) moved += swing.count * swing.depth;
    EXPECT_NEAR(moved, told->fared.ledger.discharged_Ah / 100.0, 0.06 * moved);
    double temperature = 0.0;
    for (const ageing::Dwell& d : exposure.dwell) temperature += d.temperature_C * d.hours / exposure.hours;
    EXPECT_NEAR(temperature, told->fared.mean_C, 1e-6);
  }
  EXPECT_EQ(iron.fared.exposure.plates.hours, 0.0);
  const ageing::PlateUse& plates = lead.fared.exposure.plates;
  EXPECT_NEAR(plates.hours, lead.fared.exposure.hours, 1e-6);
  EXPECT_NEAR(plates.drawn, lead.fared.ledger.discharged_Ah / 100.0, 0.01 * plates.drawn);
  EXPECT_NEAR(plates.full_charges, 19.5, 1.0);
  EXPECT_LT(plates.longest_without_full_h, 24.0);
  EXPECT_GT(plates.weighted, plates.drawn);
  EXPECT_LT(plates.weighted, 1.2 * plates.drawn);
}

}  // namespace
}  // namespace voltwright::whole
