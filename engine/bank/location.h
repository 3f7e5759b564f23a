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
  /// Heated box: heater power, switch-on temperature, and heat loss of the box.
  units::Power heater_power;
  units::Temperature heater_below = units::celsius(5.0);
  units::HeatConductance box_loss = units::watts_per_kelvin(0.8);
};

}  // namespace voltwright::bank
