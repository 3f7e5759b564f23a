// Forty invented data sheets: twenty sound, twenty with one planted fault each. Every fault is found, and no
// sound sheet is accused. What is planted where stands in sheets/faults.csv.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "app/vet.h"
#include "files/number_table.h"
#include "files/text_file.h"

namespace voltwright::whole {
namespace {

const std::filesystem::path kFolder = std::filesystem::path(VW_SOURCE_DIR) / "tests/whole/claims/sheets";

struct Fault {
  std::string file;
  std::string finding;
  std::string severity;
  std::string also;  // follows from the same fault
};

std::vector<std::string> files_named(const std::string& start) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(kFolder)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(start) && name.ends_with(".toml")) names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::vector<Fault> faults() {
  const std::string text = files::read_text((kFolder / "faults.csv").string()).value();
  const auto table = files::read_table(text, "faults.csv").value();
  std::vector<Fault> all;
  for (const auto& row : table.rows) {
    all.push_back({std::string(row.fields[0]), std::string(row.fields[1]), std::string(row.fields[2]),
                   std::string(row.fields[3])});
  }
  return all;
}

claims::Findings vetted(const std::string& file) {
  const auto response = app::vet({.path = (kFolder / file).string(), .claims = {}, .only = {}});
  if (!response) {
    for (const base::Problem& problem : response.problems()) ADD_FAILURE() << base::to_text(problem);
    return {};
  }
  EXPECT_TRUE(response.value().warnings.empty()) << file;
  return response.value().sheets.front().findings;
}

bool accuses(const claims::Finding& f) { return f.severity >= claims::Severity::kDoubt; }

TEST(ClaimsCorpus, HoldsTwentyOfEach) {
  EXPECT_EQ(files_named("sound-").size(), 20U);
  EXPECT_EQ(files_named("fault-").size(), 20U);
  std::vector<std::string> listed;
  for (const Fault& fault : faults()) listed.push_back(fault.file);
  std::sort(listed.begin(), listed.end());
  EXPECT_EQ(listed, files_named("fault-"));
}

TEST(ClaimsCorpus, EveryFaultIsFoundAndNothingElseIsAccused) {
  for (const Fault& fault : faults()) {
    bool found = false;
    for (const claims::Finding& f : vetted(fault.file)) {
      if (f.id == fault.finding) {
        found = true;
        EXPECT_EQ(claims::name_of(f.severity), fault.severity) << fault.file << ": " << f.say;
      } else if (accuses(f)) {
        EXPECT_EQ(f.id, fault.also) << fault.file << " is accused of something else: " << f.claim << ": "
                                    << f.say;
      }
    }
    EXPECT_TRUE(found) << fault.file << ": " << fault.finding << " was not found";
  }
}

TEST(ClaimsCorpus, NoSoundSheetIsAccused) {
  for (const std::string& file : files_named("sound-")) {
    const claims::Findings findings = vetted(file);
    EXPECT_GT(findings.size(), 5U) << file << " claims too little to be judged";
    for (const claims::Finding& f : findings) {
      EXPECT_FALSE(accuses(f)) << file << ": " << f.id << ", " << f.claim << ": " << f.working;
    }
  }
}

TEST(ClaimsCorpus, APlantedGapIsNoNoteOfSoundSheets) {
  for (const Fault& fault : faults()) {
    if (fault.severity != "note") continue;
    for (const std::string& file : files_named("sound-")) {
      for (const claims::Finding& f : vetted(file)) EXPECT_NE(f.id, fault.finding) << file;
    }
  }
}

TEST(ClaimsCorpus, EveryFindingSaysWhyAndWhat) {
  for (const char* start : {"sound-", "fault-"}) {
    for (const std::string& file : files_named(start)) {
      for (const claims::Finding& f : vetted(file)) {
        EXPECT_FALSE(f.claim.empty()) << f.id;
        EXPECT_FALSE(f.working.empty()) << f.id;
        EXPECT_FALSE(f.source.empty()) << f.id;
        EXPECT_FALSE(f.say.empty()) << f.id;
      }
    }
  }
}

TEST(ClaimsCorpus, TheExampleIsFoundOut) {
  const auto response = app::vet(
      {.path = std::string(VW_SOURCE_DIR) + "/examples/wagon-battery/sheet.toml", .claims = {}, .only = {}});
  ASSERT_TRUE(response.ok());
  EXPECT_TRUE(claims::is_doubted(response.value().sheets.front().findings));
}

}  // namespace
}  // namespace voltwright::whole
