#pragma once
// The part of the light that the glass of a module reflects more at slanting incidence than at normal
// incidence. Each function returns what passes, 1 at normal incidence, 0 at 90 deg and beyond; angle in deg.

namespace voltwright::sky {

/// Sky and ground light come from all sides: constant factor near the value of Martin and Ruiz 2001 for tilts
/// of 0 to 30 deg (0.951 to 0.955).
constexpr double kDiffuseIncidenceFactor = 0.95;

/// Souka and Safwat 1966 as adopted by ASHRAE, b0 typically 0.05; poor beyond 80 deg.
double ashrae_incidence_factor(double incidence_deg, double b0 = 0.05);

/// Fresnel reflection at one glass face and absorption in it (De Soto, Klein and Beckman 2006): refractive
/// index, extinction in 1/m, thickness in m.
double physical_incidence_factor(double incidence_deg, double refractive_index = 1.526,
                                 double extinction_per_m = 4.0, double thickness_m = 0.002);

/// Martin and Ruiz 2001 with the angular loss coefficient, 0.16 for clean silicon modules under glass.
double martin_ruiz_incidence_factor(double incidence_deg, double loss_coefficient = 0.16);

}  // namespace voltwright::sky
