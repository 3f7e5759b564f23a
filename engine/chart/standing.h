#pragma once
// The stated quantity by which each chemistry is placed in one matter. Rule: docs/method/scores.md.
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/chart/chart.h"

namespace voltwright::chart {

enum class Matter {
  kEnergy,
  kVolume,
  kPower,
  kCharge,
  kLife,
  kSafety,
  kCold,
  kPrice,
  kEfficiency,
  kStanding
};

inline constexpr std::array kMatters = {
    Matter::kEnergy, Matter::kVolume, Matter::kPower, Matter::kCharge,     Matter::kLife,
    Matter::kSafety, Matter::kCold,   Matter::kPrice, Matter::kEfficiency, Matter::kStanding};

/// One word, as typed on the command line: "energy".
std::string_view name_of(Matter matter);

/// "the most Wh/kg of the cell (lead-acid: of the block)".
std::string_view rule_of(Matter matter);

/// Null if no matter has this name.
std::optional<Matter> matter_named(std::string_view name);

/// What a chemistry is placed by. More is better; the second and third number decide between equals.
struct Standing {
  std::array<double, 3> key{};
  double value = 0.0;    // the stated quantity itself
  std::string unit;      // of `value`
  std::string in_words;  // instead of a value, where a class was stated
  bool soft = false;     // an assumption or from memory
};

/// None if the quantity is not known as of the chart's year.
std::optional<Standing> standing_of(const Row& row, Matter matter);

/// "no fire of its own", "low", "medium", "high", "not known".
std::string_view name_of(Runaway runaway);

}  // namespace voltwright::chart
