// How long it runs and what equals it, as practitioners reckon it: common practice, no source. Each case goes
// through the request that a person would type; the sum of the case stands beside it.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "app/runtime.h"
#include "app/swap.h"
#include "engine/ageing/life.h"

namespace voltwright::whole {
namespace {

struct Asked {
  std::string load;
  std::string battery;
  std::string capacity;
  std::string depth;
  int in_parallel = 1;
};

app::RuntimeRequest request_of(const Asked& asked) {
  app::RuntimeRequest request;
  request.load.load = asked.load;
  request.load.depth = asked.depth;
  request.battery.battery = asked.battery;
  request.battery.capacity = asked.capacity;
  request.battery.in_parallel = asked.in_parallel;
  return request;
}

app::RuntimeResponse answer_to(const app::RuntimeRequest& request) {
  const auto response = app::runtime(request);
  if (response) return response.value();
  for (const auto& problem : response.problems()) ADD_FAILURE() << base::to_text(problem);
  return {};
}

double hours_of(const Asked& asked) { return answer_to(request_of(asked)).answer.run.hours; }

/// Hours of a line of the working; fails the test if there is none.
double line(const app::RuntimeResponse& response, const std::string& name) {
  for (const auto& step : response.answer.working) {
    if (step.name == name) return step.hours;
  }
  ADD_FAILURE() << "no line " << name;
  return 0.0;
}

// An autopilot draws 5 A for 8 h = 40 Ah, 36 % of a lead-acid battery of 110 Ah; half of it is 55 Ah = 11 h.
TEST(Autopilot, EightHoursAreThirtySixPerCentOfAHundredAndTenAmpereHours) {
  EXPECT_NEAR(hours_of({"5 A", "flooded", "110 Ah", "50 %"}), 11.0, 0.3);
  EXPECT_NEAR(hours_of({"5 A", "flooded", "110 Ah", "36.4 %"}), 8.0, 0.2);
}

// A cabin uses 9 kWh a day: two days from half of a lead-acid bank with 15 % lost on the way ask for 9 x 2 /
// 0.5 x 1.15 = 41.4 kWh, at 48 V 862 Ah. The voltage at so slow a rate is 2 to 3 % above nominal.
TEST(OffGridHouse, EightHundredAndSixtyTwoAmpereHoursLastTwoDays) {
  app::RuntimeRequest request = request_of({"375 W", "flooded", "862 Ah", "50 %"});
  request.battery.voltage = "48 V";
  request.load.efficiency = "86.96 %";
  const auto response = answer_to(request);
  EXPECT_NEAR(response.figures.nominal_Wh, 41376.0, 1.0);
  EXPECT_NEAR(line(response, "Depth rule"), 48.0, 0.05);
  EXPECT_NEAR(response.answer.run.hours, 48.0, 0.05 * 48.0);
}

// A transceiver takes 1.5 A half of the time: 0.75 A x 24 h = 18 Ah. A battery of 18 Ah (20 h rate) gives 0.9
// A for 20 h, not "18 A over 20 h"; for a day at half depth it takes 36 Ah.
TEST(Transceiver, ADayTakesThirtySixAmpereHoursOfLeadAcid) {
  EXPECT_NEAR(hours_of({"0.9 A", "agm", "18 Ah", "protection"}), 20.0, 1.0);
  EXPECT_NEAR(hours_of({"0.75 A", "agm", "36 Ah", "50 %"}), 24.0, 0.7);
  EXPECT_LT(hours_of({"0.75 A", "agm", "18 Ah", "50 %"}), 12.3);
  EXPECT_LT(hours_of({"18 A", "agm", "18 Ah", "protection"}), 1.0);
}

// 63 Ah a day are 2.63 A: 100 Ah of iron-phosphate used to 90 % are 1.4 days, of lead-acid to half 0.8 day.
// 120 Ah at 1.66 A are 72 h "until completely discharged", and 36 h of advice.
TEST(CampingDay, LastsAsTheBuilderReckons) {
  EXPECT_NEAR(hours_of({"2.625 A", "lfp", "100 Ah", "90 %"}) / 24.0, 1.43, 0.05);
  EXPECT_NEAR(hours_of({"2.625 A", "flooded", "100 Ah", "50 %"}) / 24.0, 0.79, 0.03);
  const auto half = answer_to(request_of({"1.66 A", "flooded", "120 Ah", "50 %"}));
  EXPECT_NEAR(half.answer.naive_h, 72.3, 0.1);
  EXPECT_NEAR(half.answer.run.hours, 36.0, 1.0);
}

// An electric outboard takes 50 A: 100 Ah of lead-acid, exponent 1.2, are empty after 1.26 h (63 Ah), 50 Ah
// of iron-phosphate after 1.0 h. At 5 A half of the lead-acid is 10 h, and so are 50 Ah of iron-phosphate.
TEST(Outboard, FiftyAmpereHoursOfIronPhosphateEqualAHundredOfLeadAcid) {
  EXPECT_NEAR(hours_of({"50 A", "agm", "100 Ah", "protection"}), 1.26, 0.15);
  EXPECT_NEAR(hours_of({"50 A", "lfp", "50 Ah", "protection"}), 1.0, 0.06);
  const double lead_h = hours_of({"5 A", "agm", "100 Ah", "50 %"});
  const double iron_h = hours_of({"5 A", "lfp", "50 Ah", "protection"});
  EXPECT_NEAR(lead_h, 10.0, 0.3);
  EXPECT_NEAR(iron_h, 10.0, 0.5);
  // Its protection must bear the current: less than 50 A of it, and it opens.
  const auto small = answer_to(request_of({"50 A", "lfp", "25 Ah", "protection"}));
  EXPECT_EQ(small.answer.run.ending, advise::Ending::kOverCurrent);
  EXPECT_LT(small.answer.run.hours, 0.1);
}

// A roof air conditioner, 13 A at 120 V = 1560 W, behind 90 %: 1733 W or 144 A at 12 V. 300 Ah of
// iron-phosphate hold 2.2 h, to nine tenths 2.0 h; one battery that carries 100 A cannot.
TEST(AirConditioner, TwoHoursFromThreeHundredAmpereHours) {
  Asked asked{"1560 W", "lfp-12v-300ah", "", "protection"};
  app::RuntimeRequest request = request_of(asked);
  request.load.efficiency = "90 %";
  const auto all = answer_to(request);
  EXPECT_NEAR(all.answer.bank_W, 1733.0, 1.0);
  EXPECT_NEAR(line(all, "Inverter"), 2.2, 0.03);
  EXPECT_NEAR(all.answer.run.hours, 2.2, 0.12);
  request.load.depth = "90 %";
  EXPECT_NEAR(answer_to(request).answer.run.hours, 2.0, 0.1);
  request.battery.battery = "lfp-12v-100ah";
  const auto one = answer_to(request);
  EXPECT_EQ(one.answer.run.ending, advise::Ending::kOverCurrent);
  EXPECT_LT(one.answer.run.hours, 2.0 / 60.0);
}

// A used battery of 45 Ah was full after 13 Ah: 29 %. After a rest it stands at 13.35 V, 3.337 V a cell, as a
// sound one does: its voltage says nothing of its capacity.
TEST(UsedBattery, HoldsThirteenAmpereHoursAtASoundVoltage) {
  app::RuntimeRequest request = request_of({"2 A", "lfp", "45 Ah", "protection"});
  const auto sound = answer_to(request);
  request.battery.lost = "71.1 %";
  const auto worn = answer_to(request);
  EXPECT_NEAR(worn.figures.capacity_Ah, 13.0, 0.01);
  EXPECT_NEAR(line(worn, "Age") / worn.answer.naive_h, 0.289, 0.001);
  EXPECT_NEAR(worn.answer.run.hours, 6.5, 0.35);
  EXPECT_NEAR(sound.answer.run.hours / worn.answer.run.hours, 45.0 / 13.0, 0.15);
  // In use at half charge the two differ by some hundredths of a volt.
  request.start_charge = "50 %";
  const double worn_V = answer_to(request).answer.run.start_V;
  request.battery.lost.clear();
  EXPECT_NEAR(answer_to(request).answer.run.start_V, worn_V, 0.03);
}

// Three of 16 Ah after 700 nights at less than half depth hold 43 %: 20.6 Ah. At most 350 full cycles; a
// sound battery of this kind has then lost 5 to 10 %, cycles and 30 months together.
TEST(CheapBatteries, LostFarMoreThanASoundOneWouldHave) {
  app::RuntimeRequest request = request_of({"2 A", "lfp", "16 Ah", "protection", 3});
  request.battery.lost = "57 %";
  const auto response = answer_to(request);
  EXPECT_NEAR(response.figures.capacity_Ah, 20.6, 0.05);
  EXPECT_NEAR(response.answer.run.hours, 10.3, 0.5);
  constexpr double kWornBy = 0.2;
  const cell::LifeFigures& life = response.chemistry.life;
  const double by_cycles = kWornBy * 700.0 / ageing::cycles_at_depth(life, 0.5, ageing::Spread::kTypical);
  const double by_years = kWornBy * 2.5 / life.calendar_years.typical;
  EXPECT_GT(by_cycles + by_years, 0.05);
  EXPECT_LT(by_cycles + by_years, 0.10);
}

app::SwapRequest swap_of(const std::string& battery, const std::string& by) {
  app::SwapRequest request;
  request.battery.battery = battery;
  request.by = by;
  request.all = true;
  return request;
}

std::shared_ptr<const app::SwapResponse> answer_to(const app::SwapRequest& request) {
  auto response = app::swap_battery(request);
  if (response) return response.value();
  for (const auto& problem : response.problems()) ADD_FAILURE() << base::to_text(problem);
  return std::make_shared<const app::SwapResponse>();
}

// No complete battery of iron-phosphate above 165 Wh/kg or 350 Wh/L, none of lead-acid above 45 Wh/kg: more
// on a label is not there. Nothing that is offered as an equivalent says more.
TEST(ImpossibleCapacities, AreNotOfferedAsEquivalents) {
  for (const char* battery : {"agm-12v-98ah", "lfp-24v-100ah"}) {
    const auto answer = answer_to(swap_of(battery, "energy"));
    EXPECT_FALSE(answer->rows.empty());
    for (const app::SwapRow& row : answer->rows) {
      const bank::BankFigures& figures = row.compared.figures;
      const bool lead = row.compared.bank.chemistry->family == cell::Family::kLeadAcid;
      if (!lead && row.compared.bank.chemistry->id != "lfp") continue;
      EXPECT_LE(figures.nominal_Wh / figures.mass_kg.typical, lead ? 45.0 : 165.0) << row.name;
      EXPECT_LT(figures.nominal_Wh / figures.volume_L.typical, 350.0) << row.name;
    }
  }
}

// Lead-acid to half: 0.5 x 500 to 800 cycles = 250 to 400 times its capacity in its life; iron-phosphate to
// 80 %: 0.8 x 2000 to 4000 = 1600 to 3200. Between them 4 to 13 times.
TEST(LifeEnergy, OfIronPhosphateIsFourToThirteenTimesThatOfLeadAcid) {
  const auto answer = answer_to(swap_of("flooded-12v-100ah", "energy"));
  const auto per_rated = [](const advise::Compared& c) { return c.life_Wh.typical / c.figures.nominal_Wh; };
  const double lead = per_rated(answer->incumbent);
  EXPECT_GT(lead, 250.0);
  EXPECT_LT(lead, 400.0);
  int seen = 0;
  for (const app::SwapRow& row : answer->rows) {
    if (row.compared.bank.chemistry->id != "lfp") continue;
    ++seen;
    EXPECT_GT(per_rated(row.compared), 1600.0);
    EXPECT_LT(per_rated(row.compared), 3200.0);
    EXPECT_GT(per_rated(row.compared) / lead, 4.0);
    EXPECT_LT(per_rated(row.compared) / lead, 13.0);
  }
  EXPECT_GT(seen, 0);
}

// By usable energy at a house load 100 Ah of lead-acid, used to half, are 50 to 65 Ah of iron-phosphate, used
// to 80 %.
TEST(Equivalent, OfAHundredAmpereHoursOfLeadAcidIsASmallIronPhosphate) {
  app::SwapRequest request = swap_of("agm-12v-98ah", "energy");
  request.all = false;
  const auto answer = answer_to(request);
  const auto iron = std::find_if(answer->rows.begin(), answer->rows.end(),
                                 [](const auto& row) { return row.compared.bank.chemistry->id == "lfp"; });
  ASSERT_NE(iron, answer->rows.end());
  EXPECT_EQ(iron->compared.bank.battery->id, "lfp-12v-60ah");
  EXPECT_LT(iron->compared.figures.mass_kg.typical, 0.4 * answer->incumbent.figures.mass_kg.typical);
}

TEST(Equivalent, AskedInTheColdBlocksTheChargeOfLithium) {
  app::SwapRequest request = swap_of("agm-12v-98ah", "energy");
  request.load.temperature = "-5 °C";
  const auto answer = answer_to(request);
  for (const app::SwapRow& row : answer->rows) {
    if (row.compared.bank.chemistry->id != "lfp") continue;
    const auto cold = std::find_if(row.changes.begin(), row.changes.end(), [](const advise::Change& change) {
      return change.topic == advise::Topic::kColdCharging;
    });
    ASSERT_NE(cold, row.changes.end());
    EXPECT_EQ(cold->urgency, advise::Urgency::kMust);
  }
}

// Somebody says "48 V" of sixteen cells and no voltage of a battery for 12 V.
TEST(Asking, TakesTheVoltageAsItIsSaid) {
  app::RuntimeRequest request = request_of({"60 W", "lfp", "105 Ah", ""});
  EXPECT_NEAR(answer_to(request).figures.nominal_V, 12.8, 1e-9);
  request.battery.voltage = "48 V";
  EXPECT_NEAR(answer_to(request).figures.nominal_V, 51.2, 1e-9);
  request.battery.voltage = "36 V";
  EXPECT_NEAR(answer_to(request).figures.nominal_V, 35.2, 1e-9);  // eleven cells
  EXPECT_NEAR(answer_to(request_of({"60 W", "flooded", "110 Ah", ""})).figures.nominal_V, 12.0, 1e-9);
}

TEST(Asking, BringsEveryProblemAtOnce) {
  app::RuntimeRequest request = request_of({"60 Wh", "agn-12v-98ah", "", "150 %"});
  const auto response = app::runtime(request);
  ASSERT_FALSE(response.ok());
  EXPECT_EQ(response.problems().size(), 3U);
  app::SwapRequest swap = swap_of("agm", "weight");
  swap.tray = "330 x 175 mm";
  const auto wrong = app::swap_battery(swap);
  ASSERT_FALSE(wrong.ok());
  EXPECT_EQ(wrong.problems().size(), 3U);
}

// Below its temperature of discharge an iron-phosphate battery gives nothing, and nothing equals that.
TEST(Asking, WhatEqualsNothingIsSaidToBeNothing) {
  app::SwapRequest request = swap_of("lfp-12v-100ah", "energy");
  request.load.temperature = "-30 °C";
  const auto answer = answer_to(request);
  EXPECT_TRUE(answer->rows.empty());
  EXPECT_EQ(answer->incumbent.run.ending, advise::Ending::kTooCold);
  EXPECT_NE(answer->cautions.front().find("gives nothing"), std::string::npos);
  request.by = "mass";
  EXPECT_FALSE(answer_to(request)->rows.empty());
}

TEST(Asking, ATrayIsItsThreeSides) {
  app::SwapRequest request = swap_of("agm-12v-98ah", "room");
  request.tray = "330 x 175 x 220 mm";
  const auto answer = answer_to(request);
  EXPECT_NEAR(answer->target, 12.705, 1e-9);
}

}  // namespace
}  // namespace voltwright::whole
