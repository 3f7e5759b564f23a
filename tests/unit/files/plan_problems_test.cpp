// Broken plans: each row names the line and column of the problem and words that its text must hold.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

/// A change to the full plan (first occurrence of `from` becomes `to`) and the one problem it must give: its
/// column, words of it, and how many lines below the changed one it lies.
struct Row {
  const char* from;
  const char* to;
  int column;
  const char* words;
  int lines_below = 0;
};

int line_of(const std::string& text, std::size_t at) {
  int line = 1;
  for (std::size_t i = 0; i < at; ++i) line += text[i] == '\n' ? 1 : 0;
  return line;
}

class BrokenPlan : public testing::TestWithParam<Row> {};

TEST_P(BrokenPlan, TellsPlaceAndRemedy) {
  const Row& row = GetParam();
  std::string text = full_plan();
  const std::size_t at = text.find(row.from);
  ASSERT_NE(at, std::string::npos) << row.from;
  text.replace(at, std::string(row.from).size(), row.to);
  const base::Result<ReadPlan> read = read_small(text);
  ASSERT_FALSE(read.ok()) << row.to;
  const base::Problem& p = read.problems().front();
  EXPECT_EQ(read.problems().size(), 1U) << base::to_text(p) << "\n" << base::to_text(read.problems().back());
  EXPECT_NE(base::to_text(p).find(row.words), std::string::npos) << base::to_text(p);
  EXPECT_EQ(p.where.file, "plan.toml");
  EXPECT_EQ(p.where.line, line_of(text, at) + row.lines_below) << base::to_text(p);
  EXPECT_EQ(p.where.column, row.column) << base::to_text(p);
}

INSTANTIATE_TEST_SUITE_P(
    TopLevel, BrokenPlan,
    testing::Values(
        Row{"format = 1", "format = 2", 10, "This program reads plan files of format 1."},
        Row{"format = 1", "format = \"1\"", 10, "Write format = 1."},
        Row{"seasons = 200", "sesons = 200", 1, "Did you mean seasons?"},
        Row{"seasons = 200", "seasons = 0", 11, "1 to 100000"},
        Row{"seasons = 200", "seasons = \"200\"", 11, "A whole number is wanted"},
        Row{"seed = 7", "seed = -7", 8, "A whole number is wanted"},
        Row{"\"12 V\"", "\"36 V\"", 18, "12 V, 24 V or 48 V"},
        Row{"\"12 V\"", "12", 18, "The unit is missing: a voltage is wanted"},
        Row{"currency = \"EUR\"", "currency = \"euro\"", 12, "three capital letters"},
        Row{"depth_rule = \"practice\"", "depth_rule = \"practise\"", 14, "Did you mean \"practice\"?"},
        Row{"prefer = \"cost per year\"", "prefer = \"cost\"", 10, "Did you mean \"cost per year\"?"},
        Row{"seed = 7", "weather_model = \"fair\"", 17, "\"matrices\" or \"exponential\""},
        Row{"prefer = \"cost per year\"", "prefer = true", 10, "\"price\" or \"mass\""}));

INSTANTIATE_TEST_SUITE_P(
    LimitsAndBank, BrokenPlan,
    testing::Values(
        Row{"mass = \"95 kg\"", "mass = \"95 A\"", 8, "A mass is wanted, such as 95 kg; A is a current."},
        Row{"mass = \"95 kg\"", "mass = \"-95 kg\"", 8, "0.1 kg to 50 t"},
        Row{"price = \"3000 EUR\"", "price = \"3000 USD\"", 9, "The plan counts in EUR, not in USD."},
        Row{"price = \"3000 EUR\"", "price = 3000", 9, "The currency is missing."},
        Row{"chance_of_shortfall = \"5 %\"", "chance_of_shortfall = \"5\"", 23, "0 % to 100 %"},
        Row{"place = \"heated box\"", "place = \"box\"", 9, "is not one of the words"},
        Row{"heater_power = \"60 W\"", "heater_power = \"0 W\"", 16, "heated with no power"},
        Row{"heater_power = \"60 W\"", "heater_power = \"nan W\"", 16, "starts with a number"},
        Row{"\"50 mm2\"", "\"50 mm\"", 8, "50 mm of what? Choose mm2 or AWG."},
        Row{"one_way = \"1.5 m\"", "one_way = 1.5", 11, "a length is wanted, such as 4.2 m"},
        Row{"rated = \"2 kW\"", "rated = \"5 kW\"", 9, "surge", 1},
        Row{"idle = \"18 W\"", "idle = [18]", 8, "written as a text"},
        Row{"cut_off = \"10.5 V\"", "cut_off = \"13 V\"", 11, "restart", 1}));

INSTANTIATE_TEST_SUITE_P(
    Loads, BrokenPlan,
    testing::Values(Row{"\"0,005 kW\"", "\"5 Ah\"", 9, "A power is wanted, such as 45 W; Ah is a charge."},
                    Row{"\"0,005 kW\"", "\"1,005 W\"", 9, "thousands or decimals"},
                    Row{"\"0,005 kW\"", "\"5 kw\"", 9, "Did you mean kW?"},
                    Row{"hours = \"4 h/day\"", "hours = \"4 h\"", 9, "Did you mean 4 h/day?"},
                    Row{"hours = \"4 h/day\"", "hours = \"25 h/day\"", 9, "24 h/day"},
                    Row{"from = \"18:00\"", "from = \"25:00\"", 8, "A time of day is wanted"},
                    Row{"count = 6", "count = -6", 9, "0.01 to 1000"},
                    Row{"need = \"comfort\"", "need = \"luxury\"", 8, "\"essential\" or \"comfort\""},
                    Row{"each = \"1 min\"", "each = \"2 h\"", 10, "longer than there is time", -1},
                    Row{"always = true", "always = false", 10, "Write hours, window, events or cooling"},
                    Row{"always = true", "always = true\nhours = \"4 h/day\"", 9, "contradict each other", 1},
                    Row{"cop = 1.6", "cap = 1.6", 55, "Did you mean cop?"},
                    Row{"surge = \"x2\"", "surge = \"2 W\"", 9, "A factor on the running power"}));

INSTANTIATE_TEST_SUITE_P(
    Sources, BrokenPlan,
    testing::Values(Row{"peak = \"175 W\"", "peak = \"300 W\"", 19, "not the peak power"},
                    Row{"\"9.4 A\"", "\"8.0 A\"", 124, "not below the short-circuit current"},
                    Row{"\"-0.35 %/K\"", "\"-0.35 %\"", 147, "-0.35 %/K"},
                    Row{"flat = true", "flat = true\ntilt = \"30 deg\"", 8, "A flat array has no tilt", 1},
                    Row{"flat = true", "tilt = \"30 deg\"", 1, "`azimuth` is missing", -3},
                    Row{"in_parallel = 2", "in_parallel = 2.5", 15, "A whole number is wanted"},
                    Row{"coupling = \"dc-dc\"", "coupling = \"dcdc\"", 12, "Did you mean \"dc-dc\"?"},
                    Row{"output_limit = \"25 A\"", "output_limit = \"25 W\"", 16, "W is a power"}));

INSTANTIATE_TEST_SUITE_P(
    Journey, BrokenPlan,
    testing::Values(Row{"to = 2026-10-31", "to = 2026-10-01", 6,
                        "The leg ends on 1 October 2026, before it begins on 20 October 2026."},
                    Row{"to = 2026-10-31", "to = \"31.10.2026\"", 6, "written year-month-day"},
                    Row{"days = 45", "days = 45\nfrom = 2026-11-03", 8,
                        "Between leg 1, which ends on 31 October 2026, and leg 2", 1},
                    Row{"days = 45", "days = 45\nfrom = 2026-10-31", 8, "lasts through 31 October 2026", 1},
                    Row{"days = 45", "days = 45\nto = 2027-01-01", 8, "both say when the leg ends"},
                    Row{"lat = 59.91", "lat = 159.91", 7, "-90 to 90 deg"},
                    Row{"zone = \"Europe/Oslo\"", "zone = \"Europe/Olso\"", 8, "Near: Europe/Oslo"},
                    Row{"shore = \"22:00-06:00\"", "shore = \"night\"", 9, "Hours of the day are wanted"},
                    Row{"drive = \"1.5 h/day\"", "drive = \"20 h/day\"", 9, "run past midnight"},
                    Row{"occupied = true", "occupied = 1", 12, "true or false"}));

INSTANTIATE_TEST_SUITE_P(
    Banks, BrokenPlan,
    testing::Values(Row{"\"agm-12v-98ah\"", "\"agm-12v-98\"", 11, "Near: agm-12v-98ah"},
                    Row{"lost_capacity = \"15 %\"", "lost_capacity = \"150 %\"", 17, "0 % to 95 %"},
                    Row{"\"lfp\", \"agm\"", "\"lfp\", \"agn\"", 23, "Near: agm"},
                    Row{"\"lfp\", \"agm\"", "\"lfp\", \"lithium-sulfur\"", 23, "cannot be simulated"},
                    Row{"batteries = \"all\"", "batteries = []", 13, "The list is empty"},
                    Row{"max_parallel = 6", "max_parallel = 6\nin_series = 2", 1, "There is no key", 1}));

base::Problems problems_of(std::string_view text) {
  const base::Result<ReadPlan> read = read_small(text);
  return read.ok() ? base::Problems() : read.problems();
}

bool any_holds(const base::Problems& problems, std::string_view words) {
  for (const base::Problem& p : problems) {
    if (base::to_text(p).find(words) != std::string::npos) return true;
  }
  return false;
}

TEST(PlanProblems, ComeAllAtOnceInTheOrderOfTheText) {
  const base::Problems problems = problems_of(
      "format = 1\nsesons = 3\n[limits]\nmass = \"95\"\n[cables.main]\none_way = \"1 m\"\narea = \"6 mm\"\n"
      "[[load]]\nname = \"Lamp\"\npower = \"5 Ah\"\nhours = \"4 h/day\"\n"
      "[[leg]]\nlat = 1\nlon = 200\nzone = \"Etc/GMT+1\"\nfrom = 2026-03-09\nto = 2026-03-03\n");
  ASSERT_EQ(problems.size(), 6U);
  const std::vector<int> lines = {2, 4, 7, 10, 14, 17};
  for (std::size_t i = 0; i < lines.size(); ++i) EXPECT_EQ(problems[i].where.line, lines[i]);
}

TEST(PlanProblems, AnEmptyPlanSaysWhatIsMissing) {
  const base::Problems problems = problems_of("");
  for (const char* words :
       {"`format` is missing", "No load yet", "No leg yet", "The cable from the bank to the bus"}) {
    EXPECT_TRUE(any_holds(problems, words)) << words;
  }
}

TEST(PlanProblems, InverterLoadWithoutInverter) {
  EXPECT_TRUE(any_holds(problems_of(short_plan() + "[[load]]\nappliance = \"kettle\"\n"),
                        "fed by an inverter, but the plan has none"));
}

TEST(PlanProblems, HeatedBoxWithoutHeater) {
  EXPECT_TRUE(
      any_holds(problems_of(short_plan() + "[bank]\nplace = \"heated box\"\n"), "`heater_power` is missing"));
}

TEST(PlanProblems, JourneyOverTenYears) {
  EXPECT_TRUE(
      any_holds(problems_of(short_plan() + "[[leg]]\nlat = 1\nlon = 1\nzone = \"Etc/GMT\"\ndays = 3650\n"),
                "longer than ten years"));
}

TEST(PlanProblems, LoadWithoutPattern) {
  EXPECT_TRUE(any_holds(problems_of(short_plan() + "[[load]]\nname = \"x\"\npower = \"5 W\"\n"),
                        "Nothing says when this load runs."));
}

TEST(PlanProblems, SingleBracketsForAList) {
  EXPECT_TRUE(
      any_holds(problems_of("format = 1\n[load]\nname = \"x\"\n"), "Write [[load]] in double brackets."));
}

TEST(PlanProblems, SeveralBrokenLinesAndNoFalseAlarm) {
  std::string text = short_plan();
  text.replace(text.find("power = \"5 W\""), 13, "power = 5 W");
  text.replace(text.find("from = 2026"), 11, "from = = 2026");
  const base::Problems problems = problems_of(text);
  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(problems[0].where.line, 9);
  EXPECT_EQ(problems[1].where.line, 16);
}

}  // namespace
}  // namespace voltwright::files
