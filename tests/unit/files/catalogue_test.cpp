#include "files/catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>

#include "files/catalogue_read.h"
#include "files/catalogue_records.h"

namespace voltwright::files {
namespace {

std::string all_text(const base::Problems& problems) {
  std::string text;
  for (const auto& problem : problems) text += base::to_text(problem) + '\n';
  return text;
}

std::string bytes_of(std::string_view name) {
  for (const auto& file : embedded_catalogue()) {
    if (file.name == name) return std::string(file.bytes);
  }
  return {};
}

TEST(Catalogue, EveryRecordReads) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result) << all_text(result.problems());
  const Catalogue& catalogue = result.value();
  EXPECT_EQ(catalogue.chemistries.size(), 11U);
  EXPECT_GE(catalogue.cells.size(), 12U);
  EXPECT_GE(catalogue.batteries.size(), 30U);
  EXPECT_GE(catalogue.appliances.size(), 28U);
  EXPECT_TRUE(std::regex_match(catalogue.mark, std::regex("[0-9a-f]{8}"))) << catalogue.mark;
}

TEST(Catalogue, FindsByIdAndOnlyById) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result);
  const Catalogue& catalogue = result.value();
  ASSERT_NE(catalogue.chemistry("lfp"), nullptr);
  EXPECT_EQ(catalogue.chemistry("lfp")->short_name, "LFP");
  ASSERT_NE(catalogue.battery("lfp-12v-100ah"), nullptr);
  EXPECT_EQ(catalogue.battery("lfp-12v-100ah")->capacity_Ah, 100.0);
  EXPECT_EQ(catalogue.chemistry("LFP"), nullptr);
  EXPECT_EQ(catalogue.battery(""), nullptr);
  EXPECT_EQ(catalogue.appliance("zzz"), nullptr);
}

TEST(Catalogue, OnlyKindsWithoutALawAreNotSimulatedAndSayWhy) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result);
  for (const auto& chemistry : result.value().chemistries) {
    const bool expected = chemistry.id != "sodium-ion" && chemistry.id != "lithium-sulfur";
    EXPECT_EQ(chemistry.simulated, expected) << chemistry.id;
    EXPECT_EQ(chemistry.not_simulated_because.empty(), expected) << chemistry.id;
  }
}

TEST(Catalogue, MarkFollowsTheBytes) {
  const std::string whole = bytes_of("chemistries/lfp.json");
  const std::string changed = whole + "\n";
  const EmbeddedFile first[] = {{"chemistries/lfp.json", whole}};
  const EmbeddedFile second[] = {{"chemistries/lfp.json", changed}};
  const auto a = read_catalogue_files(first);
  const auto b = read_catalogue_files(second);
  ASSERT_TRUE(a && b);
  EXPECT_NE(a.value().mark, b.value().mark);
}

TEST(Catalogue, MarkIsFnv1a) {
  // FNV-1a 64 of "foobar" is 85944171f73967e8 (test vector of Fowler, Noll and Vo).
  const EmbeddedFile file[] = {{"foo", "bar"}};
  const auto result = read_catalogue_files(file);
  ASSERT_TRUE(result);
  EXPECT_EQ(result.value().mark, "85944171");
}

TEST(Catalogue, ProblemsOfEveryFileComeAtOnce) {
  std::string chemistry = bytes_of("chemistries/agm.json");
  chemistry = std::regex_replace(chemistry, std::regex("\"rated_h\": 20"), "\"rated_h\": \"20\"");
  chemistry = std::regex_replace(chemistry, std::regex("\"max_V\": 2.58"), "\"max_V\": 26");
  std::string battery = bytes_of("batteries/agm-12v-98ah.json");
  const EmbeddedFile files[] = {{"chemistries/agm.json", chemistry},
                                {"batteries/agm-12v-100ah.json", battery},
                                {"batteries/bad.json", "{ \"id\": }"}};
  const auto result = read_catalogue_files(files);
  ASSERT_FALSE(result);
  const std::string text = all_text(result.problems());
  EXPECT_NE(text.find("rating.rated_h"), std::string::npos) << text;
  EXPECT_NE(text.find("voltage_limits.max_V"), std::string::npos) << text;
  EXPECT_NE(text.find("The id differs"), std::string::npos) << text;
  EXPECT_NE(text.find("batteries/bad.json:1:"), std::string::npos) << text;
  EXPECT_NE(text.find("No chemistry has this id"), std::string::npos) << text;
}

TEST(Catalogue, IdThatStandsTwiceIsRefused) {
  const std::string chemistry = bytes_of("chemistries/agm.json");
  const EmbeddedFile files[] = {{"chemistries/agm.json", chemistry}, {"chemistries/agm.json", chemistry}};
  const auto result = read_catalogue_files(files);
  ASSERT_FALSE(result);
  EXPECT_NE(all_text(result.problems()).find("Two records"), std::string::npos);
}

TEST(Catalogue, AnyCutOfARecordIsAProblemAndNotACrash) {
  const std::string whole = bytes_of("chemistries/lfp.json");
  for (std::size_t length = 0; length + 3 < whole.size(); length += 97) {
    const auto result = read_chemistry(std::string_view(whole).substr(0, length), "lfp.json");
    ASSERT_FALSE(result) << length;
    EXPECT_FALSE(result.problems().empty());
  }
}

TEST(Catalogue, AnyChangedByteIsReadOrReported) {
  const std::string whole = bytes_of("batteries/lfp-12v-100ah.json");
  for (std::size_t at = 0; at < whole.size(); ++at) {
    for (const char byte : {'\0', '"', '{', ']', '9', '-', '\xff'}) {
      std::string changed = whole;
      changed[at] = byte;
      const auto result = read_battery(changed, "x.json");
      if (!result) {
        EXPECT_FALSE(result.problems().empty());
      }
    }
  }
}

TEST(Catalogue, StagesLieInsideTheLimitsOfTheCell) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result);
  for (const auto& c : result.value().chemistries) {
    EXPECT_LE(c.stages.absorption_V, c.limits.max_V) << c.id;
    EXPECT_LT(c.stages.float_V, c.stages.absorption_V) << c.id;
    EXPECT_LT(c.stages.rebulk_V, c.stages.absorption_V) << c.id;
    // What holds more than its rating comes to lie below 0.
    EXPECT_EQ(c.ocv_V.front().x<0.0, c.availability.full_over_rated> 1.0) << c.id;
    EXPECT_LE(c.ocv_V.front().x, 0.0) << c.id;
    EXPECT_EQ(c.ocv_V.back().x, 1.0) << c.id;
    EXPECT_LE(c.ocv_V.back().y, c.limits.max_V + 0.01) << c.id;
    EXPECT_TRUE(std::is_sorted(c.ocv_V.begin(), c.ocv_V.end(), [](const auto& a, const auto& b) {
      return a.y < b.y;
    })) << c.id;
  }
}

TEST(Catalogue, BatteriesFitTheirCells) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result);
  for (const auto& b : result.value().batteries) {
    const auto* chemistry = result.value().chemistry(b.chemistry);
    ASSERT_NE(chemistry, nullptr) << b.id;
    EXPECT_NEAR(b.nominal_V, chemistry->nominal_V * b.cells_in_series, 0.02 * b.nominal_V) << b.id;
    EXPECT_NEAR(b.nominal_V, b.system_V, 0.1 * b.system_V) << b.id;
    EXPECT_LT(b.under_voltage_V, b.under_voltage_release_V) << b.id;
    EXPECT_LE(b.continuous_A, b.peak_A) << b.id;
    if (b.has_protection) {
      EXPECT_GT(b.over_voltage_V, chemistry->stages.absorption_V * b.cells_in_series) << b.id;
    }
  }
}

// A compressor must take its typical day in a room of 25 degC and have reserve for heat: at most 60 % of the
// time on.
TEST(Catalogue, CoolingAppliancesTakeTheirTypicalDay) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result);
  int found = 0;
  for (const auto& a : result.value().appliances) {
    if (a.pattern != demand::Pattern::kTemperature) continue;
    ++found;
    const double mean_W = a.heat_leak_W_per_K * (25.0 - a.inside_C) / a.cop_at_25C;
    EXPECT_NEAR(mean_W * 24.0, a.energy_Wh_day.typical, 0.005 * a.energy_Wh_day.typical) << a.id;
    EXPECT_LT(mean_W, 0.6 * a.power_W.typical) << a.id;
  }
  EXPECT_GE(found, 4);
}

TEST(Catalogue, DaysOfAppliancesFollowFromTheirUse) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result);
  for (const auto& a : result.value().appliances) {
    double hours = 24.0;
    if (a.pattern == demand::Pattern::kHours) hours = a.hours_per_day;
    if (a.pattern == demand::Pattern::kEvents) hours = a.events_per_day * a.event_min / 60.0;
    if (a.pattern == demand::Pattern::kTemperature || a.pattern == demand::Pattern::kWindow) continue;
    EXPECT_NEAR(a.power_W.typical * hours, a.energy_Wh_day.typical, 0.05 * a.energy_Wh_day.typical) << a.id;
  }
}

TEST(Catalogue, TrustIsOneOfThreeLetters) {
  const auto result = read_catalogue();
  ASSERT_TRUE(result);
  for (const auto& a : result.value().appliances) {
    EXPECT_TRUE(a.trust == "A" || a.trust == "B" || a.trust == "C") << a.id;
    EXPECT_GE(a.surge_factor, 1.0) << a.id;
  }
}

}  // namespace
}  // namespace voltwright::files
