#include "files/catalogue_records.h"
#include "files/json_reader.h"

namespace voltwright::files {
namespace {

constexpr double kCellMost_V = 6.0;
constexpr double kColdest_C = -60.0;
constexpr double kHottest_C = 120.0;
constexpr double kMany = 1e6;
constexpr double kLowestCharge = -0.25;  // where the look-up tables begin

cell::Resistance read_resistance(JsonReader& record) {
  cell::Resistance result;
  JsonReader parts = record.object("resistance");
  result.ohmic_ohm_Ah = parts.number("ohmic_ohm_Ah", 0.0, 10.0);
  result.fast_ohm_Ah = parts.number("fast_ohm_Ah", 0.0, 10.0);
  result.fast_tau_s = parts.number("fast_tau_s", 0.1, 1e5);
  result.slow_ohm_Ah = parts.number("slow_ohm_Ah", 0.0, 10.0);
  result.slow_tau_s = parts.number("slow_tau_s", 0.1, 1e6);
  if (parts.has("slow_curving_V")) result.slow_curving_V = parts.number("slow_curving_V", 0.01, 10.0);
  if (record.has("resistance_by_soc")) {
    JsonReader by_soc = record.object("resistance_by_soc");
    result.ohmic_by_soc = by_soc.curve("ohmic_factor_by_soc", kLowestCharge, 1.0, 0.01, 100.0);
    if (by_soc.has("slow_factor_by_soc")) {
      result.slow_by_soc = by_soc.curve("slow_factor_by_soc", kLowestCharge, 1.0, 0.01, 100.0);
    }
    result.relaxing_by_soc = by_soc.curve("relaxing_factor_by_soc", kLowestCharge, 1.0, 0.01, 100.0);
  }
  JsonReader by_temperature = record.object("resistance_by_temperature");
  result.steady_fraction = by_temperature.number("steady_fraction", 0.0, 1.0);
  result.activation_kJ_mol = by_temperature.number("activation_kJ_per_mol", 0.0, 150.0);
  if (record.has("charge_resistance")) {
    JsonReader charge = record.object("charge_resistance");
    result.charge_rho_ohm_Ah = charge.number("rho_ohm_Ah", 0.0, 10.0);
    result.charge_m = charge.number("soc_gain", 0.0, 100.0);
    result.charge_c = charge.number("soc_pole", 1.0001, 10.0);
  }
  return result;
}

cell::CellLimits read_limits(JsonReader& record) {
  cell::CellLimits result;
  JsonReader voltage = record.object("voltage_limits");
  result.max_V = voltage.number("max_V", 0.1, kCellMost_V);
  result.min_V = voltage.number("min_V", 0.1, kCellMost_V);
  JsonReader temperature = record.object("temperature_limits");
  result.charge_min_C = temperature.number("charge_min_C", kColdest_C, kHottest_C);
  result.charge_max_C = temperature.number("charge_max_C", kColdest_C, kHottest_C);
  result.discharge_min_C = temperature.number("discharge_min_C", kColdest_C, kHottest_C);
  result.discharge_max_C = temperature.number("discharge_max_C", kColdest_C, kHottest_C);
  result.hysteresis_K = temperature.number("hysteresis_K", 0.0, 30.0);
  result.charge_rate_by_C =
      record.object("charge_rate").curve("rate_per_h_by_C", kColdest_C, kHottest_C, 0.0, 100.0);
  if (record.has("balancing")) {
    JsonReader balancing = record.object("balancing");
    result.balance_V = balancing.number("balance_V", 0.1, kCellMost_V);
    result.bleed_A = balancing.number("bleed_A", 0.001, 100.0);
  }
  if (result.min_V > result.max_V) {
    record.report("voltage_limits", "The lower limit lies above the upper one.", "", "min_V < max_V",
                  "Swap them.");
  }
  return result;
}

cell::ChargeStages read_stages(JsonReader& record) {
  cell::ChargeStages result;
  JsonReader stages = record.object("stages");
  result.absorption_V = stages.number("absorption_V", 0.1, kCellMost_V);
  result.float_V = stages.number("float_V", 0.0, kCellMost_V);
  result.rebulk_V = stages.number("rebulk_V", 0.0, kCellMost_V);
  result.tail_rate = stages.number("tail_rate_per_h", 0.0, 1.0);
  result.absorption_max_h = stages.number("absorption_max_h", 0.0, 48.0);
  result.compensation_V_per_K = stages.number("compensation_V_per_K", -0.02, 0.02);
  if (record.has("equalise")) {
    JsonReader equalise = record.object("equalise");
    result.equalise_V = equalise.number("equalise_V", 0.1, kCellMost_V);
    result.equalise_h = equalise.number("equalise_h", 0.1, 24.0);
  }
  return result;
}

cell::LifeFigures read_life(JsonReader& record) {
  cell::LifeFigures result;
  JsonReader cycle = record.object("cycle_life");
  result.cycles = cycle.range("cycles", 1.0, kMany);
  result.depth = cycle.number("depth", 0.01, 1.0);
  result.depth_exponent = cycle.number("depth_exponent", 0.0, 10.0);
  JsonReader calendar = record.object("calendar_life");
  result.calendar_years = calendar.range("calendar_years", 0.1, 100.0);
  result.halving_K = calendar.number("halving_K", 1.0, 100.0);
  return result;
}

}  // namespace

base::Result<cell::Chemistry> read_chemistry(std::string_view text, const std::string& name) {
  static constexpr std::pair<std::string_view, cell::Family> kFamilies[] = {
      {"lithium-ion", cell::Family::kLithiumIon},
      {"lead-acid", cell::Family::kLeadAcid},
      {"sodium-ion", cell::Family::kSodiumIon},
      {"lithium-sulfur", cell::Family::kLithiumSulfur}};
  base::Problems problems;
  const auto value = parse_json(text, name, problems);
  if (!value) return problems;
  JsonReader record(*value, name, problems);
  cell::Chemistry result;
  record.whole("format", kCatalogueFormat, kCatalogueFormat);
  result.id = record.text("id");
  result.name = record.text("name");
  result.short_name = record.text("short_name");
  result.plain_name = record.text("plain_name");
  result.family = record.choice("family", kFamilies);
  result.simulated = record.flag("simulated");
  if (!result.simulated) result.not_simulated_because = record.text("not_simulated_because");
  result.nominal_V = record.object("nominal").number("nominal_V", 0.1, kCellMost_V);
  result.rated_hours = record.object("rating").number("rated_h", 0.1, 200.0);
  result.ocv_V = record.object("open_circuit").curve("ocv_V_by_soc", kLowestCharge, 1.0, 0.1, kCellMost_V);
  if (record.has("entropic")) {
    result.entropic_mV_per_K =
        record.object("entropic").curve("entropic_mV_per_K_by_soc", 0.0, 1.0, -10.0, 10.0);
  }
  if (record.has("hysteresis")) {
    JsonReader hysteresis = record.object("hysteresis");
    result.hysteresis.half_gap_mV = hysteresis.curve("half_gap_mV_by_soc", 0.0, 1.0, 0.0, 200.0);
    result.hysteresis.settling_share = hysteresis.number("settling_share", 0.001, 1.0);
  }
  result.resistance = read_resistance(record);
  JsonReader availability = record.object("availability");
  result.availability.fraction = availability.number("available_fraction", 0.01, 1.0);
  result.availability.exchange_per_h = availability.number("exchange_per_h", 1e-6, 1e4);
  result.availability.full_over_rated = availability.number("full_over_rated", 1.0, 3.0);
  result.capacity_by_temperature = record.object("capacity_by_temperature")
                                       .curve("capacity_share_by_C", kColdest_C, kHottest_C, 0.01, 2.0);
  result.coulombic_efficiency = record.object("coulombic").number("coulombic_efficiency", 0.1, 1.0);
  if (record.has("side_reaction")) {
    JsonReader side = record.object("side_reaction");
    result.side_reaction.current_A_per_Ah = side.number("current_A_per_Ah", 0.0, 0.1);
    result.side_reaction.reference_V = side.number("reference_V", 0.1, kCellMost_V);
    result.side_reaction.per_V = side.number("growth_per_V", 0.0, 100.0);
    result.side_reaction.per_K = side.number("growth_per_K", 0.0, 1.0);
    result.side_reaction.reference_C = side.number("reference_C", kColdest_C, kHottest_C);
  }
  result.self_discharge_per_month =
      record.object("self_discharge").number("self_discharge_per_month", 0.0, 1.0);
  result.specific_heat_J_kgK = record.object("heat").number("specific_heat_J_per_kgK", 100.0, 5000.0);
  result.limits = read_limits(record);
  if (record.has("freezing")) {
    result.freezing_C =
        record.object("freezing").curve("freezing_C_by_soc", kLowestCharge, 1.0, kColdest_C * 2.0, 0.0);
  }
  result.stages = read_stages(record);
  result.usable_depth = record.object("practice").number("usable_depth", 0.01, 1.0);
  result.life = read_life(record);
  if (base::has_error(problems)) return problems;
  return result;
}

}  // namespace voltwright::files
