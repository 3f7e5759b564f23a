#include "files/composed_record.h"

#include <gtest/gtest.h>

#include "files/catalogue_read.h"
#include "files/catalogue_records.h"
#include "tools/catalogue_rules.h"

namespace voltwright::files {
namespace {

std::string all_text(const base::Problems& problems) {
  std::string text;
  for (const auto& problem : problems) text += base::to_text(problem) + '\n';
  return text;
}

const Catalogue& catalogue() {
  static const Catalogue kCatalogue = read_catalogue().value();
  return kCatalogue;
}

std::string bytes_of(std::string_view name) {
  for (const auto& file : embedded_catalogue()) {
    if (file.name == name) return std::string(file.bytes);
  }
  return {};
}

bank::Composition composed(const cell::CellFormat& format, int series, int parallel) {
  auto made = bank::compose(format, *catalogue().chemistry(format.chemistry), series, parallel, {}).value();
  made.battery.price = {100.0, 200.0, 300.0};
  made.battery.price_year = 2026;
  return made;
}

// Every cell in every string that suits a house system: the checker, and the reader beside the record of
// its chemistry, take it, and what is read is what was composed.
TEST(ComposedRecord, TheCatalogueTakesIt) {
  int taken = 0;
  for (const cell::CellFormat& format : catalogue().cells) {
    const std::string chemistry_name = "chemistries/" + format.chemistry + ".json";
    const std::string chemistry = bytes_of(chemistry_name);
    for (int series = 1; series <= bank::kMostInSeries; ++series) {
      const bank::Composition made = composed(format, series, 7);
      if (made.house.system.system_V == 0.0) continue;
      ++taken;
      const std::string text = composed_record(made, format, "Of the test.").dump(2);
      const std::string name = "batteries/" + made.battery.id + ".json";
      EXPECT_EQ(all_text(tools::check_record(text, name, made.battery.id)), "");
      const EmbeddedFile both[] = {{chemistry_name, chemistry}, {name, text}};
      const auto whole = read_catalogue_files(both);
      ASSERT_TRUE(whole) << all_text(whole.problems());
      const bank::Battery* read = whole.value().battery(made.battery.id);
      ASSERT_NE(read, nullptr);
      const auto close = [&](double value, double wanted) {
        EXPECT_NEAR(value, wanted, 1e-5 * wanted) << text;
      };
      close(read->nominal_V, made.nominal_V);
      close(read->capacity_Ah, made.capacity_Ah);
      close(read->mass_kg.max, made.mass_kg.max);
      close(read->volume_L.typical, made.volume_L);
      close(read->price.min, 100.0);
      close(read->continuous_A, made.continuous.current_A);
      close(read->peak_A, made.peak.current_A);
      close(read->charge_A, made.charge.current_A);
      close(read->extra_resistance_ohm, made.battery.extra_resistance_ohm);
      close(read->over_voltage_V, made.battery.over_voltage_V);
      EXPECT_EQ(read->cells_in_series, series);
      EXPECT_EQ(read->system_V, made.house.system.system_V);
      EXPECT_LE(read->continuous_A, read->peak_A);
      EXPECT_TRUE(read->price_is_assumption);
    }
  }
  EXPECT_GE(taken, 36);
}

TEST(ComposedRecord, NumbersAreShort) {
  const cell::CellFormat& format = *catalogue().cell("lfp-prismatic-100ah");
  const auto record = composed_record(composed(format, 4, 1), format, "Of the test.");
  EXPECT_EQ(record["electrical"]["nominal_V"].dump(), "12.8");
  EXPECT_EQ(record["electrical"]["capacity_Ah"].dump(), "100.0");
  EXPECT_LE(record["volume"]["volume_L"]["typical"].dump().size(), 8U);
  EXPECT_NE(record["volume"]["derived_from"].get<std::string>().find("186.32 mm x 168.0 mm x 258.0 mm"),
            std::string::npos);
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  const auto at = text.find(what);
  EXPECT_NE(at, std::string::npos) << what;
  return at == std::string::npos ? text : text.replace(at, what.size(), by);
}

TEST(CellRecord, ReadsEachForm) {
  const cell::CellFormat& round = *catalogue().cell("lfp-18650");
  EXPECT_EQ(round.form, cell::FormFactor::kCylindrical);
  EXPECT_EQ(round.size.diameter_mm, 18.0);
  EXPECT_EQ(round.size.thickness_mm, 0.0);
  EXPECT_EQ(round.mass_kg.min, 0.033);  // of bib:bpx
  const cell::CellFormat& box = *catalogue().cell("lfp-prismatic-280ah");
  EXPECT_EQ(box.form, cell::FormFactor::kPrismatic);
  EXPECT_EQ(box.size.thickness_mm, 72.0);
  EXPECT_EQ(box.size.diameter_mm, 0.0);
  EXPECT_EQ(box.mass_kg.typical, 5.42);
  EXPECT_EQ(catalogue().cell("lmo-pouch-30ah")->form, cell::FormFactor::kPouch);
  EXPECT_EQ(catalogue().cell("no-such-cell"), nullptr);
}

TEST(CellRecord, ProblemsNameTheirField) {
  const std::string good = bytes_of("cells/lfp-18650.json");
  const auto problems_of = [&](const std::string& what, const std::string& by) {
    const auto result = read_cell(replaced(good, what, by), "c.json");
    return result ? std::string() : all_text(result.problems());
  };
  EXPECT_EQ(problems_of("\"peak_A\": 6", "\"peak_A\": 6.5"), "");
  EXPECT_NE(problems_of("\"cylindrical\"", "\"round\"").find("form"), std::string::npos);
  EXPECT_NE(problems_of("diameter_mm", "width_mm").find("size.diameter_mm"), std::string::npos);
  EXPECT_NE(problems_of("\"cylindrical\"", "\"pouch\"").find("size.thickness_mm"), std::string::npos);
  EXPECT_NE(problems_of("\"capacity_Ah\": 2", "\"capacity_Ah\": 0").find("capacity.capacity_Ah"),
            std::string::npos);
  EXPECT_NE(problems_of("\"peak_A\": 6", "\"peak_A\": 1").find("discharge.peak_A"), std::string::npos);
  EXPECT_NE(problems_of("\"min\": 0.02", "\"min\": 0.05").find("resistance.ohmic_ohm"), std::string::npos);
}

TEST(CellRecord, TheChemistryMustBeThere) {
  const std::string cell = replaced(bytes_of("cells/lfp-18650.json"), "\"lfp\"", "\"nothing\"");
  const EmbeddedFile file[] = {{"cells/lfp-18650.json", cell}};
  const auto result = read_catalogue_files(file);
  ASSERT_FALSE(result);
  EXPECT_NE(all_text(result.problems()).find("cells/lfp-18650.json: chemistry"), std::string::npos);
}

}  // namespace
}  // namespace voltwright::files
