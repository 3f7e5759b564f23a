// Dated figures of the chart against their sources, through the rule that picks the figure of a year.
#include <gtest/gtest.h>

#include "tests/published/chart/drawn.h"

namespace voltwright::published {
namespace {

using chart::Level;
using chart::Quantity;

double typical(const char* id, Quantity quantity, Level level, int year) {
  return figure(id, quantity, level, year).value.typical;
}

// BloombergNEF, annual survey, press figures: volume-weighted mean of all lithium-ion packs, each year in its
// own money but 2010 (money of 2020) and 2013 (money of 2022). 132 of 2021 is (from memory).
TEST(PackPrice, EverySurveyYear) {
  const struct {
    int year;
    double USD_per_kWh;
  } kSurvey[] = {{2010, 1191}, {2013, 732}, {2016, 273}, {2019, 156}, {2020, 137},
                 {2021, 132},  {2022, 151}, {2023, 139}, {2024, 115}, {2025, 108}};
  for (const char* id : {"lfp", "nmc", "nca", "lco", "lmo"}) {
    for (const auto& said : kSurvey) {
      const chart::Fact& fact = figure(id, Quantity::kPrice, Level::kPack, said.year);
      EXPECT_EQ(fact.value.typical, said.USD_per_kWh) << id << ' ' << said.year;
      EXPECT_EQ(fact.year, said.year) << id;
      EXPECT_FALSE(fact.conditions.empty()) << "a price without its money";
    }
  }
}

// Between two surveys the earlier one stands, with its own year.
TEST(PackPrice, NothingIsDrawnBetweenSurveys) {
  EXPECT_EQ(typical("lfp", Quantity::kPrice, Level::kPack, 2015), 732.0);
  EXPECT_EQ(figure("lfp", Quantity::kPrice, Level::kPack, 2015).year, 2013);
  EXPECT_EQ(chart::as_of(kind("lfp"), Quantity::kPrice, Level::kPack, 2009), nullptr);
}

// The same survey: the mean rose once, in 2022.
TEST(PackPrice, RoseOnce) {
  EXPECT_GT(typical("nmc", Quantity::kPrice, Level::kPack, 2022),
            typical("nmc", Quantity::kPrice, Level::kPack, 2021));
  EXPECT_LT(typical("nmc", Quantity::kPrice, Level::kPack, 2023),
            typical("nmc", Quantity::kPrice, Level::kPack, 2022));
}

// Survey of generic batteries, shop prices: LFP of 12 V 388 (348 to 429, two offers) about 2022 and 179 (97
// to 258, 20 offers) in 2026; AGM 286 (13 offers) in 2016 and 176 (9 offers) in 2026.
TEST(ShopPrice, SurveyOfGenericBatteries) {
  EXPECT_EQ(typical("lfp", Quantity::kPrice, Level::kBattery, 2022), 388.0);
  EXPECT_EQ(typical("lfp", Quantity::kPrice, Level::kBattery, 2026), 179.0);
  EXPECT_EQ(typical("agm", Quantity::kPrice, Level::kBattery, 2016), 286.0);
  EXPECT_EQ(typical("agm", Quantity::kPrice, Level::kBattery, 2026), 176.0);
}

double full_equivalents(const char* id, double depth, int year) {
  for (const chart::Fact& fact : kind(id).facts) {
    if (fact.quantity == Quantity::kCycles && fact.year == year && fact.depth == depth)
      return fact.value.typical * fact.depth;
  }
  throw std::out_of_range(id);
}

// Preger and others 2020, figure 2a (points of a third-party digitisation): full equivalent cycles to 80 % at
// 25 degC and 0.5C, between 0 and 100 % and between 20 and 80 % charge. The two of LFP are the authors'
// extrapolations.
TEST(CycleLife, ThreeKindsOfOneLaboratory) {
  EXPECT_NEAR(full_equivalents("nmc", 1.0, 2020), 440.0, 1.0);
  EXPECT_NEAR(full_equivalents("nmc", 0.6, 2020), 1650.0, 1.0);
  EXPECT_NEAR(full_equivalents("nca", 1.0, 2020), 240.0, 1.0);
  EXPECT_NEAR(full_equivalents("nca", 0.6, 2020), 640.0, 1.0);
  EXPECT_NEAR(full_equivalents("lfp", 1.0, 2020), 6370.0, 1.0);
  EXPECT_NEAR(full_equivalents("lfp", 0.6, 2020), 7170.0, 1.0);
}

void expect_window(const char* id, int year, double from_C, double to_C, double discharge_from_C,
                   double discharge_to_C) {
  const auto row = [&](Quantity quantity) {
    return chart::as_of_cell_or_block(kind(id), quantity, year)->value.typical;
  };
  EXPECT_EQ(row(Quantity::kChargeFrom), from_C) << id;
  EXPECT_EQ(row(Quantity::kChargeTo), to_C) << id;
  EXPECT_EQ(row(Quantity::kDischargeFrom), discharge_from_C) << id;
  EXPECT_EQ(row(Quantity::kDischargeTo), discharge_to_C) << id;
}

// Charging at high and low temperatures, BU-410, table 1: lithium-ion 0 to 45 and -20 to 60 degC, lead-acid
// -20 to 50 both ways. Sodium-ion: data sheet of a layered-oxide cell, -10 to 45 and -30 to 60. Titanate
// (from memory).
TEST(TemperatureWindow, OfEachKind) {
  for (const char* id : {"lfp", "nmc", "nca", "lco", "lmo"}) expect_window(id, 2026, 0, 45, -20, 60);
  for (const char* id : {"agm", "gel", "flooded"}) expect_window(id, 2026, -20, 50, -20, 50);
  expect_window("sodium-ion", 2026, -10, 45, -30, 60);
  expect_window("lto", 2026, -30, 55, -30, 55);
}

// Summary table of lithium-ion kinds, BU-205 (about 2010 to 2016); review of cell densities of 2020; vent-gas
// study of 2025 (Batteries 11(9) 323: cells of 173 and 230 Wh/kg); sodium cells measured: 4.517 and 4.688 Wh
// of 37 g; pouch cell measured: 113.85 Wh of 0.799 kg.
TEST(CellEnergy, WithItsYear) {
  const struct {
    const char* id;
    int year;
    double least, typical, most;
  } kSaid[] = {
      {"lfp", 2013, 90, 105, 120},         {"lfp", 2020, 130, 140, 150}, {"lfp", 2025, 160, 173, 190},
      {"nmc", 2016, 150, 180, 220},        {"nmc", 2025, 220, 230, 240}, {"nca", 2016, 200, 230, 260},
      {"nca", 2020, 270, 280, 290},        {"lco", 2016, 150, 175, 200}, {"lmo", 2014, 100, 142.5, 150},
      {"sodium-ion", 2023, 122, 125, 127}, {"lto", 2014, 70, 75, 80}};
  for (const auto& said : kSaid) {
    const chart::Fact& fact = figure(said.id, Quantity::kEnergyPerMass, Level::kCell, said.year);
    EXPECT_EQ(fact.year, said.year) << said.id;
    EXPECT_EQ(fact.value.min, said.least) << said.id;
    EXPECT_EQ(fact.value.typical, said.typical) << said.id;
    EXPECT_EQ(fact.value.max, said.most) << said.id;
  }
  EXPECT_NEAR(113.85 / 0.799, typical("lmo", Quantity::kEnergyPerMass, Level::kCell, 2014), 0.05);
  EXPECT_NEAR(4.517 / 0.037, figure("sodium-ion", Quantity::kEnergyPerMass, Level::kCell, 2023).value.min,
              0.5);
}

// Survey of generic batteries: finished LFP of all sizes 86.8, 111 and 132 Wh/kg (5th, 50th, 95th percentile
// of 69), AGM 32.9, 39.5 and 44.5 (of 33).
TEST(BatteryEnergy, SurveyOfGenericBatteries) {
  const auto& lfp = figure("lfp", Quantity::kEnergyPerMass, Level::kBattery, 2026).value;
  EXPECT_EQ(lfp.min, 86.8);
  EXPECT_EQ(lfp.typical, 111.0);
  EXPECT_EQ(lfp.max, 132.0);
  const auto& agm = figure("agm", Quantity::kEnergyPerMass, Level::kBattery, 2026).value;
  EXPECT_EQ(agm.min, 32.9);
  EXPECT_EQ(agm.typical, 39.5);
  EXPECT_EQ(agm.max, 44.5);
}

// Summary table BU-205: 150, 150, 210, 250 and 270 degC. Every statement on safety must carry its caution.
TEST(Safety, OnsetWithItsNote) {
  const struct {
    const char* id;
    double onset_C;
  } kSaid[] = {{"lco", 150}, {"nca", 150}, {"nmc", 210}, {"lmo", 250}, {"lfp", 270}};
  for (const auto& said : kSaid) {
    EXPECT_EQ(typical(said.id, Quantity::kOnset, Level::kCell, 2016), said.onset_C) << said.id;
    EXPECT_NE(kind(said.id).safety.note.find("not a guarantee"), std::string::npos) << said.id;
  }
  for (const chart::Kind& one : chart_catalogue().kinds) {
    EXPECT_FALSE(one.safety.note.empty()) << one.id;
    EXPECT_FALSE(one.safety.gas.empty()) << one.id;
    EXPECT_FALSE(one.safety.failure.empty()) << one.id;
  }
}

}  // namespace
}  // namespace voltwright::published
