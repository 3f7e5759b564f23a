// Sheets of claims as TOML and as CSV; every problem with its place.
#include "files/sheet.h"

#include <gtest/gtest.h>

#include <string>

#include "files/claim_evidence.h"

namespace voltwright::files {
namespace {

const Catalogue& catalogue() {
  static const Catalogue kCatalogue = read_catalogue().value();
  return kCatalogue;
}

std::string problems_of(const std::string& text, const std::string& name) {
  const auto read = read_sheets(text, name, catalogue());
  std::string all;
  if (read) return "none";
  for (const base::Problem& p : read.problems()) all += base::to_text(p) + "\n";
  return all;
}

TEST(SheetTest, ReadsEveryKindOfValue) {
  const auto read = read_sheets(
      "format = 1\nname = \"A\"\nchemistry = \"lfp\"\nyear = 2025\ncapacity = \"100 Ah\"\nvoltage = \"12.8 "
      "V\"\n"
      "length = \"0.32 m\"\nwidth = \"17 cm\"\nheight = \"214 mm\"\ncontinuous_rate = \"1C\"\nreserve = \"3 "
      "h\"\n"
      "energy_per_mass = \"110 Wh/kg\"\nself_discharge = \"3 %/month\"\ncycles = 4000\ncycles_depth = \"80 "
      "%\"\n"
      "charge_coldest = \"32 degF\"\nheated = true\ncurrency = \"EUR\"\nprice = \"299 EUR\"\n",
      "a.toml", catalogue());
  ASSERT_TRUE(read.ok()) << problems_of("", "a.toml");
  ASSERT_EQ(read.value().sheets.size(), 1U);
  const claims::Sheet& s = read.value().sheets.front();
  EXPECT_EQ(s.name, "A");
  EXPECT_EQ(s.kind, "lfp");
  EXPECT_EQ(*s.year, 2025);
  EXPECT_NEAR(*s.capacity_Ah, 100.0, 1e-9);
  EXPECT_NEAR(s.outside->length_mm, 320.0, 1e-9);
  EXPECT_NEAR(s.outside->width_mm, 170.0, 1e-9);
  EXPECT_DOUBLE_EQ(*s.continuous_per_h, 1.0);
  EXPECT_NEAR(*s.reserve_min, 180.0, 1e-9);
  EXPECT_DOUBLE_EQ(*s.energy_Wh_per_kg, 110.0);
  EXPECT_NEAR(*s.self_discharge_per_month, 0.03, 1e-12);
  EXPECT_NEAR(*s.charge_min_C, 0.0, 1e-9);
  EXPECT_TRUE(*s.heated);
  EXPECT_NEAR(*s.price, 299.0, 1e-9);
  EXPECT_FALSE(s.mass_kg);
  EXPECT_EQ(read.value().mark.size(), 8U);
}

TEST(SheetTest, ClaimsSaidOneByOneAreThoseOfASheet) {
  const auto read = read_said_claims({"chemistry=lfp", "capacity = 100 Ah", "cycles=4000", "heated=yes"},
                                     "--claim", catalogue());
  ASSERT_TRUE(read.ok()) << base::to_text(read.problems().front());
  ASSERT_EQ(read.value().sheets.size(), 1U);
  const claims::Sheet& s = read.value().sheets.front();
  EXPECT_FALSE(s.name.empty());
  EXPECT_EQ(s.kind, "lfp");
  EXPECT_NEAR(*s.capacity_Ah, 100.0, 1e-9);
  EXPECT_NEAR(*s.cycles, 4000.0, 1e-9);
  EXPECT_TRUE(*s.heated);
  const auto named = read_said_claims({"name=Shelf", "chemistry=lfp"}, "--claim", catalogue());
  ASSERT_TRUE(named.ok());
  EXPECT_EQ(named.value().sheets.front().name, "Shelf");
}

TEST(SheetTest, ClaimsSaidWrongAreNumbered) {
  const auto read =
      read_said_claims({"chemistry=lfp", "100 Ah", "capacity=5 kg", "capacitty=5 Ah", "chemistry=agm"},
                       "--claim", catalogue());
  ASSERT_FALSE(read.ok());
  std::string all;
  for (const base::Problem& p : read.problems()) all += base::to_text(p) + "\n";
  EXPECT_NE(all.find("--claim:2:"), std::string::npos) << all;
  EXPECT_NE(all.find("--claim:3:"), std::string::npos) << all;
  EXPECT_NE(all.find("--claim:4:"), std::string::npos) << all;
  EXPECT_NE(all.find("--claim:5:"), std::string::npos) << all;
  EXPECT_NE(all.find("capacity"), std::string::npos) << all;
}

TEST(SheetTest, ProblemsComeTogetherWithTheirPlaces) {
  const std::string all = problems_of(
      "format = 1\nname = \"A\"\nchemistry = \"lpf\"\ncapacity = \"18 A\"\nmas = \"3 kg\"\nlength = \"3 "
      "mm\"\n"
      "energy_per_mass = \"110 W/kg\"\ncontinuous_rate = \"1 V\"\nprice = \"0 USD\"\n",
      "a.toml");
  EXPECT_NE(all.find("a.toml:3:13: chemistry"), std::string::npos) << all;
  EXPECT_NE(all.find("Did you mean \"lfp\"?"), std::string::npos) << all;
  EXPECT_NE(all.find("a.toml:4:12: capacity"), std::string::npos) << all;
  EXPECT_NE(all.find("a.toml:5:"), std::string::npos) << all;
  EXPECT_NE(all.find("`width` is missing"), std::string::npos) << all;
  EXPECT_NE(all.find("a.toml:7:19: energy_per_mass"), std::string::npos) << all;
  EXPECT_NE(all.find("a.toml:8:19: continuous_rate"), std::string::npos) << all;
  EXPECT_NE(all.find("a.toml:9:9: price"), std::string::npos) << all;
}

TEST(SheetTest, NameAndChemistryAreWanted) {
  const std::string all = problems_of("format = 1\n", "a.toml");
  EXPECT_NE(all.find("`name` is missing"), std::string::npos) << all;
  EXPECT_NE(all.find("`chemistry` is missing"), std::string::npos) << all;
  EXPECT_NE(problems_of("name = \"A\"\nchemistry = \"lfp\"\n", "a.toml").find("`format` is missing"),
            std::string::npos);
  EXPECT_NE(problems_of("format = 2\n", "a.toml").find("format 1"), std::string::npos);
}

TEST(SheetTest, ATableHoldsOneBatteryARow) {
  const auto read = read_sheets(
      "# invented\nname,chemistry,capacity,voltage,protection,cycles,price\nOne,lfp,100 Ah,12.8 "
      "V,yes,3000,299 USD\n"
      "\"Two, large\",agm,200 Ah,12 V,,,\n",
      "b.csv", catalogue());
  ASSERT_TRUE(read.ok());
  const auto& sheets = read.value().sheets;
  ASSERT_EQ(sheets.size(), 2U);
  EXPECT_TRUE(*sheets[0].protection);
  EXPECT_DOUBLE_EQ(*sheets[0].cycles, 3000.0);
  EXPECT_EQ(sheets[1].name, "Two, large");
  EXPECT_FALSE(sheets[1].protection.has_value());
  EXPECT_NEAR(*sheets[1].capacity_Ah, 200.0, 1e-9);
}

TEST(SheetTest, ProblemsOfATableHaveLineAndColumn) {
  const std::string all = problems_of("name,chemistry,capasity,voltage\nOne,lfp,100 Ah,12.8 A\n", "b.csv");
  EXPECT_NE(all.find("b.csv:1:16: "), std::string::npos) << all;
  EXPECT_NE(all.find("\"capacity\""), std::string::npos) << all;
  EXPECT_NE(all.find("b.csv:2:16: voltage"), std::string::npos) << all;
  EXPECT_NE(problems_of("name,chemistry\n", "b.csv"), "none");
  EXPECT_NE(problems_of("", "b.csv"), "none");
  EXPECT_NE(problems_of("name;chemistry\nOne;lfp\n", "b.csv").find("commas"), std::string::npos);
  EXPECT_NE(problems_of("name,name,chemistry\nOne,Two,lfp\n", "b.csv").find("twice"), std::string::npos);
  EXPECT_NE(problems_of("name,chemistry\nOne,lfp,3\n", "b.csv").find("b.csv:2"), std::string::npos);
}

TEST(SheetTest, HostileTextsAreRefusedInWords) {
  for (const std::string& text : {std::string("\0\xFF\xFE", 3), std::string(100'000, '['),
                                  std::string("a.b.c.d = 1"), std::string(5000, ',')}) {
    EXPECT_NE(problems_of(text, "x.toml"), "none");
    EXPECT_NE(problems_of(text, "x.csv"), "none");
  }
}

TEST(EvidenceTest, CarriesFactsAndStatedBatteries) {
  const auto evidence = read_evidence(catalogue());
  ASSERT_TRUE(evidence.ok());
  EXPECT_EQ(evidence.value().kinds.size(), catalogue().chemistries.size());
  EXPECT_GT(evidence.value().stated.size(), 150U);
  const claims::Kind* lfp = evidence.value().kind("lfp");
  ASSERT_NE(lfp, nullptr);
  EXPECT_EQ(lfp->per_mass.size(), 4U);
  EXPECT_FALSE(lfp->per_mass.front().source.empty());
  EXPECT_EQ(lfp->per_mass.front().source.find("bib:"), std::string::npos);
  for (const claims::Kind& kind : evidence.value().kinds) {
    EXPECT_FALSE(kind.life_source.empty()) << kind.chemistry.id;
    EXPECT_FALSE(kind.temperature_source.empty()) << kind.chemistry.id;
  }
}

}  // namespace
}  // namespace voltwright::files
