#include "engine/bank/spread.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "engine/cell/tables.h"

namespace voltwright::bank {

namespace {

double normal_density(double x) { return std::exp(-0.5 * x * x) / std::sqrt(2.0 * std::numbers::pi); }

double normal_below(double x) { return 0.5 * std::erfc(-x / std::numbers::sqrt2); }

/// Integral of g(x) times the density of the largest of N, N phi(x) Phi(x)^(N-1), by the trapezoidal rule,
/// which for a smooth function that dies away at both ends converges faster than any power of the step.
template <class G>
double over_largest(int count, G g) {
  constexpr double kFar = 12.0;
  constexpr double kStep = 1.0 / 64.0;
  constexpr int kHalf = static_cast<int>(kFar / kStep);
  double sum = 0.0;
  for (int i = -kHalf; i <= kHalf; ++i) {
    const double x = i * kStep;
    sum += g(x) * normal_density(x) * std::pow(normal_below(x), count - 1);
  }
  return sum * kStep * count;
}

/// Open-circuit voltage, beyond full with the slope of the last part of the curve.
double open_circuit_beyond_V(const cell::Chemistry& chemistry, double charge) {
  const double within_V = cell::open_circuit_V(chemistry, std::min(charge, 1.0));
  if (charge <= 1.0 || chemistry.ocv_V.size() < 2) return within_V;
  const auto& last = chemistry.ocv_V.back();
  const auto& before = chemistry.ocv_V[chemistry.ocv_V.size() - 2];
  return within_V + (charge - 1.0) * (last.y - before.y) / (last.x - before.x);
}

/// Charge at which a charged cell reaches a voltage, at least 0; infinite if it never does.
double charge_at(const cell::Chemistry& chemistry, const Ahead& string, double wanted_V) {
  const auto reached = [&](double charge) {
    return charging_V(chemistry, charge, string.rate_per_h, string.resistance_factor) >= wanted_V;
  };
  constexpr double kFarthest = 64.0;
  if (reached(0.0)) return 0.0;
  double high = 1.0;
  while (!reached(high)) {
    high *= 2.0;
    if (high > kFarthest) return std::numeric_limits<double>::infinity();
  }
  double low = 0.0;
  constexpr int kHalvings = 60;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (reached(middle) ? high : low) = middle;
  }
  return high;
}

/// How far the fullest cell is above each of the others.
double above_others(const Ahead& string) {
  return string.ahead * string.cells / static_cast<double>(string.cells - 1);
}

}  // namespace

double expected_extreme(int count) {
  return over_largest(count, [](double x) { return x; });
}

double extreme_deviation(int count) {
  const double mean = expected_extreme(count);
  return std::sqrt(over_largest(count, [mean](double x) { return (x - mean) * (x - mean); }));
}

double expected_minimum_Ah(const CellCapacities& capacities) {
  return capacities.mean_Ah - capacities.sigma_Ah * expected_extreme(capacities.cells);
}

double chance_weakest_below(const CellCapacities& capacities, double limit_Ah) {
  // log1p and expm1 keep small chances exact.
  const double one_below = normal_below((limit_Ah - capacities.mean_Ah) / capacities.sigma_Ah);
  return -std::expm1(capacities.cells * std::log1p(-one_below));
}

DrawnMinimum drawn_minimum_Ah(const CellCapacities& capacities, std::size_t strings,
                              base::RandomStream random) {
  double mean = 0.0;
  double squares = 0.0;
  for (std::size_t i = 0; i < strings; ++i) {
    double least = std::numeric_limits<double>::infinity();
    for (int k = 0; k < capacities.cells; ++k) {
      least = std::min(least, capacities.mean_Ah + capacities.sigma_Ah * random.normal());
    }
    const double step = least - mean;
    mean += step / static_cast<double>(i + 1);
    squares += step * (least - mean);
  }
  const auto n = static_cast<double>(strings);
  return {mean, std::sqrt(squares / (n - 1.0) / n)};
}

double usable_Ah(const std::vector<StringCell>& cells) {
  if (cells.empty()) return 0.0;
  double held_Ah = std::numeric_limits<double>::infinity();
  double room_Ah = held_Ah;
  for (const StringCell& c : cells) {
    held_Ah = std::min(held_Ah, c.charge * c.capacity_Ah);
    room_Ah = std::min(room_Ah, (1.0 - c.charge) * c.capacity_Ah);
  }
  return held_Ah + room_Ah;
}

double charging_V(const cell::Chemistry& chemistry, double charge, double rate_per_h,
                  double resistance_factor) {
  const cell::Resistance& r = chemistry.resistance;
  const double within = std::clamp(charge, 0.0, 1.0);
  double ohm_Ah = r.ohmic_ohm_Ah * base::curve_at(r.ohmic_by_soc, within, 1.0) +
                  (r.fast_ohm_Ah + r.slow_ohm_Ah) * base::curve_at(r.relaxing_by_soc, within, 1.0);
  constexpr double kLeast = 1e-3;  // as in the bank's own charge resistance
  ohm_Ah += r.charge_rho_ohm_Ah * (1.0 + r.charge_m * within / std::max(r.charge_c - within, kLeast));
  constexpr double kV_per_mV = 1e-3;
  const double half_gap_V = kV_per_mV * base::curve_at(chemistry.hysteresis.half_gap_mV, within, 0.0);
  return open_circuit_beyond_V(chemistry, charge) + half_gap_V + rate_per_h * ohm_Ah * resistance_factor;
}

StringVoltages voltages_at(const cell::Chemistry& chemistry, const Ahead& string, double mean_charge) {
  const double fullest = mean_charge + string.ahead;
  StringVoltages v;
  v.fullest_V = charging_V(chemistry, fullest, string.rate_per_h, string.resistance_factor);
  v.others_V =
      charging_V(chemistry, fullest - above_others(string), string.rate_per_h, string.resistance_factor);
  v.string_V = v.fullest_V + (string.cells - 1) * v.others_V;
  return v;
}

Opening opening_at(const cell::Chemistry& chemistry, const Ahead& string, double limit_V) {
  Opening opening;
  opening.mean_charge = charge_at(chemistry, string, limit_V) - string.ahead;
  opening.voltages = voltages_at(chemistry, string, opening.mean_charge);
  opening.lost_share = above_others(string);
  return opening;
}

Bleeding bleeding(const cell::Chemistry& chemistry, const Ahead& string, double capacity_Ah, double balance_V,
                  double limit_V, double hold_h, double bleed_A) {
  Bleeding b;
  b.difference_Ah = above_others(string) * capacity_Ah;
  b.hours = b.difference_Ah / bleed_A;
  const double from = charge_at(chemistry, string, balance_V);
  const double to = charge_at(chemistry, string, limit_V);
  if (to > from && string.rate_per_h > 0.0) b.hours_a_charge = (to - from) / string.rate_per_h;
  if (to >= from) b.hours_a_charge += hold_h;
  b.charges = b.hours > 0.0 ? b.hours / b.hours_a_charge : 0.0;
  return b;
}

}  // namespace voltwright::bank
