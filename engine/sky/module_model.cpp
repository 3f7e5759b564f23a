#include "engine/sky/module_model.h"

#include <algorithm>
#include <cmath>

namespace voltwright::sky {
namespace {

constexpr double kCurrentPerK = 0.0005;  // typical of crystalline silicon (from memory)
constexpr double kVoltagePerLogarithm =
    0.06;  // of ln(G / 1000), typical of crystalline silicon (from memory)

}  // namespace

MountingHeat mounting_heat(Mounting mounting) {
  switch (mounting) {
    case Mounting::kOpenRack:
      return {-3.47, -0.0594, 3.0};
    case Mounting::kVentilatedRoof:
      return {-2.98, -0.0471, 1.0};
    case Mounting::kGluedFlat:
      break;
  }
  return {-2.81, -0.0455, 0.0};
}

double cell_rise_K_m2_W(const MountingHeat& heat, double wind_m_s) {
  return std::exp(heat.a + heat.b_s_m * std::max(0.0, wind_m_s)) + heat.cell_above_back_K / 1000.0;
}

double module_temperature(Mounting mounting, double irradiance_W_m2, double air_C, double wind_m_s) {
  return air_C + irradiance_W_m2 * cell_rise_K_m2_W(mounting_heat(mounting), wind_m_s);
}

double faiman_temperature(double irradiance_W_m2, double air_C, double wind_m_s) {
  return air_C + irradiance_W_m2 / (25.0 + 6.84 * wind_m_s);
}

double ross_temperature(double irradiance_W_m2, double air_C, double nominal_operating_C) {
  return air_C + (nominal_operating_C - 20.0) / 800.0 * irradiance_W_m2;
}

CurrentVoltageCurve::CurrentVoltageCurve(const Module& module, double irradiance_W_m2, double module_C) {
  const double open_V = units::as_volts(module.open_circuit);
  const double short_A = units::as_amperes(module.short_circuit);
  const double peak_V = units::as_volts(module.at_peak_voltage);
  const double peak_A = units::as_amperes(module.at_peak_current);
  // A data sheet whose peak point is not inside the corner of open and short circuit has no such curve.
  const bool sound = open_V > peak_V && peak_V > 0.0 && short_A > peak_A && peak_A > 0.0;
  if (!sound || !(irradiance_W_m2 > 0.0)) return;
  c2_ = (peak_V / open_V - 1.0) / std::log(1.0 - peak_A / short_A);
  c1_ = (1.0 - peak_A / short_A) * std::exp(-peak_V / (c2_ * open_V));
  const double warm_K = module_C - 25.0;
  const double relative = irradiance_W_m2 / 1000.0;
  short_circuit_A_ = short_A * relative * std::max(0.0, 1.0 + kCurrentPerK * warm_K);
  open_circuit_V_ = open_V * std::max(0.0, 1.0 + module.voltage_per_K * warm_K) *
                    std::max(0.0, 1.0 + kVoltagePerLogarithm * std::log(relative));
}

double CurrentVoltageCurve::current_A(double voltage_V) const {
  if (!(open_circuit_V_ > 0.0) || voltage_V >= open_circuit_V_) return 0.0;
  const double voltage = std::max(0.0, voltage_V);
  return std::max(0.0, short_circuit_A_ * (1.0 - c1_ * std::expm1(voltage / (c2_ * open_circuit_V_))));
}

double array_current_A(const Module& module, int in_series, int in_parallel, double irradiance_W_m2,
                       double module_C, double voltage_V) {
  if (in_series < 1 || in_parallel < 1) return 0.0;
  const CurrentVoltageCurve curve(module, irradiance_W_m2, module_C);
  return curve.current_A(voltage_V / in_series) * in_parallel;
}

}  // namespace voltwright::sky
