#pragma once
// The catalogue record of how lead-acid plates wear. Format: docs/formats/catalogue.md.
#include <map>
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/cell/plate_wear.h"

namespace voltwright::files {

/// The record as constants of each kind it has a rating for; the key is the id of a chemistry. All problems
/// of the text come at once; `name` is shown in them.
base::Result<std::map<std::string, cell::PlateWear>> read_plate_wear(std::string_view text,
                                                                     const std::string& name);

}  // namespace voltwright::files
