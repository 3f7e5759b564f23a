// Each rule on a sheet that just keeps it and one that just does not. Expected values are arithmetic on the
// invented evidence.
#include "engine/claims/vet.h"

#include <gtest/gtest.h>

#include "tests/unit/claims/invented_evidence.h"

namespace voltwright::claims {
namespace {

void expect(const Sheet& sheet, const std::string& id, Severity severity) {
  const Finding f = found(sheet, id);
  ASSERT_EQ(f.id, id) << "not found";
  EXPECT_EQ(name_of(f.severity), name_of(severity)) << f.say;
  EXPECT_FALSE(f.claim.empty());
  EXPECT_FALSE(f.say.empty());
  EXPECT_FALSE(f.working.empty());
}

void expect_none(const Sheet& sheet, const std::string& id) { EXPECT_EQ(found(sheet, id).id, ""); }

TEST(VetTest, EnergyIsCapacityTimesVoltage) {
  Sheet sheet = plain_sheet();
  sheet.energy_Wh = 1280.0;
  expect(sheet, "consistent.energy", Severity::kHolds);
  EXPECT_DOUBLE_EQ(*found(sheet, "consistent.energy").number, 1280.0);
  sheet.energy_Wh = 1200.0;  // counted at 12 V: 6.3 % less
  expect(sheet, "consistent.energy", Severity::kNote);
  sheet.energy_Wh = 1160.0;  // 9.4 % less
  expect(sheet, "consistent.energy", Severity::kContradiction);
  sheet.energy_Wh.reset();
  expect_none(sheet, "consistent.energy");
}

TEST(VetTest, RatesAndCurrentsMeetWithinATenth) {
  Sheet sheet = plain_sheet();
  sheet.continuous_A = 92.0;
  sheet.continuous_per_h = 1.0;
  sheet.charge_A = 50.0;
  sheet.charge_per_h = 0.2;
  expect(sheet, "consistent.continuous_rate", Severity::kHolds);
  expect(sheet, "consistent.charge_rate", Severity::kContradiction);
  EXPECT_DOUBLE_EQ(*found(sheet, "consistent.charge_rate").number, 20.0);
  sheet.peak_A = 90.0;
  expect(sheet, "consistent.peak", Severity::kContradiction);
  sheet.peak_A = 92.0;
  expect_none(sheet, "consistent.peak");
}

TEST(VetTest, TimeTimesCurrentIsAtLeastTheCapacity) {
  Sheet sheet = plain_sheet();
  sheet.charger_A = 20.0;
  sheet.charge_A = 50.0;
  sheet.charge_time_h = 4.8;  // 96 Ah
  expect(sheet, "consistent.charge_time", Severity::kHolds);
  expect(sheet, "consistent.charger", Severity::kHolds);
  sheet.charge_time_h = 4.7;  // 94 Ah
  expect(sheet, "consistent.charge_time", Severity::kContradiction);
  sheet.charge_A = 15.0;
  expect(sheet, "consistent.charger", Severity::kContradiction);
}

TEST(VetTest, VoltageIsThatOfWholeCells) {
  Sheet sheet = plain_sheet();
  expect(sheet, "consistent.voltage", Severity::kHolds);
  sheet.nominal_V = 12.0;
  expect(sheet, "consistent.voltage", Severity::kNote);
  sheet.nominal_V = 14.4;  // 4.5 cells
  expect(sheet, "consistent.voltage", Severity::kDoubt);
  sheet.nominal_V = 51.2;
  sheet.series = 13;  // 3.94 V each
  expect(sheet, "consistent.voltage", Severity::kContradiction);
}

TEST(VetTest, ChargeVoltageDoesNotOvercharge) {
  Sheet sheet = plain_sheet();
  sheet.charge_V = 14.6;
  expect(sheet, "consistent.charge_voltage", Severity::kHolds);
  sheet.charge_V = 15.0;  // 3.75 V, 2.7 % above 3.65
  expect(sheet, "consistent.charge_voltage", Severity::kDoubt);
}

TEST(VetTest, TemperatureLimitsStandInOrder) {
  Sheet sheet = plain_sheet();
  sheet.charge_min_C = 45.0;
  sheet.charge_max_C = 0.0;
  expect(sheet, "consistent.temperature", Severity::kContradiction);
}

TEST(VetTest, ReserveMinutesAtTwentyFiveAmperes) {
  Sheet sheet = plain_sheet();
  sheet.kind = "agm";
  sheet.nominal_V = 12.0;
  sheet.capacity_h = 20.0;
  sheet.reserve_min = 180.0;  // 75 Ah; exponent 1.21
  expect(sheet, "consistent.reserve", Severity::kHolds);
  sheet.reserve_min = 270.0;  // 112.5 Ah at 25 A, 100 Ah at 5 A
  expect(sheet, "consistent.reserve", Severity::kContradiction);
  sheet.reserve_min = 130.0;  // 54 Ah: exponent 1.41
  expect(sheet, "consistent.reserve", Severity::kContradiction);
}

TEST(VetTest, NoBatteryHoldsMoreThanItsCells) {
  Sheet sheet = plain_sheet();
  sheet.mass_kg = 1280.0 / 130.0;
  expect(sheet, "possible.energy_per_mass", Severity::kHolds);
  sheet.mass_kg = 1280.0 / 150.0;
  expect(sheet, "possible.energy_per_mass", Severity::kDoubt);
  sheet.mass_kg = 1280.0 / 200.0;
  expect(sheet, "possible.energy_per_mass", Severity::kContradiction);
}

TEST(VetTest, TheYearCounts) {
  Sheet sheet = plain_sheet();
  sheet.level = Level::kCell;
  sheet.nominal_V = 3.2;
  sheet.mass_kg = 320.0 / 150.0;
  expect(sheet, "possible.energy_per_mass", Severity::kHolds);
  sheet.year = 2013;
  expect(sheet, "possible.energy_per_mass", Severity::kContradiction);
  sheet.year = 2014;  // the next dated fact is of 2025
  expect(sheet, "possible.energy_per_mass", Severity::kHolds);
}

TEST(VetTest, AnAssumedLimitCarriesNoDoubtAlone) {
  Sheet sheet = plain_sheet();
  sheet.kind = "lfp";
  Evidence evidence = invented_evidence();
  evidence.stated.clear();
  sheet.volume_L = 1280.0 / 180.0;  // 1.2 times the assumed 150 Wh/L
  EXPECT_EQ(found(vet(sheet, evidence), "possible.energy_per_volume").severity, Severity::kHolds);
  evidence.kinds.front().per_volume.front().assumed = false;
  EXPECT_EQ(found(vet(sheet, evidence), "possible.energy_per_volume").severity, Severity::kDoubt);
}

TEST(VetTest, AFigureOfTheCellsIsToldAsSuch) {
  Sheet sheet = plain_sheet();
  sheet.mass_kg = 12.0;
  sheet.energy_Wh_per_kg = 175.0;
  expect(sheet, "misleading.cell_for_battery", Severity::kDoubt);
  expect_none(sheet, "consistent.energy_per_mass");
  sheet.energy_Wh_per_kg = 106.7;
  expect(sheet, "consistent.energy_per_mass", Severity::kHolds);
  expect_none(sheet, "misleading.cell_for_battery");
  sheet.energy_Wh_per_kg = 120.0;
  expect(sheet, "consistent.energy_per_mass", Severity::kContradiction);
}

TEST(VetTest, ChargingInTheColdNeedsAReason) {
  Sheet sheet = plain_sheet();
  expect(sheet, "complete.cold_charging", Severity::kNote);
  sheet.charge_min_C = -10.0;
  expect_none(sheet, "complete.cold_charging");
  expect(sheet, "possible.cold_charge", Severity::kDoubt);
  sheet.heated = true;
  expect(sheet, "possible.cold_charge", Severity::kNote);
  sheet.charge_min_C = 0.0;
  expect(sheet, "possible.cold_charge", Severity::kHolds);
}

TEST(VetTest, RankAmongTheStated) {
  Sheet sheet = plain_sheet();
  sheet.mass_kg = 12.25;  // 104.5 Wh/kg; five of ten are heavier
  const Finding rank = found(sheet, "usual.energy_per_mass");
  EXPECT_EQ(rank.severity, Severity::kHolds);
  EXPECT_NE(rank.working.find("50\u202F% of 10"), std::string::npos) << rank.working;
  sheet.mass_kg = 16.0;  // 80 Wh/kg; the heaviest has 88.3
  expect(sheet, "usual.energy_per_mass", Severity::kDoubt);
  sheet.mass_kg = 9.0;  // lighter: another rule
  expect_none(sheet, "usual.energy_per_mass");
  sheet.continuous_A = 140.0;
  expect(sheet, "usual.continuous", Severity::kNote);
  sheet.continuous_A = 150.0;
  expect(sheet, "usual.continuous", Severity::kDoubt);
  sheet.cycles = 6700.0;  // 95 % lie below 5275, times 1.25 = 6594
  expect(sheet, "usual.cycles", Severity::kDoubt);
  sheet.price = 100.0;  // 78 USD/kWh; the least is 100, over 1.25 = 80
  expect(sheet, "usual.price", Severity::kDoubt);
  sheet.currency = "EUR";
  expect_none(sheet, "usual.price");
}

TEST(VetTest, FewRowsMakeNoRank) {
  Sheet sheet = plain_sheet();
  sheet.mass_kg = 40.0;
  Evidence evidence = invented_evidence();
  evidence.stated.resize(7);
  EXPECT_EQ(found(vet(sheet, evidence), "usual.energy_per_mass").id, "");
}

TEST(VetTest, CyclesScaleWithDepthAndEnd) {
  Sheet sheet = plain_sheet();
  sheet.cycles = 11000.0;
  sheet.cycles_depth = 0.8;
  expect(sheet, "possible.cycles", Severity::kNote);
  sheet.cycles = 12500.0;  // 1.5 x 8000 = 12000
  expect(sheet, "possible.cycles", Severity::kDoubt);
  sheet.cycles_end = 0.6;  // twice as far down: 24000
  expect(sheet, "possible.cycles", Severity::kHolds);
  sheet.cycles_end = 0.8;
  sheet.cycles_depth = 0.4;  // exponent 1: twice as many
  expect(sheet, "possible.cycles", Severity::kHolds);
  sheet.calendar_years = 26.0;  // 1.25 x 20 = 25
  expect(sheet, "possible.calendar", Severity::kDoubt);
}

TEST(VetTest, SilenceMakesNotesOnly) {
  Sheet sheet = plain_sheet();
  sheet.cycles = 2000.0;
  sheet.peak_A = 100.0;
  const Findings findings = vet(sheet, invented_evidence());
  EXPECT_FALSE(is_doubted(findings));
  for (const char* id :
       {"complete.cycles_depth", "complete.cycles_temperature", "complete.cycles_end", "complete.protection",
        "complete.peak_time", "complete.mass", "complete.continuous", "complete.charge"}) {
    EXPECT_EQ(found(findings, id).id, id);
  }
}

TEST(VetTest, AFamilyIsNoKind) {
  Sheet sheet = plain_sheet();
  sheet.kind = "lithium-ion";
  expect(sheet, "complete.kind", Severity::kNote);
  sheet.kind = "lead-acid";
  sheet.nominal_V = 12.0;
  sheet.mass_kg = 15.0;  // 80 Wh/kg
  expect(sheet, "possible.energy_per_mass", Severity::kContradiction);
}

TEST(VetTest, StartingAmpsAreNoCapacity) {
  Sheet sheet;
  sheet.name = "starter";
  sheet.kind = "agm";
  sheet.marine_cranking_A = 1000.0;
  expect(sheet, "misleading.starting_amps", Severity::kDoubt);
  sheet.cold_cranking_A = 800.0;
  expect(sheet, "misleading.marine_amps", Severity::kHolds);
  sheet.marine_cranking_A = 1500.0;
  expect(sheet, "misleading.marine_amps", Severity::kDoubt);
  sheet.capacity_Ah = 90.0;
  expect_none(sheet, "misleading.starting_amps");
}

TEST(VetTest, APeakIsNotContinuous) {
  Sheet sheet = plain_sheet();
  sheet.continuous_A = 100.0;
  sheet.continuous_s = 10.0;
  expect(sheet, "misleading.peak_for_continuous", Severity::kDoubt);
  sheet.continuous_s = 1800.0;
  expect_none(sheet, "misleading.peak_for_continuous");
  sheet.continuous_A = 1000.0;  // 6 min to empty: 5 min are nearly all of it
  sheet.continuous_s = 300.0;
  expect_none(sheet, "misleading.peak_for_continuous");
}

TEST(VetTest, WorstComesFirst) {
  Sheet sheet = plain_sheet();
  sheet.energy_Wh = 2000.0;
  sheet.charge_min_C = -20.0;
  const Findings findings = vet(sheet, invented_evidence());
  ASSERT_GT(findings.size(), 2U);
  EXPECT_EQ(findings.front().severity, Severity::kContradiction);
  for (std::size_t i = 1; i < findings.size(); ++i) EXPECT_LE(findings[i].severity, findings[i - 1].severity);
}

}  // namespace
}  // namespace voltwright::claims
