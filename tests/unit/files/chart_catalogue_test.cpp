// What the chart's records must hold, told with the place.
#include "files/chart_catalogue.h"

#include <gtest/gtest.h>

#include <string>

namespace voltwright::files {
namespace {

const std::string kSafety =
    R"("safety": {"year": 2016, "runaway": "low", "plates_metal": true, "gas": "g", "failure": "f", "note": "n",
        "source": "bib:a"})";

/// A record with the given energies; everything else empty.
std::string record(const std::string& energies, const std::string& safety = kSafety) {
  return R"({"format": 1, "id": "x", "name": "X", "short_name": "X", "plain_name": "x", "family": "lithium-ion",
    "simulated": true, "facts": {"energy_per_mass": [)" +
         energies +
         R"(], "energy_per_volume": [], "price": [], "efficiency": [], "cycles": [], "discharge": [],
    "charging": [], "temperatures": [], "self_discharge": [], "calendar": [], )" +
         safety + "}}";
}

std::string energy(int year, double typical, const std::string& level = "cell") {
  const std::string value = std::to_string(typical);
  return R"({"year": )" + std::to_string(year) + R"(, "level": ")" + level +
         R"(", "energy_Wh_per_kg": {"min": )" + value + R"(, "typical": )" + value + R"(, "max": )" + value +
         R"~(}, "source": ["bib:a", "ends (from memory)"]})~";
}

template <class Value>
std::string problems_of(const base::Result<Value>& read) {
  std::string text;
  if (read) return text;
  for (const base::Problem& problem : read.problems()) text += base::to_text(problem) + "\n";
  return text;
}

TEST(ChartKind, ReadsFiguresWithTheirOrigin) {
  const auto read = read_kind(record(energy(2020, 140.0) + "," + energy(2013, 100.0)), "x.json");
  ASSERT_TRUE(read) << problems_of(read);
  const chart::Kind& kind = read.value();
  ASSERT_EQ(kind.facts.size(), 2U);
  EXPECT_EQ(kind.facts[0].from, "bib:a; ends (from memory)");
  EXPECT_TRUE(kind.facts[0].from_memory);
  EXPECT_TRUE(chart::is_soft(kind.facts[0]));
  EXPECT_EQ(kind.facts[0].origin, chart::Origin::kSource);
  EXPECT_EQ(kind.safety.runaway, chart::Runaway::kLow);
}

TEST(ChartKind, OneFigureOfAYearAndLevel) {
  const auto twice = read_kind(record(energy(2020, 140.0) + "," + energy(2020, 150.0)), "x.json");
  EXPECT_NE(problems_of(twice).find("Two figures stand for the energy per mass of the cell in 2020"),
            std::string::npos);
  EXPECT_TRUE(read_kind(record(energy(2020, 140.0) + "," + energy(2020, 90.0, "battery")), "x.json"));
}

TEST(ChartKind, TellsWhereAFaultLies) {
  const auto early = read_kind(record(energy(2020, 140.0) + "," + energy(1400, 140.0)), "x.json");
  EXPECT_NE(problems_of(early).find("facts.energy_per_mass[1]"), std::string::npos) << problems_of(early);
  EXPECT_NE(problems_of(read_kind(record("7"), "x.json")).find("must be an object"), std::string::npos);
  EXPECT_FALSE(read_kind(record(energy(2020, -1.0)), "x.json"));
  EXPECT_FALSE(read_kind(record(energy(2020, 140.0, "room")), "x.json"));
  EXPECT_FALSE(read_kind(record(energy(2020, 140.0), R"("safety": {"year": 2016})"), "x.json"));
  EXPECT_FALSE(read_kind(record(energy(2020, 140.0), R"("safety": 3)"), "x.json"));
}

TEST(ChartKind, BearsAnyText) {
  for (const char* text : {"", "{", "[]", "3", "{\"facts\": []}", "{\"facts\": {\"price\": {}}}", "null"}) {
    EXPECT_FALSE(read_kind(text, "x.json")) << text;
    EXPECT_FALSE(read_use(text, "x.json")) << text;
    EXPECT_FALSE(read_family_tree(text, "x.json")) << text;
  }
}

TEST(ChartUse, SomethingMustCount) {
  const auto use = [](const std::string& weights) {
    return R"({"format": 1, "id": "u", "name": "U", "weights": {)" + weights + R"("assumption": "a"}})";
  };
  const auto read = read_use(use(R"("energy_weight": 3, )"), "u.json");
  ASSERT_TRUE(read) << problems_of(read);
  EXPECT_EQ(to_text(read.value()), "energy 3");
  EXPECT_NE(problems_of(read_use(use(""), "u.json")).find("Nothing counts"), std::string::npos);
  EXPECT_FALSE(read_use(use(R"("energy_weight": 101, )"), "u.json"));
}

TEST(FamilyTree, NoDeeperThanItsSteps) {
  const std::string start =
      R"({"format": 1, "id": "t", "name": "T", "steps": ["a", "b"], "branches": [{"name": "p",)";
  const auto fits = read_family_tree(start + R"("branches": [{"name": "q", "chemistry": "x"}]}]})", "t.json");
  ASSERT_TRUE(fits) << problems_of(fits);
  EXPECT_EQ(fits.value().branches[0].branches[0].chemistry, "x");
  const auto deep =
      read_family_tree(start + R"("branches": [{"name": "q", "branches": [{"name": "r"}]}]}]})", "t.json");
  EXPECT_NE(problems_of(deep).find("deeper than its steps"), std::string::npos);
}

TEST(FamilyTree, HoldsEveryChemistryOnce) {
  const std::string kind = record(energy(2020, 140.0));
  const auto with_tree = [&](const std::string& branches) {
    const std::string tree =
        R"({"format": 1, "id": "t", "name": "T", "steps": ["a"], "branches": [)" + branches + "]}";
    const EmbeddedFile files[] = {{"chemistries/x.json", kind}, {"tree/t.json", tree}};
    return problems_of(read_chart_files(files));
  };
  const std::string x = R"({"name": "X", "chemistry": "x"})";
  EXPECT_EQ(with_tree(x), "");
  EXPECT_NE(with_tree(x + "," + x).find("2 times"), std::string::npos);
  EXPECT_NE(with_tree(R"({"name": "X"})").find("0 times"), std::string::npos);
  EXPECT_NE(with_tree(x + R"(, {"name": "Y", "chemistry": "y"})").find("has no record"), std::string::npos);
}

TEST(ChartCatalogue, OfTheProgramIsWhole) {
  const auto read = read_chart_catalogue();
  ASSERT_TRUE(read) << problems_of(read);
  EXPECT_EQ(read.value().kinds.size(), 11U);
  EXPECT_GE(read.value().uses.size(), 5U);
}

}  // namespace
}  // namespace voltwright::files
