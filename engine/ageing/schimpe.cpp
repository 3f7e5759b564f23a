#include "engine/ageing/schimpe.h"

#include <algorithm>
#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

double graphite_potential_V(double soc) {
  // Lithium content of the anode at 0 and 100 % of the cell, and the published fit of its potential.
  constexpr double kEmpty = 0.0085;
  constexpr double kFull = 0.78;
  const double x = kEmpty + std::clamp(soc, 0.0, 1.0) * (kFull - kEmpty);
  return 0.6379 + 0.5416 * std::exp(-305.5309 * x) + 0.044 * std::tanh(-(x - 0.1958) / 0.1088) -
         0.1978 * std::tanh((x - 1.0571) / 0.0854) - 0.6875 * std::tanh((x + 0.0117) / 0.0529) -
         0.0175 * std::tanh((x - 0.5692) / 0.0875);
}

double Schimpe::rest_per_root_h(double temperature_C, double soc) const {
  const double drive = constants_.alpha * kFaraday_C_per_mol / kGas_J_per_molK *
                       (constants_.reference_V - graphite_potential_V(soc)) / kReference_K;
  return constants_.rest_per_root_h * arrhenius(constants_.rest_activation_J_per_mol, temperature_C) *
         (std::exp(drive) + constants_.offset);
}

double Schimpe::warm_per_root_Ah(double temperature_C) const {
  return constants_.warm_per_root_Ah * arrhenius(constants_.warm_activation_J_per_mol, temperature_C);
}

double Schimpe::cold_per_root_Ah(double temperature_C, double charge_per_h) const {
  return constants_.cold_per_root_Ah * arrhenius(-constants_.cold_activation_J_per_mol, temperature_C) *
         std::exp(constants_.cold_by_rate_h * (charge_per_h - constants_.reference_per_h));
}

double Schimpe::plating_per_Ah(double temperature_C, double charge_per_h) const {
  return constants_.plating_per_Ah * arrhenius(-constants_.plating_activation_J_per_mol, temperature_C) *
         std::exp(constants_.plating_by_rate_h * (charge_per_h - constants_.reference_per_h));
}

void Schimpe::wear(Aged& aged, const Exposure& exposure, double times) const {
  double rest = 0.0, warm = 0.0, cold = 0.0, plating = 0.0;
  for (const Dwell& dwell : exposure.dwell) {
    const double rate = rest_per_root_h(dwell.temperature_C, dwell.soc);
    rest += rate * rate * dwell.hours;
  }
  for (const Swing& swing : exposure.swings) {
    const double charge_Ah = charged(swing) * constants_.cell_Ah;
    const double moved_Ah = 2.0 * full_cycles(swing) * constants_.cell_Ah;
    const double charge_per_h = charge_rate_per_h(swing);
    const double warm_rate = warm_per_root_Ah(swing.temperature_C);
    const double cold_rate = cold_per_root_Ah(swing.temperature_C, charge_per_h);
    warm += warm_rate * warm_rate * moved_Ah;
    cold += cold_rate * cold_rate * charge_Ah;
    const double low = low_soc(swing);
    const double high = high_soc(swing);
    const double above = std::max(0.0, high - std::max(low, constants_.plating_above_soc));
    if (high > low)
      plating += plating_per_Ah(swing.temperature_C, charge_per_h) * charge_Ah * above / (high - low);
  }
  aged.calendar_loss = stepped(aged.calendar_loss, 0.5, rest * times);
  aged.warm_loss = stepped(aged.warm_loss, 0.5, warm * times);
  aged.cold_loss = stepped(aged.cold_loss, 0.5, cold * times);
  aged.plating_loss += plating * times;
  aged.cycle_loss = aged.warm_loss + aged.cold_loss + aged.plating_loss;
}

}  // namespace voltwright::ageing
