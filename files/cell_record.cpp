#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {
namespace {

cell::CellSize read_size(JsonReader& size, cell::FormFactor form) {
  constexpr double kLeast_mm = 0.5;
  constexpr double kMost_mm = 2000.0;
  const auto extent = [&](const char* key) { return size.number(key, kLeast_mm, kMost_mm); };
  cell::CellSize result;
  if (form == cell::FormFactor::kCylindrical) {
    result.diameter_mm = extent("diameter_mm");
  } else {
    result.thickness_mm = extent("thickness_mm");
    result.width_mm = extent("width_mm");
  }
  result.height_mm = extent("height_mm");
  return result;
}

}  // namespace

base::Result<cell::CellFormat> read_cell(std::string_view text, const std::string& name) {
  constexpr double kMost_A = 1e5;
  constexpr double kLeast_ohm = 1e-6;
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  cell::CellFormat result;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  result.id = record.text("id");
  result.name = record.text("name");
  result.chemistry = record.text("chemistry");
  constexpr std::pair<std::string_view, cell::FormFactor> kForms[] = {
      {"cylindrical", cell::FormFactor::kCylindrical},
      {"prismatic", cell::FormFactor::kPrismatic},
      {"pouch", cell::FormFactor::kPouch}};
  result.form = record.choice("form", kForms);
  result.capacity_Ah = record.object("capacity").number("capacity_Ah", 0.01, 1e4);
  JsonReader size = record.object("size");
  result.size = read_size(size, result.form);
  result.mass_kg = record.object("mass").range("mass_kg", 1e-3, 1e3);
  result.ohmic_ohm = record.object("resistance").range("ohmic_ohm", kLeast_ohm, 10.0);
  JsonReader discharge = record.object("discharge");
  result.continuous_A = discharge.number("continuous_A", 0.001, kMost_A);
  result.peak_A = discharge.number("peak_A", 0.001, kMost_A);
  result.peak_s = discharge.number("peak_s", 0.001, 3600.0);
  if (result.peak_A < result.continuous_A && !base::has_error(problems)) {
    discharge.report("peak_A", "The peak current is below the continuous one.", "", "",
                     "Exchange the two, or repeat the continuous current if no peak is stated.");
  }
  result.charge_A = record.object("charge").number("charge_A", 0.001, kMost_A);
  if (base::has_error(problems)) return problems;
  return result;
}

}  // namespace voltwright::files
