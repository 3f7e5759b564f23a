#pragma once
// Iron-phosphate ageing after Schimpe et al. 2018, with a term for charging in the cold.
// Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"

namespace voltwright::ageing {

/// Four terms. t in hours, throughput in ampere-hours of the cell tested, rates against its capacity.
struct SchimpeConstants {
  double cell_Ah = 0.0;
  // Rest: rate A(E) (exp(alpha F / R (U_ref - U(z)) / T_ref) + offset) sqrt(t), U the anode's potential.
  double rest_per_root_h = 0.0;
  double rest_activation_J_per_mol = 0.0;
  double alpha = 0.0;
  double reference_V = 0.0;
  double offset = 0.0;
  // Use in the warm: rate A(E) sqrt(charge + discharge).
  double warm_per_root_Ah = 0.0;
  double warm_activation_J_per_mol = 0.0;
  // Charging in the cold: rate / A(E) exp(by_rate_h (C - C_test)) sqrt(charge).
  double cold_per_root_Ah = 0.0;
  double cold_activation_J_per_mol = 0.0;
  double cold_by_rate_h = 0.0;
  // The same above a state of charge, linear in the charge.
  double plating_per_Ah = 0.0;
  double plating_activation_J_per_mol = 0.0;
  double plating_by_rate_h = 0.0;
  double plating_above_soc = 0.0;
  double reference_per_h = 0.0;  // the C-rate at which both cold terms are stated
};

/// Potential of the graphite anode against lithium [V] at a state of charge 0..1 of the whole cell.
double graphite_potential_V(double soc);

class Schimpe final : public Part {
 public:
  Schimpe(const SchimpeConstants& constants, const Validity& validity)
      : Part(validity), constants_(constants) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

  /// The four rates; the last three per root ampere-hour, root ampere-hour and ampere-hour of the cell
  /// tested.
  double rest_per_root_h(double temperature_C, double soc) const;
  double warm_per_root_Ah(double temperature_C) const;
  double cold_per_root_Ah(double temperature_C, double charge_per_h) const;
  double plating_per_Ah(double temperature_C, double charge_per_h) const;

 private:
  SchimpeConstants constants_;
};

}  // namespace voltwright::ageing
