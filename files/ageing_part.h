#pragma once
// The parts of ageing laws from their records.
#include <memory>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "engine/ageing/life_points.h"
#include "engine/ageing/measured_storage.h"
#include "engine/ageing/part.h"
#include "engine/base/problem.h"

namespace voltwright::files {

/// A part with what its record says besides.
struct PartRecord {
  std::string id;
  std::string source;  // bibliography key of the publication
  std::shared_ptr<const ageing::Part> part;
  bool knows_resistance = false;
  ageing::StorageTable storage;                // of the kind "measured-storage"
  std::vector<ageing::LifePoint> life_points;  // of the kind "life-points"
};

/// Whether `kind` is one that read_part knows.
bool is_part(const std::string& kind);

/// Reads the record of a part. Its `part` is null if a problem was noted.
PartRecord read_part(const nlohmann::json& record, const std::string& kind, const std::string& file,
                     base::Problems& problems);

/// Calls `read(item, place)` for every object of the list `key`; notes a problem if it is missing, is no
/// list, or holds anything else.
template <class Read>
void each_of(const nlohmann::json& record, const char* key, const std::string& file, base::Problems& problems,
             Read read) {
  const auto note = [&](const std::string& field, const char* what) {
    base::Problem problem;
    problem.what = what;
    problem.where.file = file;
    problem.field = field;
    problem.remedy = "Write [{...}, {...}].";
    problems.push_back(std::move(problem));
  };
  const auto list = record.find(key);
  if (list == record.end() || !list->is_array()) {
    note(key, "This list is missing.");
    return;
  }
  std::size_t number = 0;
  for (const nlohmann::json& item : *list) {
    std::string place = key;
    place += '[';
    place += std::to_string(number++);
    place += ']';
    if (item.is_object()) {
      std::string where = file;
      where += ": ";
      where += place;
      read(item, where);
    } else {
      note(place, "This must be an object.");
    }
  }
}

}  // namespace voltwright::files
