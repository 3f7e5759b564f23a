#pragma once
// Monthly figures that a person puts in place of those of the climate tables.
#include <array>
#include <cstddef>
#include <optional>

namespace voltwright::sky {

/// January first; a month without a value keeps that of the tables.
struct ClimateOverride {
  using Months = std::array<std::optional<double>, 12>;
  Months clearness;      // monthly mean clearness index, 0.1..0.8
  Months temperature_C;  // monthly mean air temperature
  Months daily_range_K;  // monthly mean of daily maximum minus daily minimum
  Months wind_m_s;       // monthly mean at 10 m

  /// True if a figure of the month, counted from 0, is the user's own.
  bool has(std::size_t month) const {
    return clearness[month] || temperature_C[month] || daily_range_K[month] || wind_m_s[month];
  }

  bool operator==(const ClimateOverride&) const = default;
};

}  // namespace voltwright::sky
