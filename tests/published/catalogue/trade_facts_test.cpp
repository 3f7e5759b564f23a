// What the trade says of batteries (common practice, no source), held against the catalogue's medians. Each
// case prints how far the catalogue lies from the saying; masses may differ by 40 %, and no figure was bent
// to meet them.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

const bank::Battery& battery(const char* id) { return *catalogue().battery(id); }

double usable_Ah(const bank::Battery& b) {
  return b.capacity_Ah * chemistry(b.chemistry.c_str()).usable_depth;
}

void expect_near_saying(const char* what, double found, double said, double share) {
  std::printf("%s: catalogue %.3g, trade %.3g, %+.0f %%\n", what, found, said, 100.0 * (found / said - 1.0));
  EXPECT_NEAR(found, said, share * said) << what;
}

constexpr double kMassShare = 0.40;

TEST(TradeFacts, GlassMatOf98AmpereHours) {
  const auto& agm = battery("agm-12v-98ah");
  expect_near_saying("mass of a 98 Ah AGM, kg", agm.mass_kg.typical, 25.0, kMassShare);
  expect_near_saying("usable charge of a 98 Ah AGM, Ah", usable_Ah(agm), 49.0, 1e-9);
}

TEST(TradeFacts, IronPhosphateOf60AmpereHoursReplacesIt) {
  const auto& lfp = battery("lfp-12v-60ah");
  expect_near_saying("usable charge of a 60 Ah LFP, Ah", usable_Ah(lfp), 48.0, 1e-9);
  expect_near_saying("mass of a 60 Ah LFP over a 98 Ah AGM",
                     lfp.mass_kg.typical / battery("agm-12v-98ah").mass_kg.typical, 0.25, kMassShare);
}

TEST(TradeFacts, IronPhosphateOf120AmpereHoursHoldsTwiceAtHalfTheMass) {
  const auto& lfp = battery("lfp-12v-120ah");
  const auto& agm = battery("agm-12v-98ah");
  expect_near_saying("usable charge of a 120 Ah LFP over a 98 Ah AGM", usable_Ah(lfp) / usable_Ah(agm), 2.0,
                     0.05);
  expect_near_saying("mass of a 120 Ah LFP over a 98 Ah AGM", lfp.mass_kg.typical / agm.mass_kg.typical, 0.5,
                     kMassShare);
}

TEST(TradeFacts, IronPhosphateOf300AmpereHoursWeighsWhatTheGlassMatWeighs) {
  expect_near_saying("mass of a 300 Ah LFP over a 98 Ah AGM",
                     battery("lfp-12v-300ah").mass_kg.typical / battery("agm-12v-98ah").mass_kg.typical, 1.0,
                     kMassShare);
}

TEST(TradeFacts, IronPhosphateOutlastsGlassMat) {
  const auto& lfp = chemistry("lfp").life;
  const auto& agm = chemistry("agm").life;
  const double at_80 = lfp.cycles.typical * std::pow(lfp.depth / 0.8, lfp.depth_exponent);
  const double at_50 = agm.cycles.typical * std::pow(agm.depth / 0.5, agm.depth_exponent);
  expect_near_saying("cycles of AGM at 50 %", at_50, 900.0, kMassShare);
  std::printf("cycles of LFP at 80 %% over AGM at 50 %%: catalogue %.2g, trade more than 2\n", at_80 / at_50);
  EXPECT_GT(at_80 / at_50, 2.0);
}

// Published statistics: LFP of 12 V and 100 Ah 117 Wh/kg (97 to 130); AGM 39.5 Wh/kg (32.9 to 44.5); from the
// survey of generic batteries.
TEST(PackFacts, EnergyPerMass) {
  const auto& lfp = battery("lfp-12v-100ah");
  const double lfp_Wh_kg = lfp.nominal_V * lfp.capacity_Ah / lfp.mass_kg.typical;
  EXPECT_GT(lfp_Wh_kg, 97.0);
  EXPECT_LT(lfp_Wh_kg, 130.0);
  const auto& agm = battery("agm-12v-98ah");
  const double agm_Wh_kg = 12.0 * agm.capacity_Ah / agm.mass_kg.typical;
  EXPECT_GT(agm_Wh_kg, 32.9);
  EXPECT_LT(agm_Wh_kg, 44.5);
}

// Rows of that survey which the fits must meet within their own spread: 12.8 V 100 Ah, median of 11 rows 11
// kg; 12.8 V 200 Ah 22 to 29.6 kg; 51.2 V 100 Ah 42.5 to 55 kg; AGM 200 Ah 62.5 kg.
TEST(PackFacts, MassesOfSurveyRows) {
  EXPECT_NEAR(battery("lfp-12v-100ah").mass_kg.typical, 11.0, 0.12 * 11.0);
  EXPECT_NEAR(battery("lfp-12v-200ah").mass_kg.typical, 23.0, 0.12 * 23.0);
  EXPECT_NEAR(battery("lfp-48v-100ah").mass_kg.typical, 47.0, 0.12 * 47.0);
  EXPECT_NEAR(battery("agm-12v-200ah").mass_kg.typical, 62.5, 0.12 * 62.5);
}

// Prices of 2025 and 2026 in that survey: LFP of 12 V 179 USD/kWh at the median of 20, AGM 176 of 9.
TEST(PackFacts, PricesOfTheYear) {
  const auto& lfp = battery("lfp-12v-100ah");
  EXPECT_NEAR(lfp.price.typical / 1.28, 179.0, 1.0);
  EXPECT_NEAR(battery("agm-12v-98ah").price.typical / 1.176, 176.0, 1.0);
  EXPECT_EQ(lfp.price_year, 2026);
  EXPECT_FALSE(lfp.price_is_assumption);
  EXPECT_TRUE(battery("nmc-12v-100ah").price_is_assumption);
}

// A 12 V system must stay between 10.5 and 15.5 V (common practice, no source): full at the charge ceiling
// for all; the iron-phosphate bank also at 10 % charge.
TEST(PackFacts, TwelveVoltBatteriesStayBelowTheCeiling) {
  for (const auto& b : catalogue().batteries) {
    if (b.system_V != 12.0) continue;
    EXPECT_LE(chemistry(b.chemistry.c_str()).stages.absorption_V * b.cells_in_series, 15.5) << b.id;
  }
  EXPECT_GE(4.0 * curve_at(chemistry("lfp").ocv_V, 0.1), 10.5);
}

}  // namespace
}  // namespace voltwright::published
