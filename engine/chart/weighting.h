#pragma once
// How much each matter counts for a use.
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/chart/standing.h"

namespace voltwright::chart {

struct Weight {
  Matter matter = Matter::kEnergy;
  double weight = 0.0;  // 0 to 100
};

struct Weighting {
  std::string id;    // empty for one that was typed
  std::string name;  // "Pocket device"
  std::string why;
  std::vector<Weight> weights;  // each matter once; those left out count nothing
};

inline constexpr double kGreatestWeight = 100.0;

/// Every matter once.
Weighting even_weighting();

/// Reads "energy=3,price=1": names of matters, weights from 0 to kGreatestWeight, one of them above 0. All
/// problems at once, with field "--weigh".
base::Result<Weighting> parse_weighting(std::string_view text);

/// "energy 3, price 1".
std::string to_text(const Weighting& weighting);

}  // namespace voltwright::chart
