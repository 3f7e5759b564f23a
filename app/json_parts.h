#pragma once
// Pieces of the JSON mapping that several answers share.
#include <nlohmann/json.hpp>
#include <string>

#include "engine/base/problem.h"
#include "engine/units/ranged.h"

namespace voltwright::app {

nlohmann::ordered_json range_json(const units::Ranged& range);
nlohmann::ordered_json problem_list_json(const base::Problems& problems);

/// Indented text with a line feed at its end; bytes that are not UTF-8 are replaced.
std::string json_text(const nlohmann::ordered_json& json);

}  // namespace voltwright::app
