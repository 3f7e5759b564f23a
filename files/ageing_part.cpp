#include "files/ageing_part.h"

#include <algorithm>
#include <array>

#include "engine/ageing/stress.h"
#include "files/ageing_constants.h"
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
constexpr double kMostGrowth_percent = 1e4;
constexpr double kTiny = 1e-15;
constexpr double kMostPercent = 100.0;

double share(JsonReader& block, const char* key) { return block.number(key, 0.0, 1.0); }

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
  maybe("most_soc", validity.most_soc, 0.0, 1.0);
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

PartPointer measured_storage(const Source& from) {
  each_of(from.json, "conditions", from.file, from.problems, [&](const auto& item, const auto& place) {
    JsonReader block(item, place, from.problems);
    ageing::StorageCondition condition;
    condition.temperature_C = block.number("temperature_C", kColdest_C, kHottest_C);
    condition.soc = share(block, "soc");
    condition.loss_percent_per_root_day = block.number("loss_percent_per_root_day", kTiny, kMostPercent);
    condition.loss_percent_by_day = block.curve("loss_percent_by_day", 0.0, kMostDays, -1.0, kMostPercent);
    condition.growth_percent_by_day =
        block.curve("growth_percent_by_day", 0.0, kMostDays, -kMostPercent, kMostGrowth_percent);
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

template <PartPointer (*Reader)(JsonReader&, const Validity&)>
PartPointer constants(const Source& from) {
  return Reader(from.record, from.validity);
}

struct Kind {
  const char* name;
  PartPointer (*read)(const Source&);
  bool rests;
  bool swings;
  bool resistance;
};

constexpr std::array kKinds = {
    Kind{"measured-storage", measured_storage, true, false, false},
    Kind{"naumann-storage", constants<read_naumann_storage>, true, false, false},
    Kind{"naumann-resistance", constants<read_naumann_resistance>, true, false, true},
    Kind{"naumann-cycling", constants<read_naumann_cycling>, false, true, true},
    Kind{"schimpe", constants<read_schimpe>, true, true, false},
    Kind{"wang-2011", constants<read_wang_2011>, false, true, false},
    Kind{"schmalstieg", constants<read_schmalstieg>, true, true, true},
    Kind{"xu", constants<read_xu>, true, true, false},
    Kind{"cordoba-arenas", constants<read_cordoba_arenas>, false, true, false},
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
