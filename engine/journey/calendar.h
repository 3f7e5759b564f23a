#pragma once
// A leg minute by minute in local civil time.
#include <cstdint>
#include <vector>

#include "engine/journey/leg.h"

namespace voltwright::journey {

struct Calendar {
  std::vector<std::int32_t> second_of_day;
  std::vector<std::int32_t> day;      // local days since 1970
  std::vector<std::uint8_t> driving;  // 1 = under way
  std::vector<std::uint8_t> shore;    // 1 = mains connected
};

/// Whole minutes of a leg.
std::size_t minutes_of(const Leg& leg);

/// Local time, driving and shore power of each minute of a leg. Driving starts at leg.drive_from_s each day
/// and lasts leg.drive_per_day; mains is never connected while driving.
Calendar calendar_of(const Leg& leg);

}  // namespace voltwright::journey
