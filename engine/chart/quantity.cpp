#include "engine/chart/quantity.h"

namespace voltwright::chart {

std::string_view name_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::kEnergyPerMass:
      return "energy per mass";
    case Quantity::kEnergyPerVolume:
      return "energy per volume";
    case Quantity::kContinuousRate:
      return "continuous discharge";
    case Quantity::kPeakRate:
      return "peak discharge";
    case Quantity::kChargeRate:
      return "charge";
    case Quantity::kCycles:
      return "cycles";
    case Quantity::kCalendarLife:
      return "life on the shelf";
    case Quantity::kChargeFrom:
      return "charge from";
    case Quantity::kChargeTo:
      return "charge up to";
    case Quantity::kDischargeFrom:
      return "discharge from";
    case Quantity::kDischargeTo:
      return "discharge up to";
    case Quantity::kOnset:
      return "onset of runaway";
    case Quantity::kSelfDischarge:
      return "self-discharge";
    case Quantity::kEfficiency:
      return "round-trip efficiency";
    case Quantity::kPrice:
      return "price";
    case Quantity::kEnergyTarget:
      return "energy per mass aimed at";
  }
  return "";
}

std::string_view unit_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::kEnergyPerMass:
    case Quantity::kEnergyTarget:
      return "Wh/kg";
    case Quantity::kEnergyPerVolume:
      return "Wh/L";
    case Quantity::kContinuousRate:
    case Quantity::kPeakRate:
    case Quantity::kChargeRate:
      return "1/h";
    case Quantity::kCalendarLife:
      return "years";
    case Quantity::kChargeFrom:
    case Quantity::kChargeTo:
    case Quantity::kDischargeFrom:
    case Quantity::kDischargeTo:
    case Quantity::kOnset:
      return "degC";
    case Quantity::kSelfDischarge:
      return "1/month";
    case Quantity::kPrice:
      return "USD/kWh";
    case Quantity::kCycles:
    case Quantity::kEfficiency:
      return "";
  }
  return "";
}

std::string_view name_of(Level level) {
  switch (level) {
    case Level::kCell:
      return "cell";
    case Level::kPack:
      return "pack";
    case Level::kBattery:
      return "battery";
  }
  return "";
}

}  // namespace voltwright::chart
