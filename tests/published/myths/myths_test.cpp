// Each number of the handbook's misconceptions against what was published, measured or is arithmetic.
#include <gtest/gtest.h>

#include <set>

#include "app/myths/bench.h"
#include "files/references.h"

namespace voltwright::published {
namespace {

const files::Catalogue& catalogue() {
  static const auto kCatalogue = files::read_catalogue().value();
  return kCatalogue;
}

const std::vector<app::Myth>& list() {
  static const auto kList = app::myths(catalogue()).value();
  return kList;
}

/// What a number is held against, with its tolerance and where it is from.
struct Expected {
  int number;
  double value;
  double tolerance;
  const char* source;
};

constexpr Expected kExpected[] = {
    {1, 20.0, 0.001, "definition of the 20 h rate"},
    {2, 5.0, 0.001, "definition of the watt: 60 W / 12 V"},
    {3, 550.0, 50.0, "500 to 600 Wh of a 100 Ah lead-acid battery at half depth; common practice, no source"},
    {4, 30.0, 10.0, "20 to 40 % of the time at 20 degC; common practice, no source"},
    {5, 75.0, 0.1, "arithmetic, 40 W x 24 h / 12.8 V; idle power as owners measured it"},
    {6, 1.38, 0.005, "arithmetic, 8 A x 2 x 5 m x 0.017241 ohm mm2/m / 1 mm2"},
    {7, 0.21, 0.005, "a public chart: 9.1 m of AWG 10 one way, 3.5 A, 1.7 % of 12 V"},
    {8, 12.2, 0.1, "12.2 V at half charge; common practice, no source"},
    {9, 60.0, 25.0, "well short of full, however long; a practitioner's report, restated"},
    {10, 66.1, 0.5, "90 - 10 x (0.29 A x 24 h / 300 Ah) - 2.5 % a month of 90 %; lithiumReference"},
    {11, 0.33, 0.05, "(14.2 - 13.2) V / 15 mohm on 200 Ah; mean of measured installations 0.33C"},
    {12, 2.0, 0.1, "arithmetic, 120 Ah / 60 A; 60 % of the label common practice, no source"},
    {13, 5.0, 1.0, "(13.6 - 13.2) V / 80 mohm; owners see a few amperes"},
    {14, 0.28, 0.005, "5 W / 18 V"},
    {15, 8.45, 0.05, "8.45 full-sun hours with a tracking controller, a public table, restated"},
    {16, 13.5, 0.001, "arithmetic, 0.30 %/K x 45 K"},
    {17, 5.0, 1.0, "13.3 V over two batteries of 5 mohm with their protection: about 5 kA"},
    {18, 195.5, 28.5, "2000 W at 12 V: 167 to 224 A, from no loss at 12 V to 85 % at 10.5 V"},
    {19, 14.0, 4.0, "vrlaSheet, 100 Ah: 10 min at 170 A to 1.80 V a cell, 15 min at 146 A, 20 min at 128 A"},
    {20, 71.0, 15.0,
     "76, 69 and 69 % of 25 °C at 1C and -20 °C in a public data set; the record, held, 0.5 to 0.8"},
    {21, 150.0, 0.1, "arithmetic, 80 W x 24 h / 12.8 V"},
    {22, -10.8, 1.5, "acidFreezing: -8 degC at density 1.100, -15 degC at 1.150; empty is 1.120"},
    {23, 150.0, 0.1, "arithmetic, 100 A / (200 / 300)"},
    {24, 3.0, 0.001, "closed form of four alike on the diagonal, 1 + 2 l / R with l = R"},
    {25, 2.5, 1.5, "the last per cents take hours; common practice, no source"},
    {26, 7.5, 2.5, "a sound one should have lost 5 to 10 %; common practice, no source"},
    {27, 3.5, 0.1, "3.5 Ah, the most that independent tests of 18650 cells found"},
    {28, 15.0, 10.0, "lfpLoggedBank: the slope gave 13 mA where the shunt gave 6 to 9"},
    {29, 13.349, 0.05, "13.349 V after 20 h with 28 % of the capacity left; a practitioner's report"},
    {30, 1280.0, 0.1, "arithmetic, 12.8 V x 100 Ah"},
};

TEST(Myths, EveryNumberIsMet) {
  ASSERT_EQ(list().size(), std::size(kExpected));
  for (std::size_t i = 0; i < list().size(); ++i) {
    const app::Myth& myth = list()[i];
    ASSERT_EQ(myth.number, kExpected[i].number);
    EXPECT_NEAR(myth.value, kExpected[i].value, kExpected[i].tolerance)
        << myth.id << ": " << kExpected[i].source;
  }
}

// acidFreezing, density against freezing point; charge from leadOcvTable's densities 1.120, 1.155, 1.190,
// 1.225 and 1.265 in quarters.
TEST(Myths, AcidFreezesAsTheManualSays) {
  const cell::Curve& freezing_C = catalogue().chemistry("flooded")->freezing_C;
  constexpr double kBy_charge[][2] = {
      {1.0, -59.0}, {0.5 + 0.25 * 10.0 / 35.0, -27.0}, {0.25 * 30.0 / 35.0, -15.0}};
  for (const auto& [charge, frozen_C] : kBy_charge) {
    EXPECT_NEAR(base::curve_at(freezing_C, charge, 0.0), frozen_C, 1.0) << charge;
  }
}

// Every entry is complete, has a name of its own, and cites what the bibliography has.
TEST(Myths, EntriesAreComplete) {
  std::set<std::string> ids;
  const auto in_bibliography = [](std::string_view key) {
    return files::reference_lines(std::span(&key, 1)).size() == 1;
  };
  for (const app::Myth& myth : list()) {
    EXPECT_TRUE(ids.insert(myth.id).second) << myth.id;
    for (const std::string* text :
         {&myth.family, &myth.title, &myth.claim, &myth.answer, &myth.unit, &myth.nearly_true}) {
      EXPECT_FALSE(text->empty()) << myth.id;
    }
    EXPECT_GE(myth.working.size(), 2U) << myth.id;
    ASSERT_FALSE(myth.sources.empty()) << myth.id;
    for (const app::MythSource& source : myth.sources) {
      EXPECT_FALSE(source.note.empty()) << myth.id;
      EXPECT_TRUE(source.key.empty() || in_bibliography(source.key)) << myth.id << ": " << source.key;
    }
  }
}

TEST(Myths, MissingRecordIsReported) {
  files::Catalogue poorer = catalogue();
  std::erase_if(poorer.appliances, [](const auto& appliance) { return appliance.id == "fridge-50l"; });
  std::erase_if(poorer.chemistries, [](const auto& chemistry) { return chemistry.id == "lfp"; });
  const auto result = app::myths(poorer);
  ASSERT_FALSE(result);
  ASSERT_EQ(result.problems().size(), 2U);
  EXPECT_EQ(result.problems()[0].given, "lfp");
  EXPECT_EQ(result.problems()[1].given, "fridge-50l");
}

// The list follows the records: another cell, another number.
TEST(Myths, NumbersFollowTheRecords) {
  files::Catalogue changed = catalogue();
  for (auto& cell : changed.cells) {
    if (cell.id == "nca-21700") cell.capacity_Ah *= 2.0;
  }
  const auto result = app::myths(changed);
  ASSERT_TRUE(result);
  EXPECT_NEAR(result.value()[26].value, 2.0 * list()[26].value, 1e-9);
  EXPECT_NE(result.value()[26].answer, list()[26].answer);
}

}  // namespace
}  // namespace voltwright::published
