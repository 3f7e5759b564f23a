#pragma once
// What the laws have in common: the temperature factor, equivalent-time stepping, and readings of a swing.
#include "engine/ageing/exposure.h"

namespace voltwright::ageing {

inline constexpr double kGas_J_per_molK = 8.314;  // as the laws were fitted with
inline constexpr double kFaraday_C_per_mol = 96485.0;
inline constexpr double kFreezing_K = 273.15;
inline constexpr double kReference_K = 298.15;
inline constexpr double kHoursPerDay = 24.0;
inline constexpr double kSecondsPerHour = 3600.0;

/// The C-rate of a swing whose rate is not known [1/h]: the one that most cycling tests share.
inline constexpr double kRateIfUnknown_per_h = 0.5;

/// exp(-(E/R) (1/T - 1/298.15 K)): 1 at 25 degC, growing with temperature for a positive E [J/mol].
double arrhenius(double activation_J_per_mol, double temperature_C);

/// Equivalent-time stepping of loss = k x^z with changing k: loss^(1/z) grows by the sum of k_i^(1/z) dx_i,
/// here `progress`. Exact, whatever the order and the portions.
/// @param loss  so far, >= 0  @param exponent  z > 0  @return  the loss afterwards
double stepped(double loss, double exponent, double progress);

/// Equivalent full cycles of a swing: depth times count, one charge and one discharge of the capacity each.
double full_cycles(const Swing& swing);
double full_cycles(const Exposure& exposure);

/// Capacities charged and discharged during a swing: depth times count each for closed cycles. A swing of
/// which one rate alone is known stands for half cycles of that direction: twice that there, nothing in the
/// other.
double charged(const Swing& swing);
double discharged(const Swing& swing);

/// Rates [1/h] of the charging part, of the discharging part, and the mean of those that are known;
/// kRateIfUnknown_per_h if none is.
double charge_rate_per_h(const Swing& swing);
double discharge_rate_per_h(const Swing& swing);
double mean_rate_per_h(const Swing& swing);

/// Ends of the state of charge of a swing, within 0..1.
double low_soc(const Swing& swing);
double high_soc(const Swing& swing);

}  // namespace voltwright::ageing
