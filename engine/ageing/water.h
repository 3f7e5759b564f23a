#pragma once
// Water that an open lead-acid cell loses by gassing.

namespace voltwright::ageing {

/// Water split by a gassing charge through one cell [g]: half a mole of water for each mole of electrons
/// (Faraday's law, 96485.33 C/mol, 18.01528 g/mol): 0.336 g/Ah. Valve-regulated cells recombine most of it.
/// @param gassing_Ah  >= 0
constexpr double water_split_g(double gassing_Ah) {
  constexpr double kFaraday_C_mol = 96485.33212;
  constexpr double kWater_g_mol = 18.01528;
  return gassing_Ah * 3600.0 / kFaraday_C_mol * 0.5 * kWater_g_mol;
}

}  // namespace voltwright::ageing
