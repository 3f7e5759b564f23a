#pragma once
// A composed battery as a record of the catalogue. Format: docs/formats/catalogue.md.
#include <nlohmann/json.hpp>
#include <string>

#include "engine/bank/builder.h"

namespace voltwright::files {

/// The record, which read_battery, the schema and the rules of the catalogue accept; numbers have six
/// significant digits. Every block says that it was composed, of what and with which assumptions.
/// @param price_from  where the price of made.battery comes from, a sentence
/// Precondition: made.house found a system.
nlohmann::ordered_json composed_record(const bank::Composition& made, const cell::CellFormat& format,
                                       const std::string& price_from);

}  // namespace voltwright::files
