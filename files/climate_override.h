#pragma once
// Climate of a place with the figures that the user puts in place of those of the tables.
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/sky/climate_override.h"
#include "files/climate.h"

namespace voltwright::files {

/// Which figures of which months are overridden, "mean temperature of Jan to Mar, wind of all months"; empty
/// if none is.
std::string override_words(const sky::ClimateOverride& given);

/// ClimateTable::at with the given months in place of its own, and `origin` saying so. Where the tables know
/// nothing, a clearness and a temperature for every month are enough: the other figures are then assumed.
base::Result<sky::MonthlyClimate> climate_of(const ClimateTable& table, const sky::Site& site,
                                             const sky::ClimateOverride& given,
                                             std::vector<ClimateSource>* sources = nullptr);

/// Reads a TOML text whose keys are those of `[leg.climate]` (docs/formats/plan.md) for a place at this
/// latitude, which light on the level is turned into clearness with. All problems at once.
base::Result<sky::ClimateOverride> read_climate_override(std::string_view text, const std::string& name,
                                                         double latitude_deg);

}  // namespace voltwright::files
