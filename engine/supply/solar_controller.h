#pragma once
// What a solar controller bears and passes on.
#include "engine/supply/source.h"

namespace voltwright::supply {

/// Open-circuit voltage of an array's strings at a cell temperature, V:
/// n Voc (1 + beta (t - 25)), beta from the data sheet. In the dark of dawn the cells are as cold as the air.
double string_open_V(const SolarArray& array, double cell_C);

/// Cell temperature at which a string reaches the controller's input limit, degC; below -273 if no
/// temperature does, above any weather if even a warm string exceeds it. Needs a voltage coefficient below 0.
double limit_reached_C(const SolarArray& array);

}  // namespace voltwright::supply
