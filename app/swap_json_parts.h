#pragma once
// Pieces of the JSON mapping that runtimes and equivalents share.
#include <nlohmann/json.hpp>

#include "engine/advise/runtime.h"

namespace voltwright::app {

nlohmann::ordered_json run_json(const advise::Run& run);
nlohmann::ordered_json load_json(const advise::SteadyLoad& load);

}  // namespace voltwright::app
