#pragma once
// Spellings of units, their dimension and their size in the coherent unit.
#include <span>
#include <string>
#include <string_view>

namespace voltwright::units {

enum class Kind {
  kPower,
  kEnergy,
  kCharge,
  kVoltage,
  kCurrent,
  kResistance,
  kDuration,
  kLength,
  kArea,
  kVolume,
  kMass,
  kTemperature,
  kTemperatureDifference,
  kHeatConductance,
  kFraction,
};

/// One spelling: value in the coherent unit = size * number + offset.
struct UnitSpelling {
  std::string_view text;
  Kind kind;
  double size;
  double offset = 0.0;
};

std::span<const UnitSpelling> unit_spellings();

/// The spelling that equals `unit` exactly; null if none.
const UnitSpelling* find_unit(std::string_view unit);

/// Spelling of `kind` that looks most like `unit`; empty if none is near.
std::string_view near_unit(std::string_view unit, Kind kind);

/// "a power", "a charge" …
std::string_view kind_words(Kind kind);
/// "45 W", "100 Ah" …
std::string_view kind_example(Kind kind);
/// "mW, W or kW" …
std::string_view kind_units(Kind kind);

}  // namespace voltwright::units
