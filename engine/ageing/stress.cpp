#include "engine/ageing/stress.h"

#include <algorithm>
#include <cmath>

namespace voltwright::ageing {

double arrhenius(double activation_J_per_mol, double temperature_C) {
  const double temperature_K = temperature_C + kFreezing_K;
  return std::exp(-activation_J_per_mol / kGas_J_per_molK * (1.0 / temperature_K - 1.0 / kReference_K));
}

double stepped(double loss, double exponent, double progress) {
  if (progress <= 0.0) return loss;
  return std::pow(std::pow(loss, 1.0 / exponent) + progress, exponent);
}

double full_cycles(const Swing& swing) { return swing.depth * swing.count; }

double full_cycles(const Exposure& exposure) {
  double sum = 0.0;
  for (const Swing& swing : exposure.swings) sum += full_cycles(swing);
  return sum;
}

double charged(const Swing& swing) {
  const bool rises = swing.charge_per_h > 0.0;
  const bool falls = swing.discharge_per_h > 0.0;
  if (rises == falls) return full_cycles(swing);
  return rises ? 2.0 * full_cycles(swing) : 0.0;
}

double discharged(const Swing& swing) { return 2.0 * full_cycles(swing) - charged(swing); }

double charge_rate_per_h(const Swing& swing) {
  return swing.charge_per_h > 0.0 ? swing.charge_per_h : kRateIfUnknown_per_h;
}

double discharge_rate_per_h(const Swing& swing) {
  return swing.discharge_per_h > 0.0 ? swing.discharge_per_h : kRateIfUnknown_per_h;
}

double mean_rate_per_h(const Swing& swing) {
  const double known = (swing.charge_per_h > 0.0 ? 1.0 : 0.0) + (swing.discharge_per_h > 0.0 ? 1.0 : 0.0);
  return known > 0.0 ? (swing.charge_per_h + swing.discharge_per_h) / known : kRateIfUnknown_per_h;
}

double low_soc(const Swing& swing) { return std::clamp(swing.mean_soc - 0.5 * swing.depth, 0.0, 1.0); }
double high_soc(const Swing& swing) { return std::clamp(swing.mean_soc + 0.5 * swing.depth, 0.0, 1.0); }

}  // namespace voltwright::ageing
