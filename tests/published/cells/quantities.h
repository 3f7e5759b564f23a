#pragma once
// What checks.json can ask for: names of quantities and the engine functions that give them.
#include <functional>
#include <map>
#include <string>

#include "tests/published/cells/row.h"

namespace voltwright::published {

using Quantity = std::function<double(Inputs&)>;
using Quantities = std::map<std::string, Quantity>;

/// A yes or no as the rows write it.
inline double yes(bool is_true) { return is_true ? 1.0 : 0.0; }

Quantities record_quantities();     // what catalogue records hold
Quantities cell_quantities();       // laws of one cell: temperature, life, charge voltage
Quantities lead_acid_quantities();  // Peukert, two tanks, size for the temperature
Quantities copetti_quantities();    // the photovoltaic battery model
Quantities step_quantities();       // the bank's step: relaxation, heat, tanks, energy
Quantities bus_quantities();        // the bus: constant power and held voltage
Quantities driven_quantities();     // catalogue cells driven through a test

/// All of them.
const Quantities& quantities();

}  // namespace voltwright::published
