#pragma once
#include "engine/demand/load.h"

namespace voltwright::demand {

/// Mean electrical power that keeps a cooled space cold [W]: heat leak over coefficient of performance.
/// The coefficient falls with the square root of the Carnot ratio between the room and 25 degC, evaporator 15
/// K below the space and condenser 15 K above the room: the geometric mean between a constant coefficient and
/// a full Carnot dependence. Valid for rooms of -20 to 50 degC; 0 if the room is colder than the space.
/// Source: docs/method/demand.md.
double cooling_power_W(const Cooling& cooling, double room_C);

}  // namespace voltwright::demand
