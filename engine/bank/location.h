#pragma once
// Where the bank stands and how warm it is there.
#include "engine/units/quantity.h"

namespace voltwright::bank {

enum class Location { kCabin, kEngineBay, kOutside, kHeatedBox };

struct Surroundings {
  Location location = Location::kCabin;
  /// Cabin: heated to this while occupied if the air outside is colder.
  units::Temperature cabin_heated_to = units::celsius(18.0);
  /// Engine bay: final rise above the outside air while driving.
  units::TemperatureDifference engine_bay_rise = units::kelvins(30.0);
  /// Engine bay: time constants with which it warms under way and cools when parked.
  units::Duration engine_bay_warms = units::seconds(1200.0);
  units::Duration engine_bay_cools = units::seconds(3600.0);
  /// Heated box: heater power, switch-on temperature, whether it may draw on the bank or only on what the
  /// sources give beyond the loads, and the heat loss and the heat capacity of the box.
  units::Power heater_power;
  units::Temperature heater_below = units::celsius(5.0);
  bool heater_on_surplus = false;
  units::HeatConductance box_loss = units::watts_per_kelvin(0.8);
};

}  // namespace voltwright::bank
