#include "files/composed_record.h"

#include <cmath>

#include "files/catalogue_records.h"

namespace voltwright::files {
namespace {

using Json = nlohmann::ordered_json;

/// Six significant digits: more than any of the assumptions bears.
double tidy(double value) {
  constexpr double kDigits = 6.0;
  if (value == 0.0 || !std::isfinite(value)) return value;
  const double place = std::floor(std::log10(std::fabs(value))) + 1.0 - kDigits;
  // Dividing by a whole power of ten keeps short decimals short.
  if (place < 0.0) {
    const double scale = std::pow(10.0, -place);
    return std::round(value * scale) / scale;
  }
  const double scale = std::pow(10.0, place);
  return std::round(value / scale) * scale;
}

std::string text_of(double value) { return Json(tidy(value)).dump(); }

Json range(const units::Ranged& r) {
  return {{"min", tidy(r.min)}, {"typical", tidy(r.typical)}, {"max", tidy(r.max)}};
}

}  // namespace

Json composed_record(const bank::Composition& made, const cell::CellFormat& format,
                     const std::string& price_from) {
  constexpr double kMilli = 1e3;
  const bank::Battery& battery = made.battery;
  const std::string whole = "Composed of " + std::to_string(made.in_series) + " in series and " +
                            std::to_string(made.in_parallel) + " in parallel of the cell " + format.id;
  const bank::Room& room = made.outside;
  Json record;
  record["format"] = kCatalogueFormat;
  record["id"] = battery.id;
  record["name"] = battery.name;
  record["chemistry"] = battery.chemistry;
  record["electrical"] = {
      {"nominal_V", tidy(battery.nominal_V)},
      {"system_V", static_cast<int>(battery.system_V)},
      {"capacity_Ah", tidy(battery.capacity_Ah)},
      {"cells_in_series", battery.cells_in_series},
      {"max_in_series", battery.max_in_series},
      {"derived_from", whole + ". Not in series with others: its protection is made for its own voltage."}};
  record["mass"] = {{"mass_kg", range(battery.mass_kg)},
                    {"derived_from", whole + ": cells " + text_of(made.cells_kg) + " kg, busbars " +
                                         text_of(made.busbars_kg) + " kg, case " + text_of(made.case_kg) +
                                         " kg, protection " + text_of(made.protection_kg) +
                                         " kg. The range is that of the cells; the rest is assumed."}};
  record["volume"] = {{"volume_L", range(battery.volume_L)},
                      {"derived_from", whole + ": outside " + text_of(room.length_mm) + " mm x " +
                                           text_of(room.width_mm) + " mm x " + text_of(room.height_mm) +
                                           " mm with assumed clearance, headroom and wall."}};
  record["price"] = {
      {"price_USD", range(battery.price)}, {"price_year", battery.price_year}, {"assumption", price_from}};
  record["discharge"] = {{"continuous_A", tidy(battery.continuous_A)},
                         {"peak_A", tidy(battery.peak_A)},
                         {"peak_s", tidy(battery.peak_s)},
                         {"derived_from", whole + ": the continuous current is bound by " +
                                              bank::name_of(made.continuous.binding) + ", the peak by " +
                                              bank::name_of(made.peak.binding) + "."}};
  record["charge"] = {{"charge_A", tidy(battery.charge_A)},
                      {"derived_from", whole + ": bound by " + bank::name_of(made.charge.binding) + "."}};
  record["resistance"] = {
      {"extra_resistance_ohm", tidy(battery.extra_resistance_ohm)},
      {"derived_from", whole + ": cells " + text_of(made.cells_ohm * kMilli) + ", joints " +
                           text_of(made.joints_ohm * kMilli) + " and protection " +
                           text_of(made.protection_ohm * kMilli) +
                           " mohm, less the resistance that the chemistry gives its cells."}};
  record["protection"] = {
      {"electronic", battery.has_protection},
      {"over_voltage_V", tidy(battery.over_voltage_V)},
      {"under_voltage_V", tidy(battery.under_voltage_V)},
      {"under_voltage_release_V", tidy(battery.under_voltage_release_V)},
      {"assumption",
       "Opens 2 % above the upper limit of the cells and at their lower limit, closes again "
       "5 % above that; inside the spans of published boards."}};
  return record;
}

}  // namespace voltwright::files
