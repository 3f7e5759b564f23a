#include "engine/ageing/schiffer.h"

#include <algorithm>
#include <cmath>

namespace voltwright::ageing {

namespace {

constexpr double kHoursPerYear = 8766.0;
constexpr double kKelvinReference_C = 25.0;

/// h(x) = x^3 / 3 - x + atan x, which is the integral of x^4 / (1 + x^2). The first terms cancel for small x,
/// so there the series of the integrand is taken.
double integral(double x) {
  constexpr double kSmall = 0.5;
  if (x > kSmall) return x * (x * x / 3.0 - 1.0) + std::atan(x);
  const double square = x * x;
  double power = square * square * x;
  double sum = 0.0;
  for (int k = 5; power / k > sum * 1e-18 || k < 9; k += 2) {
    sum += ((k / 2) % 2 == 0 ? power : -power) / k;
    power *= square;
    if (power == 0.0) break;
  }
  return sum;
}

/// x with integral(x) = target >= 0. The start lies below the solution and the function is convex, so
/// Newton's rule steps above it once and then falls onto it.
double integral_inverse(double target) {
  if (target <= 0.0) return 0.0;
  double x = std::max(std::pow(5.0 * target, 0.2), std::cbrt(3.0 * target));
  for (int i = 0; i < 60; ++i) {
    const double step = (integral(x) - target) * (1.0 + x * x) / (x * x * x * x);
    x -= step;
    if (std::fabs(step) <= 1e-16 * x) break;
  }
  return x;
}

}  // namespace

double partial_charge_weight(const cell::PartialCharge& p, double lowest_soc, double since_full_h,
                             double current) {
  return 1.0 + (p.per_h + p.empty_per_h * (1.0 - lowest_soc)) * current *
                   std::min(since_full_h, p.longest_since_full_h);
}

double current_factor(const cell::PartialCharge& p, double start_per_h, double bad_charges) {
  return std::sqrt(p.reference_per_h / start_per_h) *
         std::exp(std::min(bad_charges, p.most_bad_charges) / (3.0 * p.bad_charges_scale));
}

double bad_charge(const cell::PartialCharge& p, double end_soc) {
  const double off = (end_soc - p.almost_soc) / p.almost_band;
  return std::max(0.0, 1.0 - off * off);
}

double layered(const cell::AcidLayers& a, double layers, double lowest_soc, double drawn,
               double reference_per_h) {
  const double rise = a.rise_per_h * (1.0 - lowest_soc) * drawn / reference_per_h;
  return layers + std::log1p(a.rise_decay * rise * std::exp(-a.rise_decay * layers)) / a.rise_decay;
}

double diffusion_per_h(const cell::AcidLayers& a, double temperature_C) {
  constexpr double kShape = 8.0;
  return kShape * a.diffusion_mm2_per_h / (a.height_mm * a.height_mm) *
         std::exp2((temperature_C - a.diffusion_C) / a.diffusion_doubling_K);
}

double mixed(const cell::AcidLayers& a, double layers, double cell_V, double temperature_C, double cell_Ah,
             double hours) {
  double left = layers * std::exp(-diffusion_per_h(a, temperature_C) * hours);
  if (cell_V >= a.mixing_from_V) {
    left -= hours * a.mixing_per_h * std::sqrt(a.mixing_Ah / cell_Ah) *
            std::exp(a.mixing_per_V * (cell_V - a.mixing_V) + a.mixing_per_K * (temperature_C - a.mixing_C));
  }
  return std::max(left, 0.0);
}

double corrosion_potential_V(const cell::GridCorrosion& g, double soc, double polarisation_V) {
  return g.rest_V - g.acid_share * g.acid_V * (1.0 - soc) + 0.5 * polarisation_V;
}

double corrosion_speed(const cell::GridCorrosion& g, double potential_V, double temperature_C) {
  return base::curve_at(g.speed_by_V, potential_V, 0.0) *
         std::exp2((temperature_C - kKelvinReference_C) / g.doubling_K);
}

double corroded(double layer, double slow, double fast, double times) {
  if (slow <= 0.0) return layer + fast * times;
  if (fast <= 0.0) return std::pow(std::pow(layer, 5.0 / 3.0) + 5.0 / 3.0 * slow * times, 0.6);
  // With u = cbrt w the step is 3 u^4 du / (slow + fast u^2), which has a closed form in x = u sqrt(fast /
  // slow).
  const double scale = std::sqrt(fast / slow);
  const double start = integral(std::cbrt(layer) * scale);
  const double length = times * fast * scale * scale * scale / 3.0;
  const double u = integral_inverse(start + length) / scale;
  return u * u * u;
}

double shed_mass_loss(const cell::PlateWear& wear, double weighted_cycles) {
  const cell::MassShedding& m = wear.shedding;
  return m.loss_limit *
         std::exp(-m.exponent * (1.0 - weighted_cycles / (m.stretch * wear.rating.standard_cycles)));
}

double corrosion_limit_h(const cell::PlateWear& wear, double rest_V) {
  const cell::PlateRating& rating = wear.rating;
  const double potential_V = corrosion_potential_V(wear.corrosion, 1.0, rating.float_V - rest_V);
  return rating.float_years * kHoursPerYear * corrosion_speed(wear.corrosion, potential_V, rating.float_C);
}

WeightedThroughput::WeightedThroughput(const cell::PlateWear& wear, double rest_V)
    : wear_(wear), limit_h_(corrosion_limit_h(wear, rest_V)) {}

void WeightedThroughput::age(Aged& aged, const Exposure& exposure, double times) const {
  PlateUse plates = exposure.plates;
  double moved = 0.0;
  for (const Swing& swing : exposure.swings) moved += swing.count * swing.depth;
  if (plates.hours <= 0.0) {
    plates.weighted = moved;
    for (const Dwell& d : exposure.dwell) {
      const double potential_V = corrosion_potential_V(wear_.corrosion, 1.0, 0.0);
      plates.fast_corrosion += d.hours * corrosion_speed(wear_.corrosion, potential_V, d.temperature_C);
    }
  }
  aged.hours += exposure.hours * times;
  aged.full_cycles += moved * times;
  aged.weighted_cycles += plates.weighted * times;
  aged.corrosion = corroded(aged.corrosion, plates.slow_corrosion / std::pow(limit_h_, 5.0 / 3.0),
                            plates.fast_corrosion / limit_h_, times);
  aged.calendar_loss = wear_.corrosion.capacity_loss * aged.corrosion;
  aged.resistance_growth = wear_.corrosion.resistance_growth * aged.corrosion;
  aged.cycle_loss = shed_mass_loss(wear_, aged.weighted_cycles);
}

Reach WeightedThroughput::reach(const Exposure& exposure, const Aged& aged) const {
  if (exposure.plates.hours <= 0.0) return Reach::kOutside;
  for (const Dwell& d : exposure.dwell) {
    if (d.temperature_C < wear_.coldest_C || d.temperature_C > wear_.hottest_C) return Reach::kOutside;
  }
  const bool longer = exposure.plates.longest_without_full_h > wear_.partial.longest_since_full_h ||
                      aged.hours > wear_.rating.float_years * kHoursPerYear ||
                      aged.weighted_cycles > wear_.shedding.stretch * wear_.rating.standard_cycles;
  return longer ? Reach::kExtrapolated : Reach::kInside;
}

}  // namespace voltwright::ageing
