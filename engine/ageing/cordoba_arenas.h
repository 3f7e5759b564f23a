#pragma once
// Ageing of a blend of nickel-manganese-cobalt and manganese oxide after Cordoba-Arenas et al. 2015.
// Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"

namespace voltwright::ageing {

/// loss [%] = (base + by_depleting share^p + by_least (z_min - z_0)^3) exp(-E/(R T)) Ah^z, Ah in plus Ah out.
/// What time does is in it. z_min is held within the tested span.
struct CordobaArenasConstants {
  double cell_Ah = 0.0;
  double base = 0.0;
  double by_depleting = 0.0;
  double depleting_exponent = 0.0;
  double depleting_share = 0.0;  // of the time of driving; a bank that only delivers and charges: 1
  double by_least = 0.0;
  double least_from_soc = 0.0;  // tested span of z_min; its lower end is z_0
  double least_to_soc = 0.0;
  double activation_J_per_mol = 0.0;
  double exponent = 0.0;
};

class CordobaArenas final : public Part {
 public:
  CordobaArenas(const CordobaArenasConstants& constants, const Validity& validity)
      : Part(validity), constants_(constants) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

  /// Share of capacity per Ah^z.
  double rate(double temperature_C, double least_soc) const;

 private:
  CordobaArenasConstants constants_;
};

}  // namespace voltwright::ageing
