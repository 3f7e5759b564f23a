#pragma once
// Loads as power in each minute of a stay, for one draw of use.
#include <cstdint>
#include <span>
#include <vector>

#include "engine/demand/load.h"

namespace voltwright::demand {

/// What the loads need to know of each minute; all spans are equally long.
struct Timeline {
  std::span<const std::int32_t> second_of_day;  // local civil time
  std::span<const std::int32_t> day;            // local day number, rising
  std::span<const std::uint8_t> driving;        // 1 = under way
  std::span<const float> room_C;                // where the cooled spaces stand
  bool occupied = true;
};

/// Mean power of one far load in each minute [W].
struct FarMinutes {
  std::vector<float> power_W, essential_W, surge_W;
};

/// Mean power in each minute [W]. Inverter powers are at the inverter's input.
struct DemandMinutes {
  std::vector<float> direct_W;
  std::vector<float> inverter_W;
  std::vector<float> essential_direct_W;
  std::vector<float> essential_inverter_W;
  std::vector<float> surge_direct_W;  // largest single start above running power, 0 if none
  std::vector<float> surge_inverter_W;
  std::vector<FarMinutes> far;  // one for each far load, in the order of the loads; not in the sums above
};

/// Demand of all loads. Events are placed by random streams keyed {seed, season, load, day}.
DemandMinutes demand_minutes(std::span<const Load> loads, const Inverter* inverter, const Timeline& timeline,
                             std::uint64_t seed, std::uint64_t season);

}  // namespace voltwright::demand
