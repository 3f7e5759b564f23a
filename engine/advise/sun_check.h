#pragma once
// Statements about solar arrays that need no season: strings in the cold and in the heat, and snow.
#include <span>
#include <string>
#include <vector>

#include "engine/advise/caution.h"
#include "engine/season/series.h"

namespace voltwright::advise {

/// One checked statement about an array, with its working.
struct SunFinding {
  std::string array;
  std::string matter;  // "String voltage in the cold", "Snow", "Modules too low for the battery"
  bool holds = true;
  double value = 0.0;
  double limit = 0.0;
  std::string unit;
  std::string working;
  std::string say;
};

/// Coldest air to reckon with while the journey is at its places, degC: the least over its months of
/// mean - daily range / 2 - (5 K + 0.65 times the yearly swing of the monthly means), and the lowest hour of
/// a typical year. The bracket is an assumption (from memory, rough fit to station records, 6 K either way).
/// Without a leg 25.
double coldest_air_C(std::span<const journey::Leg> legs, std::span<const season::LegSky> skies);

/// Coldest monthly mean of the air during the journey, degC; 25 without a leg.
double coldest_month_C(std::span<const journey::Leg> legs, std::span<const season::LegSky> skies);

/// Every finding, those that hold too; `skies` has one entry a leg.
std::vector<SunFinding> sun_findings(const Plan& plan, std::span<const season::LegSky> skies);

/// What of it is a caution: everything that does not hold.
std::vector<Caution> sun_cautions(std::span<const SunFinding> findings);

}  // namespace voltwright::advise
