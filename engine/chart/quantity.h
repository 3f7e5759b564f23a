#pragma once
// What the chart of chemistries compares.
#include <array>
#include <string_view>

namespace voltwright::chart {

enum class Quantity {
  kEnergyPerMass,
  kEnergyPerVolume,
  kContinuousRate,
  kPeakRate,
  kChargeRate,
  kCycles,
  kCalendarLife,
  kChargeFrom,
  kChargeTo,
  kDischargeFrom,
  kDischargeTo,
  kOnset,
  kSelfDischarge,
  kEfficiency,
  kPrice,
  kEnergyTarget
};

inline constexpr std::array kQuantities = {
    Quantity::kEnergyPerMass, Quantity::kEnergyPerVolume, Quantity::kContinuousRate, Quantity::kPeakRate,
    Quantity::kChargeRate,    Quantity::kCycles,          Quantity::kCalendarLife,   Quantity::kChargeFrom,
    Quantity::kChargeTo,      Quantity::kDischargeFrom,   Quantity::kDischargeTo,    Quantity::kOnset,
    Quantity::kSelfDischarge, Quantity::kEfficiency,      Quantity::kPrice,          Quantity::kEnergyTarget};

/// A cell alone; a pack as makers of vehicles and stores buy it; a finished battery as a shop sells it.
enum class Level { kCell, kPack, kBattery };

inline constexpr std::array kLevels = {Level::kCell, Level::kPack, Level::kBattery};

/// "energy per mass".
std::string_view name_of(Quantity quantity);

/// "Wh/kg"; shares and counts have an empty one.
std::string_view unit_of(Quantity quantity);

/// "cell", "pack", "battery".
std::string_view name_of(Level level);

}  // namespace voltwright::chart
