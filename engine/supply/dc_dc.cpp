#include "engine/supply/dc_dc.h"

#include <algorithm>
#include <cmath>

namespace voltwright::supply {

DcDcInput dc_dc_input(double alternator_V, double loop_ohm, double output_W, double efficiency) {
  const double input_W = output_W / efficiency;
  const double under_root = alternator_V * alternator_V - 4.0 * loop_ohm * input_W;
  DcDcInput input;
  if (under_root < 0.0) return input;
  input.possible = true;
  input.current_A = 2.0 * input_W / (alternator_V + std::sqrt(under_root));
  input.input_V = alternator_V - loop_ohm * input.current_A;
  return input;
}

bool dc_dc_runs(double alternator_V, double loop_ohm, double output_W, double efficiency, double lock_out_V) {
  const DcDcInput input = dc_dc_input(alternator_V, loop_ohm, output_W, efficiency);
  return input.possible && input.input_V >= lock_out_V;
}

double derated_share(double air_C, double from_C, double per_K) {
  return std::clamp(1.0 - per_K * (air_C - from_C), 0.0, 1.0);
}

}  // namespace voltwright::supply
