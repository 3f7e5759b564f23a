#pragma once
// Temperature, power and current-voltage curve of a photovoltaic module.
#include "engine/sky/module.h"

namespace voltwright::sky {

/// Coefficients of King, Boyson and Kratochvil 2004 for a mounting.
struct MountingHeat {
  double a = 0.0;
  double b_s_m = 0.0;              // per m/s of wind
  double cell_above_back_K = 0.0;  // at 1000 W/m2
};

MountingHeat mounting_heat(Mounting mounting);

/// Rise of the cell over the air for each W/m2 of irradiance on the plane, K m2/W, at a wind speed of 0 or
/// more m/s at 10 m.
double cell_rise_K_m2_W(const MountingHeat& heat, double wind_m_s);

/// Cell temperature by King, Boyson and Kratochvil 2004, degC; irradiance is that on the plane before
/// incidence losses.
double module_temperature(Mounting mounting, double irradiance_W_m2, double air_C, double wind_m_s);

/// Back-of-module temperature of Faiman 2008 with its open-rack coefficients (25 and 6.84), degC.
double faiman_temperature(double irradiance_W_m2, double air_C, double wind_m_s);

/// Rise in proportion to irradiance from the nominal operating cell temperature (Ross 1976), degC.
double ross_temperature(double irradiance_W_m2, double air_C, double nominal_operating_C);

/// Power lost at 200 W/m2 beyond proportion to irradiance, as a fraction of peak power; crystalline silicon
/// 0.005 to 0.02 (assumption, from memory), see low_light_loss.
constexpr double kLowLightLoss = 0.01;

/// Fraction of peak power lost to low light (Marion 2008); none above 1000 W/m2.
template <class T>
T low_light_loss(T irradiance_W_m2, T loss_at_200) {
  const T dim = T(1) - irradiance_W_m2 / T(200);
  const T squared = dim * dim;
  const T below = loss_at_200 * (T(1) - squared * squared);
  const T above = loss_at_200 * (T(1000) - irradiance_W_m2) / T(800);
  const T loss = irradiance_W_m2 > T(200) ? above : below;
  return loss > T(0) ? loss : T(0);
}

/// Maximum power of a module, W, at least 0: linear in irradiance and temperature (Dobos 2014) less the loss
/// at low light. Irradiance is that absorbed, 0 to 1400 W/m2.
template <class T>
T module_power(T peak_W, T power_per_K, T irradiance_W_m2, T module_C, T loss_at_200) {
  const T linear = irradiance_W_m2 / T(1000) * (T(1) + power_per_K * (module_C - T(25)));
  const T power = peak_W * (linear - low_light_loss(irradiance_W_m2, loss_at_200));
  return power > T(0) ? power : T(0);
}

/// Explicit current-voltage curve through short circuit, the maximum power point and open circuit
/// (Rauschenbach 1980), moved to an irradiance and temperature.
class CurrentVoltageCurve {
 public:
  CurrentVoltageCurve(const Module& module, double irradiance_W_m2, double module_C);

  /// Current of one module at a voltage of 0 or more; 0 from open circuit on, and in the dark.
  double current_A(double voltage_V) const;
  double short_circuit_A() const { return short_circuit_A_; }
  double open_circuit_V() const { return open_circuit_V_; }
  double c1() const { return c1_; }
  double c2() const { return c2_; }

 private:
  double short_circuit_A_ = 0.0;
  double open_circuit_V_ = 0.0;
  double c1_ = 0.0;
  double c2_ = 1.0;
};

/// Current of an array of modules in series and parallel at its terminal voltage, A.
double array_current_A(const Module& module, int in_series, int in_parallel, double irradiance_W_m2,
                       double module_C, double voltage_V);

}  // namespace voltwright::sky
