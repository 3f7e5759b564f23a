#pragma once
// Instants and numbers as they stand in a GPX file.
#include <cstdint>
#include <optional>
#include <string_view>

namespace voltwright::files {

/// UTC seconds since 1970 of "2026-05-01T08:30:00Z"; fractions of a second are dropped, an offset "+02:00" is
/// taken off, and none means UTC. Years 1970 to 2100; nothing for any other text. Source: ISO 8601 as in XML
/// Schema (dateTime).
std::optional<std::int64_t> utc_of_text(std::string_view text);

/// A decimal number ("-12.5", no exponent) with nothing but blanks around it; nothing for any other text.
std::optional<double> decimal_of_text(std::string_view text);

}  // namespace voltwright::files
