#include "engine/sky/coupled_module.h"

#include <algorithm>
#include <cmath>

namespace voltwright::sky {

namespace {

constexpr double kCurrentPerK = 0.0005;  // typical of crystalline silicon (from memory)
constexpr int kSearchSteps = 100;        // each leaves 62 % of the bracket

/// Highest power of a curve, by the golden section: power has one maximum between short and open circuit.
double best_power_W(const CurrentVoltageCurve& curve) {
  const double ratio = 0.5 * (std::sqrt(5.0) - 1.0);
  double low_V = 0.0;
  double high_V = curve.open_circuit_V();
  const auto power_W = [&curve](double v) { return v * curve.current_A(v); };
  for (int i = 0; i < kSearchSteps; ++i) {
    const double left_V = high_V - ratio * (high_V - low_V);
    const double right_V = low_V + ratio * (high_V - low_V);
    (power_W(left_V) < power_W(right_V) ? low_V : high_V) =
        power_W(left_V) < power_W(right_V) ? left_V : right_V;
  }
  return power_W(0.5 * (low_V + high_V));
}

}  // namespace

CoupledModule::CoupledModule(const Module& module)
    : label_W_(units::as_watts(module.peak)), power_per_K_(module.power_per_K) {
  const CurrentVoltageCurve curve(module, 1000.0, 25.0);
  short_circuit_A_ = curve.short_circuit_A();
  open_circuit_V_ = curve.open_circuit_V();
  c1_ = curve.c1();
  c2_ = curve.c2();
  best_W_ = best_power_W(curve);
}

double CoupledModule::peak_W(double irradiance_W_m2, double module_C) const {
  return module_power(label_W_, power_per_K_, irradiance_W_m2, module_C, kLowLightLoss);
}

CurvePoint CoupledModule::at(double irradiance_W_m2, double module_C, double voltage_V) const {
  const double highest_W = peak_W(irradiance_W_m2, module_C);
  const double short_A =
      short_circuit_A_ * irradiance_W_m2 / 1000.0 * std::max(0.0, 1.0 + kCurrentPerK * (module_C - 25.0));
  if (!(best_W_ > 0.0) || !(highest_W > 0.0) || !(short_A > 0.0)) return {};
  const double stretch = highest_W / (best_W_ * short_A / short_circuit_A_);
  const double scale_V = c2_ * open_circuit_V_ * stretch;
  const double grown = std::exp(std::max(0.0, voltage_V) / scale_V);
  const double current_A = short_A * (1.0 - c1_ * (grown - 1.0));
  if (current_A <= 0.0) return {};
  return {current_A, -short_A * c1_ * grown / scale_V};
}

}  // namespace voltwright::sky
