#include "engine/sky/incidence.h"

#include <algorithm>
#include <cmath>

#include "engine/sky/angle.h"

namespace voltwright::sky {
namespace {

double transmittance(double incidence_rad, double refractive_index, double absorption_depth) {
  if (incidence_rad < 1e-6) {
    const double reflected = (refractive_index - 1.0) / (refractive_index + 1.0);
    return std::exp(-absorption_depth) * (1.0 - reflected * reflected);
  }
  const double refracted_rad = std::asin(std::sin(incidence_rad) / refractive_index);
  const double difference = refracted_rad - incidence_rad;
  const double sum = refracted_rad + incidence_rad;
  const double across = std::pow(std::sin(difference) / std::sin(sum), 2);
  const double along = std::pow(std::tan(difference) / std::tan(sum), 2);
  return std::exp(-absorption_depth / std::cos(refracted_rad)) * (1.0 - 0.5 * (across + along));
}

}  // namespace

double ashrae_incidence_factor(double incidence_deg, double b0) {
  if (!(std::abs(incidence_deg) < 90.0)) return 0.0;
  return std::max(0.0, 1.0 - b0 * (1.0 / std::cos(radians(incidence_deg)) - 1.0));
}

double physical_incidence_factor(double incidence_deg, double refractive_index, double extinction_per_m,
                                 double thickness_m) {
  const double incidence = std::abs(incidence_deg);
  if (!(incidence < 90.0)) return 0.0;
  const double depth = extinction_per_m * thickness_m;
  return std::max(0.0, transmittance(radians(incidence), refractive_index, depth) /
                           transmittance(0.0, refractive_index, depth));
}

double martin_ruiz_incidence_factor(double incidence_deg, double loss_coefficient) {
  if (!(std::abs(incidence_deg) < 90.0)) return 0.0;
  return std::expm1(-std::cos(radians(incidence_deg)) / loss_coefficient) /
         std::expm1(-1.0 / loss_coefficient);
}

}  // namespace voltwright::sky
