// Claims at the shop, and paper.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/myths/bench.h"
#include "engine/ageing/life.h"
#include "engine/bank/builder.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Buying and paper";
constexpr double kWarm_C = 25.0;

Myth thousands_of_cycles(const MythBench& bench) {
  const cell::LifeFigures& life = bench.chemistry("lfp").life;
  constexpr double kNights = 700.0;
  constexpr double kDepth = 0.5;
  constexpr double kYears = 2.5;
  constexpr double kEndLoss = 20.0;  // of the capacity, where life is counted to 80 %
  constexpr double kHours_a_year = 8766.0;
  const double by_cycles = kNights / ageing::cycles_at_depth(life, kDepth, ageing::Spread::kTypical);
  const auto by_calendar = [&](double temperature_C) {
    return ageing::calendar_wear_per_h(life, temperature_C) * kYears * kHours_a_year;
  };
  const double loss = kEndLoss * (by_cycles + by_calendar(kWarm_C));
  const double hot_loss = kEndLoss * (by_cycles + by_calendar(40.0));
  Myth m;
  m.number = 26;
  m.id = "thousands-of-cycles";
  m.family = kFamily;
  m.title = "Thousands of cycles on the label prove a long life";
  m.claim = "It says thousands of cycles, so it lasts for decades.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = loss;
  m.unit = "% of the capacity";
  m.decimals = 1;
  m.answer = fmt::format(
      "A sound iron-phosphate battery loses {:.1f} % in 700 half cycles and two and a half years; one cheap "
      "make had lost 57 %.",
      loss);
  m.working = {fmt::format("700 nights at half depth: at most {:.0f} full equivalents. Cycles to 80 % at "
                           "that depth, typical: {:.0f}; so "
                           "{:.0f} % of the life by cycles.",
                           kNights * kDepth, ageing::cycles_at_depth(life, kDepth, ageing::Spread::kTypical),
                           100.0 * by_cycles),
               fmt::format("Calendar at 25 °C, {:.1f} of {:.0f} years: {:.0f} %. Together {:.0f} % of the "
                           "20 % that count as worn out: "
                           "{:.1f} % of the capacity.",
                           kYears, life.calendar_years.typical, 100.0 * by_calendar(kWarm_C),
                           100.0 * (by_cycles + by_calendar(kWarm_C)), loss),
               fmt::format("At 40 °C the calendar alone makes it {:.0f} %. Ask for depth, temperature, "
                           "rate and the end that is "
                           "counted to; a number without them says nothing.",
                           hot_loss)};
  m.nearly_true =
      "For cells with a test report, kept at moderate charge and temperature, thousands are real.";
  m.sources = {
      {"preger2020", "cycles against depth"},
      {"naumann2018", "calendar loss against temperature"},
      {"", "three batteries of 16 Ah with 43 % left after 30 months: a practitioner's report, restated"}};
  return m;
}

double cylinder_L(const cell::CellSize& size) {
  const double radius_mm = 0.5 * size.diameter_mm;
  return std::numbers::pi * radius_mm * radius_mm * size.height_mm * 1e-6;
}

Myth impossible_capacity(const MythBench& bench) {
  const cell::CellFormat& rich = bench.cell("nca-21700");
  const double rich_Ah_L = rich.capacity_Ah / cylinder_L(rich.size);
  const double small_L = cylinder_L({.diameter_mm = 18.0, .height_mm = 65.0});
  const double most_Ah = rich_Ah_L * small_L;
  const bank::Battery& large = bench.battery("lfp-12v-300ah");
  const double energy_Wh = large.nominal_V * large.capacity_Ah;
  constexpr double kCase_kg = 20.0;
  Myth m;
  m.number = 27;
  m.id = "impossible-capacity";
  m.family = kFamily;
  m.title = "10 Ah in an 18650, 300 Ah in 20 kg";
  m.claim = "This 18650 cell has 10 Ah, and this 300 Ah battery weighs only 20 kg.";
  m.verdict = MythVerdict::kWrong;
  m.value = most_Ah;
  m.unit = "Ah";
  m.decimals = 1;
  m.answer =
      fmt::format("As much as the best cells hold for their volume makes {:.1f} Ah in an 18650.", most_Ah);
  m.working = {fmt::format("A nickel-rich 21700 of {:.0f} Ah fills {:.1f} mL: {:.0f} Ah/L. An 18650 has "
                           "{:.1f} mL: {:.1f} Ah. 10 Ah "
                           "would be {:.1f} times as dense.",
                           rich.capacity_Ah, 1e3 * cylinder_L(rich.size), rich_Ah_L, 1e3 * small_L, most_Ah,
                           10.0 / most_Ah),
               fmt::format("300 Ah at 12.8 V are {:.0f} Wh; in {:.0f} kg that is {:.0f} Wh/kg.", energy_Wh,
                           kCase_kg, energy_Wh / kCase_kg),
               fmt::format("Iron-phosphate batteries lie between {:.0f} and {:.0f} Wh/kg (all but one in ten "
                           "of 69): such a battery "
                           "weighs {:.0f} to {:.0f} kg. Weigh it, and test it with a timed discharge.",
                           energy_Wh / large.mass_kg.max, energy_Wh / large.mass_kg.min, large.mass_kg.min,
                           large.mass_kg.max)};
  m.nearly_true = "Cells become denser by a few per cent a year: ask for a test report of this very cell.";
  m.caution = "Cells with a false label are often worn or without protection: do not use them.";
  m.sources = {{"cellSheets", "capacity of nickel-rich 21700 cells"},
               {"cellDesignation", "size of 18650 and 21700"},
               {"genericBatteries", "mass of iron-phosphate batteries"}};
  return m;
}

Myth insurers_forbid(const MythBench& bench) {
  const auto figures = bank::bank_figures(bench.battery("lfp-12v-100ah"), {1, 1, 0.0});
  constexpr double kPolicy_Wh = 100.0;
  Myth m;
  m.number = 30;
  m.id = "insurers-forbid-lithium";
  m.family = kFamily;
  m.title = "Insurers forbid lithium, or do not care";
  m.claim = "Insurers and standards forbid lithium on board. Or: nobody asks.";
  m.verdict = MythVerdict::kWrong;
  m.value = figures.nominal_Wh;
  m.unit = "Wh";
  m.decimals = 0;
  m.answer = fmt::format(
      "One battery of 12.8 V and 100 Ah holds {:.0f} Wh, {:.0f} times the 100 Wh from which some policies "
      "set conditions; "
      "they ask for paper.",
      figures.nominal_Wh, figures.nominal_Wh / kPolicy_Wh);
  m.working = {fmt::format("12.8 V × 100 Ah = {:.0f} Wh. Some policies ask that any lithium battery above "
                           "100 Wh be charged only "
                           "attended.",
                           figures.nominal_Wh),
               "What is asked for: the chemistry by its name (iron-phosphate, not \"lithium\"), certificates "
               "of cells or battery, a "
               "description of its protection, chargers that suit it, a drawing with ratings, cables and "
               "fuses as built, and who "
               "did the work.",
               "Tell the insurer before the change and keep the answer."};
  m.nearly_true = "A single policy may exclude it. Only its own text tells.";
  m.caution = "This is no legal advice: the local code, the surveyor and the policy decide.";
  m.sources = {
      {"",
       "what insurers and surveyors ask: a survey of public texts, restated; common practice, no source"}};
  return m;
}

}  // namespace

void add_purchase_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(thousands_of_cycles(bench));
  list.push_back(impossible_capacity(bench));
  list.push_back(insurers_forbid(bench));
}

}  // namespace voltwright::app
