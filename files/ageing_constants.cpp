#include "files/ageing_constants.h"

#include <limits>

#include "engine/ageing/cordoba_arenas.h"
#include "engine/ageing/naumann_cycling.h"
#include "engine/ageing/naumann_storage.h"
#include "engine/ageing/schimpe.h"
#include "engine/ageing/schmalstieg.h"
#include "engine/ageing/wang_2011.h"
#include "engine/ageing/xu.h"

namespace voltwright::files {

namespace {

constexpr double kColdest_C = -60.0;
constexpr double kHottest_C = 120.0;
constexpr double kFastest_per_h = 100.0;
constexpr double kBig = 1e9;  // of coefficients that only their publication limits
constexpr double kTiny = 1e-15;
constexpr double kMostVolts = 6.0;
constexpr double kMostCell_Ah = 1000.0;

double coefficient(JsonReader& block, const char* key) { return block.number(key, -kBig, kBig); }
double rate(JsonReader& block, const char* key) { return block.number(key, kTiny, kBig); }
double exponent(JsonReader& block, const char* key) { return block.number(key, 0.01, 3.0); }
double share(JsonReader& block, const char* key) { return block.number(key, 0.0, 1.0); }
double energy_J_per_mol(JsonReader& block, const char* key) {
  constexpr double kMost_kJ = 500.0;
  constexpr double kJoule = 1000.0;
  return kJoule * block.number(key, 0.0, kMost_kJ);
}

}  // namespace

PartPointer read_naumann_storage(JsonReader& record, const ageing::Validity& validity) {
  JsonReader speed = record.object("rate");
  JsonReader charge = record.object("charge");
  ageing::NaumannStorageConstants constants;
  constants.rate_per_root_s = rate(speed, "rate_per_root_s");
  constants.activation_J_per_mol = energy_J_per_mol(speed, "activation_kJ_per_mol");
  constants.cubic = coefficient(charge, "cubic_coefficient");
  constants.middle = coefficient(charge, "middle_coefficient");
  return std::make_shared<ageing::NaumannStorage>(constants, validity);
}

PartPointer read_naumann_resistance(JsonReader& record, const ageing::Validity& validity) {
  JsonReader speed = record.object("rate");
  JsonReader charge = record.object("charge");
  ageing::NaumannResistanceConstants constants;
  constants.rate_per_s = rate(speed, "rate_per_s");
  constants.activation_J_per_mol = energy_J_per_mol(speed, "activation_kJ_per_mol");
  constants.square = coefficient(charge, "square_coefficient");
  constants.peak = coefficient(charge, "peak_coefficient");
  return std::make_shared<ageing::NaumannResistance>(constants, validity);
}

PartPointer read_naumann_cycling(JsonReader& record, const ageing::Validity& validity) {
  JsonReader loss = record.object("loss");
  JsonReader growth = record.object("growth");
  ageing::NaumannCyclingConstants constants;
  constants.by_rate = coefficient(loss, "rate_coefficient");
  constants.base = coefficient(loss, "base_coefficient");
  constants.cubic = coefficient(loss, "cubic_coefficient");
  constants.middle = coefficient(loss, "middle_coefficient");
  constants.centre_depth = share(loss, "centre_depth");
  constants.resistance_by_rate = coefficient(growth, "rate_coefficient");
  constants.resistance_base = coefficient(growth, "base_coefficient");
  constants.resistance_most_per_h = growth.has("held_above_per_h")
                                        ? growth.number("held_above_per_h", 0.0, kFastest_per_h)
                                        : std::numeric_limits<double>::infinity();
  constants.resistance_cubic = coefficient(growth, "cubic_coefficient");
  constants.resistance_middle = coefficient(growth, "middle_coefficient");
  constants.resistance_centre_depth = share(growth, "centre_depth");
  return std::make_shared<ageing::NaumannCycling>(constants, validity);
}

PartPointer read_schimpe(JsonReader& record, const ageing::Validity& validity) {
  JsonReader cell = record.object("cell");
  JsonReader rest = record.object("rest");
  JsonReader warm = record.object("warm");
  JsonReader cold = record.object("cold");
  JsonReader plating = record.object("plating");
  ageing::SchimpeConstants constants;
  constants.cell_Ah = cell.number("cell_Ah", kTiny, kMostCell_Ah);
  constants.reference_per_h = cell.number("reference_per_h", 0.0, kFastest_per_h);
  constants.rest_per_root_h = rate(rest, "rate_per_root_h");
  constants.rest_activation_J_per_mol = energy_J_per_mol(rest, "activation_kJ_per_mol");
  constants.alpha = share(rest, "transfer_coefficient");
  constants.reference_V = rest.number("reference_V", 0.0, kMostVolts);
  constants.offset = coefficient(rest, "offset_coefficient");
  constants.warm_per_root_Ah = rate(warm, "rate_per_root_Ah");
  constants.warm_activation_J_per_mol = energy_J_per_mol(warm, "activation_kJ_per_mol");
  constants.cold_per_root_Ah = rate(cold, "rate_per_root_Ah");
  constants.cold_activation_J_per_mol = energy_J_per_mol(cold, "activation_kJ_per_mol");
  constants.cold_by_rate_h = coefficient(cold, "rate_coefficient_h");
  constants.plating_per_Ah = rate(plating, "rate_per_Ah");
  constants.plating_activation_J_per_mol = energy_J_per_mol(plating, "activation_kJ_per_mol");
  constants.plating_by_rate_h = coefficient(plating, "rate_coefficient_h");
  constants.plating_above_soc = share(plating, "above_soc");
  return std::make_shared<ageing::Schimpe>(constants, validity);
}

PartPointer read_wang_2011(JsonReader& record, const ageing::Validity& validity) {
  JsonReader loss = record.object("loss");
  ageing::Wang2011Constants constants;
  constants.factor_by_per_h = loss.curve("factor_coefficient_by_per_h", kTiny, kFastest_per_h, kTiny, kBig);
  constants.activation_J_per_mol = energy_J_per_mol(loss, "activation_kJ_per_mol");
  constants.relief_J_per_mol = energy_J_per_mol(loss, "relief_kJ_per_mol");
  constants.exponent = exponent(loss, "throughput_exponent");
  constants.cell_Ah = loss.number("cell_Ah", kTiny, kMostCell_Ah);
  return std::make_shared<ageing::Wang2011>(std::move(constants), validity);
}

PartPointer read_schmalstieg(JsonReader& record, const ageing::Validity& validity) {
  JsonReader cell = record.object("cell");
  JsonReader open = record.object("open_circuit");
  JsonReader time = record.object("time");
  JsonReader loss = record.object("capacity_by_time");
  JsonReader growth = record.object("resistance_by_time");
  JsonReader use = record.object("capacity_by_use");
  JsonReader use_growth = record.object("resistance_by_use");
  constexpr double kMost_K = 1e5;
  ageing::SchmalstiegConstants constants;
  constants.cell_Ah = cell.number("cell_Ah", kTiny, kMostCell_Ah);
  constants.rest_V_by_soc = open.curve("rest_V_by_soc", 0.0, 1.0, 0.0, kMostVolts);
  constants.time_exponent = exponent(time, "time_exponent");
  constants.held_below_C = time.number("held_below_C", kColdest_C, kHottest_C);
  constants.capacity_slope_per_V = coefficient(loss, "slope_coefficient_per_V");
  constants.capacity_offset = coefficient(loss, "offset_coefficient");
  constants.capacity_K = loss.number("activation_K", 0.0, kMost_K);
  constants.resistance_slope_per_V = coefficient(growth, "slope_coefficient_per_V");
  constants.resistance_offset = coefficient(growth, "offset_coefficient");
  constants.resistance_K = growth.number("activation_K", 0.0, kMost_K);
  constants.use_square = coefficient(use, "square_coefficient");
  constants.use_centre_V = use.number("centre_V", 0.0, kMostVolts);
  constants.use_base = coefficient(use, "base_coefficient");
  constants.use_by_depth = coefficient(use, "depth_coefficient");
  constants.growth_square = coefficient(use_growth, "square_coefficient");
  constants.growth_centre_V = use_growth.number("centre_V", 0.0, kMostVolts);
  constants.growth_base = coefficient(use_growth, "base_coefficient");
  constants.growth_by_depth = coefficient(use_growth, "depth_coefficient");
  constants.growth_least = coefficient(use_growth, "least_coefficient");
  return std::make_shared<ageing::Schmalstieg>(std::move(constants), validity);
}

PartPointer read_xu(JsonReader& record, const ageing::Validity& validity) {
  JsonReader film = record.object("film");
  JsonReader swings = record.object("swings");
  JsonReader stress = record.object("stress");
  JsonReader time = record.object("time");
  ageing::XuConstants constants;
  constants.film_share = share(film, "film_share");
  constants.film_factor = rate(film, "film_factor_coefficient");
  constants.depth_factor = rate(swings, "depth_coefficient");
  constants.depth_exponent = coefficient(swings, "depth_exponent");
  constants.depth_offset = coefficient(swings, "offset_coefficient");
  if (constants.depth_factor + constants.depth_offset <= 0.0)
    swings.report("offset_coefficient", "A full swing would do no damage or a negative one.", "",
                  "above -depth_coefficient", "Check the sign and the exponent.");
  constants.charge_factor = coefficient(stress, "charge_coefficient");
  constants.charge_centre = share(stress, "centre_soc");
  constants.temperature_per_K = coefficient(stress, "temperature_per_K");
  constants.time_per_s = rate(time, "rate_per_s");
  return std::make_shared<ageing::Xu>(constants, validity);
}

PartPointer read_cordoba_arenas(JsonReader& record, const ageing::Validity& validity) {
  JsonReader cell = record.object("cell");
  JsonReader loss = record.object("loss");
  JsonReader span = record.object("span");
  ageing::CordobaArenasConstants constants;
  constants.cell_Ah = cell.number("cell_Ah", kTiny, kMostCell_Ah);
  constants.depleting_share = share(cell, "depleting_share");
  constants.base = rate(loss, "base_coefficient");
  constants.by_depleting = coefficient(loss, "depleting_coefficient");
  constants.depleting_exponent = exponent(loss, "depleting_exponent");
  constants.by_least = coefficient(loss, "least_coefficient");
  constants.activation_J_per_mol = energy_J_per_mol(loss, "activation_kJ_per_mol");
  constants.exponent = exponent(loss, "throughput_exponent");
  constants.least_from_soc = share(span, "least_from_soc");
  constants.least_to_soc = span.number("least_to_soc", constants.least_from_soc, 1.0);
  return std::make_shared<ageing::CordobaArenas>(constants, validity);
}

}  // namespace voltwright::files
