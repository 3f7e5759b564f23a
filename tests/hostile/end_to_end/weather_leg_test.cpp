// A typical-year file as the weather of a leg: what is wrong with it reaches the person with file and line.
#include <gtest/gtest.h>

#include <string>

#include "app/plan_on_hand.h"
#include "files/text_file.h"
#include "tests/unit/files/synthetic_epw.h"

namespace voltwright::app {
namespace {

base::Result<PlanOnHand> hand_with_weather(const std::string& epw, const std::string& name) {
  const std::string folder = ::testing::TempDir();
  EXPECT_TRUE(files::write_text(folder + "/" + name + ".epw", epw).empty());
  EXPECT_TRUE(
      files::write_text(folder + "/" + name + ".toml",
                        "format = 1\n[cables.main]\none_way = \"1 m\"\narea = \"35 mm2\"\n"
                        "[[load]]\nname = \"Lamp\"\npower = \"9 W\"\nalways = true\n"
                        "[[leg]]\nlat = 52.3\nlon = 4.8\nzone = \"Europe/Amsterdam\"\nfrom = 2026-06-01\n"
                        "to = 2026-06-02\nweather = \"" +
                            name + ".epw\"\n")
          .empty());
  return plan_on_hand(folder + "/" + name + ".toml");
}

bool names_the_file(const base::Problems& problems, const std::string& name) {
  for (const base::Problem& p : problems) {
    if (p.where.file.find(name + ".epw") != std::string::npos && !p.what.empty()) return true;
  }
  return false;
}

TEST(WeatherOfALeg, AGoodYearIsTakenWithoutAWord) {
  const auto hand = hand_with_weather(files::SyntheticEpw{}.text(), "good_year");
  ASSERT_TRUE(hand.ok()) << base::to_text(hand.problems().front());
  EXPECT_FALSE(names_the_file(hand.value().warnings, "good_year"));
  ASSERT_TRUE(hand.value().skies.front().typical_year.has_value());
}

TEST(WeatherOfALeg, MissingCodesAreFilledAndTold) {
  auto lines = files::SyntheticEpw{}.lines();
  for (std::size_t i = 4000; i < 4002; ++i) lines[i] = files::with_field(lines[i], 6, "99.9");
  const auto hand = hand_with_weather(files::joined(lines), "gaps");
  ASSERT_TRUE(hand.ok());
  EXPECT_TRUE(names_the_file(hand.value().warnings, "gaps"));
}

TEST(WeatherOfALeg, AShiftedClockIsAWarning) {
  files::SyntheticEpw shifted;
  shifted.clock_shift_h = 1.0;
  const auto hand = hand_with_weather(shifted.text(), "shifted");
  ASSERT_TRUE(hand.ok());
  EXPECT_TRUE(names_the_file(hand.value().warnings, "shifted"));
}

TEST(WeatherOfALeg, AYearCutShortIsRefused) {
  auto lines = files::SyntheticEpw{}.lines();
  lines.resize(6000);
  const auto hand = hand_with_weather(files::joined(lines), "cut_short");
  ASSERT_FALSE(hand.ok());
  EXPECT_TRUE(names_the_file(hand.problems(), "cut_short"));
}

TEST(WeatherOfALeg, AnythingElseIsRefused) {
  const auto hand = hand_with_weather("not weather at all", "junk");
  ASSERT_FALSE(hand.ok());
  EXPECT_TRUE(names_the_file(hand.problems(), "junk"));
}

}  // namespace
}  // namespace voltwright::app
