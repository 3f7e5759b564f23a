// The ageing records as shipped, and broken ones.
#include "files/ageing_record.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "files/catalogue.h"

namespace voltwright::files {
namespace {

std::vector<EmbeddedFile> shipped() {
  std::vector<EmbeddedFile> files;
  for (const EmbeddedFile& file : embedded_catalogue()) {
    if (file.name.starts_with("ageing/")) files.push_back(file);
  }
  return files;
}

std::string problems_of(const std::vector<EmbeddedFile>& files) {
  const auto result = read_ageing_files(files);
  std::string text;
  if (result) return text;
  for (const auto& problem : result.problems()) text += base::to_text(problem) + '\n';
  return text;
}

/// The shipped records with one text of one of them replaced.
std::string problems_with(const std::string& name, const std::string& from, const std::string& to) {
  std::vector<EmbeddedFile> files = shipped();
  std::string text;
  for (EmbeddedFile& file : files) {
    if (file.name != name) continue;
    text = std::string(file.bytes);
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    text.replace(at, from.size(), to);
    file.bytes = text;
  }
  return problems_of(files);
}

// Every lithium chemistry that is simulated has opinions or a reason why not; the measured law comes first.
TEST(AgeingRecords, EveryLithiumChemistryIsSpokenFor) {
  const auto laws = read_ageing_catalogue();
  ASSERT_TRUE(laws);
  const auto catalogue = read_catalogue();
  ASSERT_TRUE(catalogue);
  for (const char* chemistry : {"lfp", "nmc", "nca", "lmo", "lto", "lco", "sodium-ion"}) {
    ASSERT_NE(catalogue.value().chemistry(chemistry), nullptr) << chemistry;
    const ageing::Opinions* opinions = ageing::opinions_on(laws.value().opinions, chemistry);
    ASSERT_NE(opinions, nullptr) << chemistry;
    EXPECT_TRUE(!opinions->opinions.empty() || !opinions->gap.empty()) << chemistry;
    for (const ageing::Opinion& opinion : opinions->opinions) {
      EXPECT_NE(opinion.law, nullptr);
      EXPECT_FALSE(opinion.name.empty());
      EXPECT_FALSE(opinion.caution.empty());
      EXPECT_TRUE(opinion.source.starts_with("bib:")) << opinion.source;
      EXPECT_TRUE(opinion.knows_swings) << opinion.id;
    }
  }
  const ageing::Opinions* lfp = ageing::opinions_on(laws.value().opinions, "lfp");
  ASSERT_NE(lfp, nullptr);
  EXPECT_EQ(lfp->opinions.front().basis, ageing::Basis::kMeasured);
  EXPECT_EQ(lfp->opinions.front().source, "bib:naumann2018, bib:naumann2020");
  EXPECT_TRUE(lfp->opinions.front().knows_resistance);
  EXPECT_TRUE(lfp->opinions.front().knows_rest);
  EXPECT_EQ(lfp->opinions.size(), 6U);
}

TEST(AgeingRecords, IdsOfOpinionsStandOnce) {
  const auto laws = read_ageing_catalogue();
  ASSERT_TRUE(laws);
  std::set<std::string> ids;
  for (const auto& opinions : laws.value().opinions) {
    for (const auto& opinion : opinions.opinions) EXPECT_TRUE(ids.insert(opinion.id).second) << opinion.id;
  }
}

// An assumed shelf life must be one that the record of the chemistry assumes, to 80 %: the typical one, of
// titanate, which was seen to lose little in storage, the longest.
TEST(AgeingRecords, AssumedShelfLifeIsThatOfTheChemistry) {
  const auto laws = read_ageing_catalogue();
  ASSERT_TRUE(laws);
  const auto catalogue = read_catalogue();
  ASSERT_TRUE(catalogue);
  for (const char* chemistry : {"nca", "lto", "lco"}) {
    const ageing::Opinions* opinions = ageing::opinions_on(laws.value().opinions, chemistry);
    ASSERT_NE(opinions, nullptr);
    const units::Ranged& years = catalogue.value().chemistry(chemistry)->life.calendar_years;
    ageing::Exposure year;
    year.hours = 8766.0;
    year.dwell = {{25.0, 0.5, 8766.0}};
    EXPECT_NEAR(ageing::repetitions_until(*opinions->opinions.front().law, year, 0.8, 1000.0),
                std::string(chemistry) == "lto" ? years.max : years.typical, 1e-6)
        << chemistry;
  }
}

// In its own range the measured law leads; far above it none of iron phosphate knows, and the first answers.
TEST(AgeingRecords, WhoLeads) {
  const auto laws = read_ageing_catalogue();
  ASSERT_TRUE(laws);
  const ageing::Opinions* lfp = ageing::opinions_on(laws.value().opinions, "lfp");
  ASSERT_NE(lfp, nullptr);
  ageing::Exposure day;
  day.hours = 24.0;
  day.dwell = {{25.0, 0.5, 24.0}};
  day.swings = {{0.5, 0.5, 1.0, 0.3, 0.3, 25.0}};
  EXPECT_EQ(ageing::leading_opinion(*lfp, day, {})->id, "lfp-measured");
  EXPECT_EQ(lfp->opinions.front().law->reach(day, {}), ageing::Reach::kInside);
  ageing::Aged aged;
  aged.hours = 900.0 * 24.0;
  EXPECT_EQ(lfp->opinions.front().law->reach(day, aged), ageing::Reach::kExtrapolated);
  day.dwell[0].temperature_C = 70.0;
  EXPECT_EQ(lfp->opinions.front().law->reach(day, {}), ageing::Reach::kOutside);
}

TEST(AgeingRecords, BrokenRecordsAreReported) {
  EXPECT_EQ(problems_of(shipped()), "");
  EXPECT_NE(problems_with("ageing/xu-2018.json", "\"film_share\": 0.0575", "\"film_share\": 1.5")
                .find("film.film_share"),
            std::string::npos);
  EXPECT_NE(problems_with("ageing/xu-2018.json", "-123000", "-140000").find("no damage or a negative one"),
            std::string::npos);
  EXPECT_NE(problems_with("ageing/xu-2018.json", "\"kind\": \"xu\"", "\"kind\": \"yu\"").find("of this kind"),
            std::string::npos);
  EXPECT_NE(
      problems_with("ageing/naumann-2020.json", "\"naumann-2020\"", "\"naumann-2021\"").find("file name"),
      std::string::npos);
  EXPECT_NE(
      problems_with("ageing/lithium-opinions.json", "\"schimpe-2018\"", "\"schimpe-2081\"").find("No part"),
      std::string::npos);
  EXPECT_NE(problems_with("ageing/lithium-opinions.json", "\"chemistry\": \"nca\"", "\"chemistry\": \"nmc\"")
                .find("stands twice"),
            std::string::npos);
  EXPECT_NE(problems_with("ageing/wang-2014.json", "0.763", "0.8").find("nowhere below 0"),
            std::string::npos);
  EXPECT_NE(problems_with("ageing/lfp-storage-measured.json", "\"soc\": 0.125", "\"soc\": 1.25").find("soc"),
            std::string::npos);
  EXPECT_NE(problems_with("ageing/nca-life-points.json", "\"points\"", "\"dots\"").find("points"),
            std::string::npos);
}

}  // namespace
}  // namespace voltwright::files
