#pragma once
#include "engine/demand/load.h"

namespace voltwright::demand {

/// Input power of an inverter [W] at an output power [W], both >= 0:
/// P_in = P_out + P_rated (p0 + k1 u + k2 u^2), u = P_out / P_rated; nothing if switched off when unused.
/// Valid 0 <= u <= 1, extrapolated with the same curve for short surges. Source: docs/method/demand.md.
double inverter_input_W(const Inverter& inverter, double output_W);

}  // namespace voltwright::demand
