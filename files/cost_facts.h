#pragma once
// The catalogue's facts about what a bank costs beside its price. Format: docs/formats/catalogue.md.
#include <span>
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/cost/money.h"
#include "files/embedded.h"

namespace voltwright::files {

/// Reads one record of costs/; `name` is shown in problems, and all problems of the text come at once.
base::Result<cost::RunningFacts> read_cost_record(std::string_view text, const std::string& name);

/// The one record of costs/ among `files`, and its problems; that there is none or more than one is one of
/// them.
base::Result<cost::RunningFacts> read_cost_files(std::span<const EmbeddedFile> files);

/// That of the catalogue packed into the program.
base::Result<cost::RunningFacts> read_cost_facts();

}  // namespace voltwright::files
