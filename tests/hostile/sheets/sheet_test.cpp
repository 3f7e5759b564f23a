// Sheets of claims, damaged at random and with figures at the ends of what is allowed: reading gives a sheet
// or problems that name a line, and vetting always ends with finite numbers and whole sentences.
#include "files/sheet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "engine/base/random.h"
#include "engine/claims/vet.h"
#include "files/catalogue.h"
#include "files/claim_evidence.h"
#include "files/text_file.h"
#include "tests/hostile/damaged_text.h"

namespace voltwright::files {
namespace {

constexpr int kDamagedTexts = 600;
constexpr hostile::Damage kDamage{.seed = 20261126, .most_hits = 4.0, .inserted = "9"};
constexpr int kExtremeSheets = 300;

struct Known {
  Catalogue catalogue = read_catalogue().value();
  claims::Evidence evidence = read_evidence(catalogue).value();
};

const Known& known() {
  static const Known kKnown;
  return kKnown;
}

void expect_whole(const claims::Sheet& sheet, const std::string& which) {
  for (const claims::Finding& f : claims::vet(sheet, known().evidence)) {
    for (const auto& number : {f.number, f.least, f.most}) {
      EXPECT_TRUE(std::isfinite(number.value_or(0.0))) << which << ": " << f.id;
    }
    EXPECT_FALSE(f.say.empty()) << which << ": " << f.id;
  }
}

TEST(DamagedSheets, GiveASheetOrProblemsWithALine) {
  const std::string folder = std::string(VW_SOURCE_DIR) + "/tests/whole/claims/sheets/";
  int refused = 0;
  for (const char* const name : {"sound-lfp-12v-100ah.toml", "sound-agm-12v-90ah-start.toml", "faults.csv"}) {
    const std::string text = read_text(folder + name).value();
    for (std::uint64_t number = 0; number < kDamagedTexts; ++number) {
      const auto read = read_sheets(hostile::damaged(text, number, kDamage), name, known().catalogue);
      if (read.ok()) {
        for (const claims::Sheet& sheet : read.value().sheets) expect_whole(sheet, name);
        continue;
      }
      ++refused;
      ASSERT_FALSE(read.problems().empty());
      for (const base::Problem& problem : read.problems()) EXPECT_FALSE(problem.what.empty());
    }
  }
  EXPECT_GT(refused, kDamagedTexts) << "damage of this size spoils most sheets";
}

/// Any key at the least, a middle or the greatest value that the reader takes, or left out.
TEST(ExtremeSheets, AreJudgedInFiniteNumbers) {
  struct Key {
    const char* key;
    std::vector<const char*> values;
  };
  const std::vector<Key> keys = {{"capacity", {"0.01 Ah", "100 Ah", "100000 Ah"}},
                                 {"voltage", {"0.5 V", "12 V", "1000 V"}},
                                 {"energy", {"0.01 Wh", "1 kWh", "10 MWh"}},
                                 {"mass", {"1 g", "10 kg", "100 t"}},
                                 {"volume", {"1 mL", "10 L", "1000 m3"}},
                                 {"continuous", {"1 mA", "100 A", "1000 kA"}},
                                 {"continuous_for", {"0.001 s", "1 h", "1000 h"}},
                                 {"peak", {"1 mA", "100 A", "1000 kA"}},
                                 {"charge", {"1 mA", "20 A", "1000 kA"}},
                                 {"charger", {"1 mA", "20 A", "1000 kA"}},
                                 {"charge_time", {"0.001 s", "5 h", "1000 h"}},
                                 {"charge_voltage", {"0.5 V", "14 V", "1000 V"}},
                                 {"reserve", {"0.001 s", "3 h", "1000 h"}},
                                 {"cycles_depth", {"0.1 %", "80 %", "100 %"}},
                                 {"cycles_end", {"0 %", "80 %", "100 %"}},
                                 {"usable", {"0.1 %", "80 %", "100 %"}},
                                 {"replaces_lead", {"0.01 Ah", "100 Ah", "100000 Ah"}},
                                 {"calendar_life", {"1 day", "10 years", "200 years"}},
                                 {"charge_coldest", {"-100 degC", "0 degC", "200 degC"}},
                                 {"self_discharge", {"0 %", "3 %", "100 %"}}};
  const std::vector<const char*> kinds = {"lfp", "agm",       "gel",        "sodium-ion", "lithium-sulfur",
                                          "lto", "lead-acid", "lithium-ion"};
  for (std::uint64_t number = 0; number < kExtremeSheets; ++number) {
    base::RandomStream random(20261127, number);
    const auto pick = [&](std::size_t count) {
      return std::min(count - 1, static_cast<std::size_t>(random.uniform() * static_cast<double>(count)));
    };
    std::string text = "format = 1\nname = \"x\"\ncycles = 5000\nchemistry = \"" +
                       std::string(kinds[pick(kinds.size())]) + "\"\n";
    for (const Key& key : keys) {
      const std::size_t choice = pick(key.values.size() + 1);
      if (choice == key.values.size()) continue;
      text += std::string(key.key) + " = \"" + key.values[choice] + "\"\n";
    }
    const auto read = read_sheets(text, "x.toml", known().catalogue);
    ASSERT_TRUE(read.ok()) << text << base::to_text(read.problems().front());
    expect_whole(read.value().sheets.front(), text);
  }
}

}  // namespace
}  // namespace voltwright::files
