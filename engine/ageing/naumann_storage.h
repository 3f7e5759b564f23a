#pragma once
// Iron-phosphate storage after Naumann et al. 2018. Method: docs/method/ageing_lithium.md.
#include "engine/ageing/part.h"

namespace voltwright::ageing {

/// loss = rate exp(-(E/R)(1/T - 1/298.15)) (cubic (z - 0.5)^3 + middle) sqrt(t), t in seconds.
struct NaumannStorageConstants {
  double rate_per_root_s = 0.0;
  double activation_J_per_mol = 0.0;
  double cubic = 0.0;
  double middle = 0.0;
};

class NaumannStorage final : public Part {
 public:
  NaumannStorage(const NaumannStorageConstants& constants, const Validity& validity)
      : Part(validity), constants_(constants) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

  /// Loss per root second at a temperature and a state of charge, never below 0.
  double rate_per_root_s(double temperature_C, double soc) const;

 private:
  NaumannStorageConstants constants_;
};

/// growth = rate exp(-(E/R)(1/T - 1/298.15)) (square (z - 0.5)^2 + peak) t, t in seconds.
struct NaumannResistanceConstants {
  double rate_per_s = 0.0;
  double activation_J_per_mol = 0.0;
  double square = 0.0;
  double peak = 0.0;
};

class NaumannResistance final : public Part {
 public:
  NaumannResistance(const NaumannResistanceConstants& constants, const Validity& validity)
      : Part(validity), constants_(constants) {}
  void wear(Aged& aged, const Exposure& exposure, double times) const override;

 private:
  NaumannResistanceConstants constants_;
};

}  // namespace voltwright::ageing
