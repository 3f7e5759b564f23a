// The same keys when they are wrong: line and column of the problem, and words that its text must hold.
#include <gtest/gtest.h>

#include <string>

#include "tests/unit/files/plan_charging_fixture.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

int line_of(const std::string& text, std::size_t at) {
  int line = 1;
  for (std::size_t i = 0; i < at; ++i) line += text[i] == '\n' ? 1 : 0;
  return line;
}

/// A change to the plan above (first occurrence of `from` becomes `to`), words of the one problem that it
/// must give, and how many lines below the change that lies.
struct Row {
  const char* from;
  const char* to;
  int column;
  const char* words;
  int lines_below = 0;
};

class BrokenCharging : public testing::TestWithParam<Row> {};

TEST_P(BrokenCharging, TellsPlaceAndRemedy) {
  const Row& row = GetParam();
  std::string text = charging_plan();
  const std::size_t at = text.find(row.from);
  ASSERT_NE(at, std::string::npos) << row.from;
  text.replace(at, std::string(row.from).size(), row.to);
  const base::Result<ReadPlan> read = read_with_stages(text);
  ASSERT_FALSE(read.ok()) << row.to;
  const base::Problem& p = read.problems().front();
  EXPECT_EQ(read.problems().size(), 1U) << base::to_text(read.problems().back());
  EXPECT_NE(base::to_text(p).find(row.words), std::string::npos) << base::to_text(p);
  EXPECT_EQ(p.where.file, "plan.toml");
  EXPECT_EQ(p.where.line, line_of(text, at) + row.lines_below) << base::to_text(p);
  EXPECT_EQ(p.where.column, row.column) << base::to_text(p);
}

// Without its absorption voltage the float of the plan has nothing to lie below.
constexpr const char* kVoltages = "absorption = \"14.3 V\"\nfloat = \"13.6 V\"\n";

INSTANTIATE_TEST_SUITE_P(
    Chargers, BrokenCharging,
    testing::Values(Row{kVoltages, "absorption = \"10 V\"\n", 14, "0.9 to 1.5 times the system voltage"},
                    Row{kVoltages, "absorption = \"18.1 V\"\n", 14, "0.9 to 1.5 times the system voltage"},
                    Row{kVoltages, "absorption = \"14.3 A\"\n", 14, "A voltage is wanted"},
                    Row{"float = \"13.6 V\"", "float = \"14.4 V\"", 9, "float above its absorption"},
                    Row{"\"-24 mV/K\"", "\"24 mV/K\"", 16, "-10 to 0 mV/K for each volt"},
                    Row{"\"-24 mV/K\"", "\"-130 mV/K\"", 16, "-10 to 0 mV/K for each volt"},
                    Row{"\"-24 mV/K\"", "\"-24 mV\"", 16, "A voltage for each kelvin is wanted"},
                    Row{"\"90 min\"", "\"49 h\"", 22, "0 h to 48 h"},
                    Row{"\"3 mohm\"", "\"0 mohm\"", 8, "0.1 mohm to 1 ohm"},
                    Row{"wakes = true", "wakes = \"yes\"", 9, "true or false"},
                    Row{"\"30 days\"", "\"12 h\"", 18, "1 day to 1 year"},
                    Row{"\"30 days\"", "\"2 years\"", 18, "1 day to 1 year"},
                    Row{"profile = \"agm\"", "profile = \"agn\"", 11, "Near: agm"},
                    Row{"profile = \"agm\"", "profile = \"lithium-sulfur\"", 11,
                        "no chemistry \"lithium-sulfur\" with batteries"},
                    Row{"profile = \"agm\"", "profil = \"agm\"", 1, "Did you mean profile?"},
                    Row{kVoltages, "", 1, "`absorption` is missing", -1}));

INSTANTIATE_TEST_SUITE_P(
    Sources, BrokenCharging,
    testing::Values(
        Row{"[mains]\noutput_limit = \"20 A\"\n", "", 1, "no source \"mains\" to set a charger for", 13},
        Row{"[chargers.mains]", "[chargers.gas]", 11, "There is no key \"gas\""},
        Row{"low_share = \"60 %\"\n", "", 1, "`low_share` is missing", -5},
        Row{"low_share = \"60 %\"", "low_share = \"101 %\"", 13, "0 % to 100 %"},
        Row{"alternator_low_voltage = \"12.6 V\"", "alternator_low_voltage = \"9 V\"", 26, "10 V to 60 V"},
        Row{"input_lock_out = \"11.5 V\"", "input_lock_out = \"7 V\"", 18, "8 V to 60 V"},
        Row{"heater_from = \"surplus\"", "heater_from = \"sun\"", 15, "\"bank\" or \"surplus\""},
        Row{"\"15 min\"", "\"30 s\"", 20, "1 min to 12 h"}, Row{"\"2 h\"", "\"13 h\"", 20, "1 min to 12 h"}));

INSTANTIATE_TEST_SUITE_P(
    FarLoads, BrokenCharging,
    testing::Values(Row{"cut_off = \"10.5 V\"", "cut_off = \"7 V\"", 11,
                        "0.6 to 1.4 times the system voltage"},
                    Row{"restart = \"12.6 V\"", "restart = \"10.4 V\"", 11, "restart below its cut-off"},
                    Row{"area = \"2.5 mm2\"", "area = \"2.5 mm\"", 35, "Choose mm2 or AWG"},
                    Row{"area = \"2.5 mm2\", ", "", 9, "`area` is missing"},
                    Row{"\"20 mohm\"", "\"2 ohm\"", 57, "0 to 1 ohm"},
                    Row{"contacts = \"20 mohm\"", "contact = \"20 mohm\"", 46, "Did you mean contacts?"},
                    Row{"one_way = \"5 m\", area", "one_way = \"5 mm\", area", 21, "1 cm to 100 m"}));

INSTANTIATE_TEST_SUITE_P(
    Incumbent, BrokenCharging,
    testing::Values(Row{"weakest_cell = \"4 %\"", "weakest_cell = \"91 %\"", 16, "0 % to 90 %"},
                    Row{"fullest_cell = \"1.5 %\"", "fullest_cell = \"1.5 A\"", 16, "A is a current"},
                    Row{"resistance = 2.5", "resistance = 51", 14, "0.5 to 50"},
                    Row{"resistance = 2.5", "resistance = \"2.5\"", 14, "number"}));

TEST(PlanFarLoads, AreAtMostFour) {
  std::string text = short_plan();
  for (int i = 1; i <= 4; ++i) {
    text += "[[load]]\nname = \"Far\"\npower = \"5 W\"\nalways = true\ncut_off = \"11 V\"\n";
  }
  EXPECT_TRUE(read_with_stages(text).ok());
  text +=
      "[[load]]\nname = \"Fifth\"\npower = \"5 W\"\nalways = true\ncable = { one_way = \"5 m\", area = \"1 "
      "mm2\" }\n";
  const base::Result<ReadPlan> read = read_with_stages(text);
  ASSERT_FALSE(read.ok());
  ASSERT_EQ(read.problems().size(), 1U);
  const base::Problem& p = read.problems().front();
  EXPECT_EQ(p.what, "Too many loads have a cable or a cut-off of their own.");
  EXPECT_EQ(p.given, "5");
  EXPECT_EQ(p.limit, "at most 4");
  EXPECT_EQ(p.where.line, 7);  // the first of the loads
}

TEST(PlanFarLoads, CannotHangOnTheInverter) {
  const std::string kettle =
      "[inverter]\nrated = \"1500 W\"\nidle = \"10 W\"\n\n[cables.inverter]\none_way = "
      "\"1 m\"\narea = \"50 mm2\"\n\n[[load]]\nappliance = \"kettle\"\n";
  const std::string cut_off = short_plan() + kettle + "cut_off = \"11 V\"\n";
  const base::Result<ReadPlan> read = read_with_stages(cut_off);
  ASSERT_FALSE(read.ok());
  ASSERT_EQ(read.problems().size(), 1U);
  const base::Problem& p = read.problems().front();
  EXPECT_EQ(p.what, "A load on the inverter has no cable of its own to the bank.");
  EXPECT_EQ(p.where.line, line_of(cut_off, cut_off.find("cut_off = \"11 V\"")));
  EXPECT_NE(p.remedy.find("[cables.inverter]"), std::string::npos);

  const std::string cable = short_plan() + kettle + "cable = { one_way = \"5 m\", area = \"4 mm2\" }\n";
  const base::Result<ReadPlan> with_cable = read_with_stages(cable);
  ASSERT_FALSE(with_cable.ok());
  EXPECT_EQ(with_cable.problems().front().where.line, line_of(cable, cable.find("cable = {")));
  EXPECT_EQ(with_cable.problems().front().field, "load[2].cable");
}

}  // namespace
}  // namespace voltwright::files
