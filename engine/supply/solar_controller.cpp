#include "engine/supply/solar_controller.h"

namespace voltwright::supply {

namespace {
constexpr double kLabel_C = 25.0;
constexpr double kNever_C = -1e9;
}  // namespace

double string_open_V(const SolarArray& array, double cell_C) {
  return array.in_series * units::as_volts(array.module.open_circuit) *
         (1.0 + array.module.voltage_per_K * (cell_C - kLabel_C));
}

double limit_reached_C(const SolarArray& array) {
  const double label_V = string_open_V(array, kLabel_C);
  if (!(array.module.voltage_per_K < 0.0) || !(label_V > 0.0)) return kNever_C;
  return kLabel_C + (units::as_volts(array.input_limit) / label_V - 1.0) / array.module.voltage_per_K;
}

}  // namespace voltwright::supply
