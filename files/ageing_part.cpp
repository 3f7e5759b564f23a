#include "files/ageing_part.h"

#include <algorithm>
#include <array>
#include <limits>

#include "engine/ageing/cordoba_arenas.h"
#include "engine/ageing/naumann_cycling.h"
#include "engine/ageing/naumann_storage.h"
#include "engine/ageing/schimpe.h"
#include "engine/ageing/schmalstieg.h"
#include "engine/ageing/stress.h"
#include "engine/ageing/wang_2011.h"
#include "engine/ageing/xu.h"
#include "files/json_reader.h"

namespace voltwright::files {

namespace {

using ageing::Validity;

constexpr double kColdest_C = -60.0;
constexpr double kHottest_C = 120.0;
constexpr double kFastest_per_h = 100.0;
constexpr double kMostCycles = 1e6;
constexpr double kMostDays = 20000.0;
constexpr double kMostYears = 100.0;
constexpr double kBig = 1e9;  // of coefficients that only their publication limits
constexpr double kTiny = 1e-15;
constexpr double kMostVolts = 6.0;
constexpr double kMostCell_Ah = 1000.0;
constexpr double kMostPercent = 100.0;

double coefficient(JsonReader& block, const char* key) { return block.number(key, -kBig, kBig); }
double rate(JsonReader& block, const char* key) { return block.number(key, kTiny, kBig); }
double exponent(JsonReader& block, const char* key) { return block.number(key, 0.01, 3.0); }
double share(JsonReader& block, const char* key) { return block.number(key, 0.0, 1.0); }
double energy_J_per_mol(JsonReader& block, const char* key) {
  constexpr double kMost_kJ = 500.0;
  constexpr double kJoule = 1000.0;
  return kJoule * block.number(key, 0.0, kMost_kJ);
}

Validity read_validity(JsonReader& record) {
  JsonReader block = record.object("validity");
  Validity validity;
  validity.coldest_C = block.number("coldest_C", kColdest_C, kHottest_C);
  validity.hottest_C = block.number("hottest_C", validity.coldest_C, kHottest_C);
  const auto maybe = [&](const char* key, double& value, double least, double most) {
    if (block.has(key)) value = block.number(key, least, most);
  };
  maybe("tested_from_C", validity.tested_from_C, validity.coldest_C, validity.hottest_C);
  maybe("tested_to_C", validity.tested_to_C, validity.coldest_C, validity.hottest_C);
  maybe("least_soc", validity.least_soc, 0.0, 1.0);
  maybe("most_soc", validity.most_soc, validity.least_soc, 1.0);
  maybe("fastest_per_h", validity.fastest_per_h, 0.0, kFastest_per_h);
  maybe("tested_full_cycles", validity.tested_full_cycles, 0.0, kMostCycles);
  if (block.has("tested_days"))
    validity.tested_h = ageing::kHoursPerDay * block.number("tested_days", 0.0, kMostDays);
  if (block.has("estimated")) validity.estimated = block.flag("estimated");
  return validity;
}

/// What a reader of one kind has at hand.
struct Source {
  const nlohmann::json& json;
  JsonReader& record;
  const std::string& file;
  base::Problems& problems;
  Validity validity;
  PartRecord& result;
};

using PartPointer = std::shared_ptr<const ageing::Part>;

PartPointer measured_storage(const Source& from) {
  each_of(from.json, "conditions", from.file, from.problems, [&](const auto& item, const auto& place) {
    JsonReader block(item, place, from.problems);
    ageing::StorageCondition condition;
    condition.temperature_C = block.number("temperature_C", kColdest_C, kHottest_C);
    condition.soc = share(block, "soc");
    condition.loss_percent_per_root_day = block.number("loss_percent_per_root_day", kTiny, kMostPercent);
    condition.loss_percent_by_day = block.curve("loss_percent_by_day", 0.0, kMostDays, -1.0, kMostPercent);
    condition.growth_percent_by_day =
        block.curve("growth_percent_by_day", 0.0, kMostDays, -kMostPercent, kBig);
    from.result.storage.push_back(std::move(condition));
  });
  if (base::has_error(from.problems)) return nullptr;
  const std::string fault = ageing::fault_of(from.result.storage);
  if (!fault.empty()) {
    from.record.report("conditions", fault, "", "", "Add the conditions, or use the test for checks only.");
    return nullptr;
  }
  return std::make_shared<ageing::MeasuredStorage>(from.result.storage, from.validity);
}

PartPointer naumann_storage(const Source& from) {
  JsonReader speed = from.record.object("rate");
  JsonReader charge = from.record.object("charge");
  ageing::NaumannStorageConstants constants;
  constants.rate_per_root_s = rate(speed, "rate_per_root_s");
  constants.activation_J_per_mol = energy_J_per_mol(speed, "activation_kJ_per_mol");
  constants.cubic = coefficient(charge, "cubic_coefficient");
  constants.middle = coefficient(charge, "middle_coefficient");
  return std::make_shared<ageing::NaumannStorage>(constants, from.validity);
}

PartPointer naumann_resistance(const Source& from) {
  JsonReader speed = from.record.object("rate");
  JsonReader charge = from.record.object("charge");
  ageing::NaumannResistanceConstants constants;
  constants.rate_per_s = rate(speed, "rate_per_s");
  constants.activation_J_per_mol = energy_J_per_mol(speed, "activation_kJ_per_mol");
  constants.square = coefficient(charge, "square_coefficient");
  constants.peak = coefficient(charge, "peak_coefficient");
  return std::make_shared<ageing::NaumannResistance>(constants, from.validity);
}

PartPointer naumann_cycling(const Source& from) {
  JsonReader loss = from.record.object("loss");
  JsonReader growth = from.record.object("growth");
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
  return std::make_shared<ageing::NaumannCycling>(constants, from.validity);
}

PartPointer schimpe(const Source& from) {
  JsonReader cell = from.record.object("cell");
  JsonReader rest = from.record.object("rest");
  JsonReader warm = from.record.object("warm");
  JsonReader cold = from.record.object("cold");
  JsonReader plating = from.record.object("plating");
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
  return std::make_shared<ageing::Schimpe>(constants, from.validity);
}

PartPointer wang_2011(const Source& from) {
  JsonReader loss = from.record.object("loss");
  ageing::Wang2011Constants constants;
  constants.factor_by_per_h = loss.curve("factor_coefficient_by_per_h", kTiny, kFastest_per_h, kTiny, kBig);
  constants.activation_J_per_mol = energy_J_per_mol(loss, "activation_kJ_per_mol");
  constants.relief_J_per_mol = energy_J_per_mol(loss, "relief_kJ_per_mol");
  constants.exponent = exponent(loss, "throughput_exponent");
  constants.cell_Ah = loss.number("cell_Ah", kTiny, kMostCell_Ah);
  return std::make_shared<ageing::Wang2011>(std::move(constants), from.validity);
}

PartPointer schmalstieg(const Source& from) {
  JsonReader cell = from.record.object("cell");
  JsonReader open = from.record.object("open_circuit");
  JsonReader time = from.record.object("time");
  JsonReader loss = from.record.object("capacity_by_time");
  JsonReader growth = from.record.object("resistance_by_time");
  JsonReader use = from.record.object("capacity_by_use");
  JsonReader use_growth = from.record.object("resistance_by_use");
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
  return std::make_shared<ageing::Schmalstieg>(std::move(constants), from.validity);
}

PartPointer xu(const Source& from) {
  JsonReader film = from.record.object("film");
  JsonReader swings = from.record.object("swings");
  JsonReader stress = from.record.object("stress");
  JsonReader time = from.record.object("time");
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
  return std::make_shared<ageing::Xu>(constants, from.validity);
}

PartPointer cordoba_arenas(const Source& from) {
  JsonReader cell = from.record.object("cell");
  JsonReader loss = from.record.object("loss");
  JsonReader span = from.record.object("span");
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
  return std::make_shared<ageing::CordobaArenas>(constants, from.validity);
}

PartPointer life_points(const Source& from) {
  each_of(from.json, "points", from.file, from.problems, [&](const auto& item, const auto& place) {
    JsonReader block(item, place, from.problems);
    ageing::LifePoint point;
    point.low_soc = share(block, "low_soc");
    point.high_soc = block.number("high_soc", point.low_soc, 1.0);
    point.temperature_C = block.number("temperature_C", kColdest_C, kHottest_C);
    point.charge_per_h = block.number("charge_per_h", 0.0, kFastest_per_h);
    point.discharge_per_h = block.number("discharge_per_h", 0.0, kFastest_per_h);
    point.full_cycles = block.range("full_cycles", 1.0, kMostCycles);
    point.extrapolated = block.flag("extrapolated");
    from.result.life_points.push_back(point);
  });
  ageing::LifePointFigures figures = ageing::figures_of(from.result.life_points);
  if (figures.full_cycles_by_depth.empty())
    from.record.report("points", "No point at 25 degC with a depth above 0 is there.", "", "", "Add one.");
  figures.end_of_life_share = from.record.object("end").number("end_of_life_share", 0.01, 0.99);
  if (from.record.has("shelf")) {
    JsonReader shelf = from.record.object("shelf");
    figures.shelf_years = shelf.number("shelf_years", 0.1, kMostYears);
    figures.shelf_halving_K = shelf.number("halving_K", 1.0, kMostYears);
  }
  return std::make_shared<ageing::LifePoints>(std::move(figures), from.validity);
}

struct Kind {
  const char* name;
  PartPointer (*read)(const Source&);
  bool rests;
  bool swings;
  bool resistance;
};

constexpr std::array kKinds = {Kind{"measured-storage", measured_storage, true, false, false},
                               Kind{"naumann-storage", naumann_storage, true, false, false},
                               Kind{"naumann-resistance", naumann_resistance, true, false, true},
                               Kind{"naumann-cycling", naumann_cycling, false, true, true},
                               Kind{"schimpe", schimpe, true, true, false},
                               Kind{"wang-2011", wang_2011, false, true, false},
                               Kind{"schmalstieg", schmalstieg, true, true, true},
                               Kind{"xu", xu, true, true, false},
                               Kind{"cordoba-arenas", cordoba_arenas, false, true, false},
                               Kind{"life-points", life_points, false, true, false}};

const Kind* kind_of(const std::string& name) {
  const auto* const found =
      std::find_if(kKinds.begin(), kKinds.end(), [&](const Kind& kind) { return name == kind.name; });
  return found != kKinds.end() ? found : nullptr;
}

}  // namespace

bool is_part(const std::string& kind) { return kind_of(kind) != nullptr; }

PartRecord read_part(const nlohmann::json& json, const std::string& name, const std::string& file,
                     base::Problems& problems) {
  PartRecord result;
  const Kind* const kind = kind_of(name);
  if (kind == nullptr) return result;
  base::Problems own;
  JsonReader record(json, file, own);
  result.id = record.text("id");
  (void)record.text("name");
  result.source = record.text("source");
  Validity validity = read_validity(record);
  validity.rests = kind->rests || record.has("shelf");
  validity.swings = kind->swings;
  result.knows_resistance = kind->resistance;
  PartPointer part = kind->read({json, record, file, own, validity, result});
  if (!base::has_error(own)) result.part = std::move(part);
  problems.insert(problems.end(), own.begin(), own.end());
  return result;
}

}  // namespace voltwright::files
