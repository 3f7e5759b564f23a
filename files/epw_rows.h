#pragma once
// The text of an EPW file as numbers, still in its own clock: header and one row per record.
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/sky/weather.h"

namespace voltwright::files {

/// The five columns that are used, in the order of EpwRow::value.
enum class EpwColumn : std::uint8_t { kTemperature, kGhi, kDni, kDhi, kWind };
inline constexpr std::size_t kEpwColumns = 5;

struct EpwRow {
  int line = 0;
  int month = 1;  // 1..12
  int day = 1;
  int hour = 1;                                          // 1..24: the hour that ends at this time
  std::array<std::optional<double>, kEpwColumns> value;  // nothing where the file says missing
};

struct EpwRows {
  sky::Site site;
  std::string city;
  double zone_h = 0.0;  // local standard time minus UTC
  int records_per_hour = 1;
  std::vector<EpwRow> rows;  // 29 February left out
  int last_line = 0;
};

/// What a column is called in words.
std::string_view epw_column_name(EpwColumn column);

/// Reads header and rows. Every field that is used must be a number, a missing code or empty, and in range;
/// all problems at once, at most 25 of them.
base::Result<EpwRows> read_epw_rows(std::string_view text, const std::string& name);

}  // namespace voltwright::files
