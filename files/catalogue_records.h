#pragma once
// One catalogue record from its JSON text. Formats: docs/formats/catalogue.md.
#include <string>
#include <string_view>

#include "engine/bank/battery.h"
#include "engine/base/result.h"
#include "engine/cell/chemistry.h"
#include "engine/cell/format.h"
#include "engine/demand/appliance.h"

namespace voltwright::files {

inline constexpr int kCatalogueFormat = 1;

/// Each reads one record; `name` is shown in problems, and all problems of the text come at once. Sources
/// and unknown keys are not looked at: tools/check_catalogue does that. Dated facts: files/chart_catalogue.h.
base::Result<cell::Chemistry> read_chemistry(std::string_view text, const std::string& name);
base::Result<cell::CellFormat> read_cell(std::string_view text, const std::string& name);
base::Result<bank::Battery> read_battery(std::string_view text, const std::string& name);
base::Result<demand::Appliance> read_appliance(std::string_view text, const std::string& name);

}  // namespace voltwright::files
