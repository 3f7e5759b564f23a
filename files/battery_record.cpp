#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {

base::Result<bank::Battery> read_battery(std::string_view text, const std::string& name) {
  constexpr double kMost_V = 1000.0;
  constexpr double kMost_A = 1e5;
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  bank::Battery result;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  result.id = record.text("id");
  result.name = record.text("name");
  result.chemistry = record.text("chemistry");
  JsonReader electrical = record.object("electrical");
  result.nominal_V = electrical.number("nominal_V", 0.5, kMost_V);
  result.system_V = electrical.number("system_V", 2.0, kMost_V);
  result.capacity_Ah = electrical.number("capacity_Ah", 0.1, 1e5);
  result.cells_in_series = electrical.whole("cells_in_series", 1, 400);
  result.max_in_series = electrical.whole("max_in_series", 1, 100);
  result.mass_kg = record.object("mass").range("mass_kg", 0.01, 1e5);
  result.volume_L = record.object("volume").range("volume_L", 0.01, 1e5);
  JsonReader price = record.object("price");
  result.price = price.range("price_USD", 0.0, 1e7);
  result.price_currency = "USD";
  result.price_year = price.whole("price_year", 1990, 2100);
  result.price_is_assumption = price.has("assumption");
  JsonReader discharge = record.object("discharge");
  result.continuous_A = discharge.number("continuous_A", 0.01, kMost_A);
  result.peak_A = discharge.number("peak_A", 0.01, kMost_A);
  result.peak_s = discharge.number("peak_s", 0.001, 3600.0);
  result.charge_A = record.object("charge").number("charge_A", 0.01, kMost_A);
  if (record.has("reduced_charge")) {
    JsonReader reduced = record.object("reduced_charge");
    result.reduced_charge_min_C = reduced.number("charge_min_C", -60.0, 20.0);
    result.reduced_charge_rate = reduced.number("rate_per_h", 0.001, 1.0);
  }
  result.extra_resistance_ohm = record.object("resistance").number("extra_resistance_ohm", 0.0, 10.0);
  JsonReader protection = record.object("protection");
  result.has_protection = protection.flag("electronic");
  result.over_voltage_V = protection.number("over_voltage_V", 0.0, kMost_V);
  result.under_voltage_V = protection.number("under_voltage_V", 0.0, kMost_V);
  result.under_voltage_release_V = protection.number("under_voltage_release_V", 0.0, kMost_V);
  if (base::has_error(problems)) return problems;
  return result;
}

}  // namespace voltwright::files
