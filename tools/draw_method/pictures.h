#pragma once
// The pictures of one cell kind: discharge at several rates, in the cold, capacity against rate, charge.
#include <optional>
#include <span>

#include "tools/draw_method/chart.h"
#include "tools/draw_method/points.h"

namespace voltwright::tools {

/// Voltage against charge drawn at 25 degC, at the rates the kind bears and those that were published.
Chart discharge_chart(const Kind& kind, std::span<const PublishedSet> sets);

/// Voltage against charge drawn at several temperatures, and capacity against temperature.
Chart cold_chart(const Kind& kind, std::span<const PublishedSet> sets);

/// Capacity against the time of discharge; nothing where no such points were published.
std::optional<Chart> rate_chart(const Kind& kind, std::span<const PublishedSet> sets);

/// Voltage, current and state of charge of a charge with its stages, from the usable depth of practice.
Chart charge_chart(const Kind& kind, std::span<const PublishedSet> sets);

}  // namespace voltwright::tools
