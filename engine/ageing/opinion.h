#pragma once
// The laws that speak for a chemistry, measured ones first.
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/ageing/law.h"

namespace voltwright::ageing {

/// What a law rests on.
enum class Basis {
  kMeasured,    // a table of measurements, interpolated
  kLaw,         // a published law, or its form fitted again
  kLifePoints,  // cycles to the end of life, read as a straight line
  kHandbook,    // cycle figures of handbooks; nothing measured
};

/// One law with what a reader must know of it.
struct Opinion {
  std::string id;       // of the catalogue, e.g. "lfp-measured"
  std::string name;     // in words
  std::string source;   // bibliography keys with places, of all parts
  std::string caution;  // what it leaves out or where it is known to err; never empty
  Basis basis = Basis::kLaw;
  bool knows_rest = true;    // says what time at rest does
  bool knows_swings = true;  // says what cycling does
  bool knows_resistance = false;
  std::shared_ptr<const Law> law;
};

/// All that speaks for one chemistry. The first opinion is the default; where it is kOutside for an exposure
/// the next that is not should be asked.
struct Opinions {
  std::string chemistry;
  std::vector<Opinion> opinions;
  std::string gap;                 // which law is missing and why; empty if none is
  double life_spread = 0.0;        // coefficient of variation of the lives of like cells under like use
  std::string life_spread_source;  // empty if none was measured
};

/// The opinions on a chemistry by its id; null if the catalogue has none and says nothing of it.
const Opinions* opinions_on(std::span<const Opinions> all, std::string_view chemistry);

/// The first opinion that is not kOutside for the exposure, or the first of all if every one is; null if
/// there is no opinion.
const Opinion* leading_opinion(const Opinions& opinions, const Exposure& exposure, const Aged& aged);

/// Repetitions of an exposure, from new, until the capacity is down to `share`; at most `most`, which is also
/// the answer for an exposure that ages nothing. For laws whose losses grow with use.
double repetitions_until(const Law& law, const Exposure& exposure, double share, double most);

}  // namespace voltwright::ageing
