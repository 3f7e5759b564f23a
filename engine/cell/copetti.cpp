#include "engine/cell/copetti.h"

#include <algorithm>
#include <cmath>

namespace voltwright::cell {

namespace {

constexpr double kReference_C = 25.0;
constexpr double kTenHours = 10.0;
constexpr double kMostOfTenHourCurrent = 2.0;
constexpr double kNearestToPole = 0.01;

double rate_of(const CopettiString& string, double current_A) { return current_A / string.ten_hour_Ah; }

bool current_valid(const CopettiString& string, double current_A) {
  return current_A >= 0.0 && kTenHours * rate_of(string, current_A) <= kMostOfTenHourCurrent;
}

/// Form shared by the onset of gassing and the final voltage.
double against_current(double at_rest_V, double growth_V, double rate, double temperature_C) {
  return (at_rest_V + growth_V * std::log1p(rate)) * (1.0 - 0.002 * (temperature_C - kReference_C));
}

}  // namespace

CopettiValue copetti_discharge_V(const CopettiString& string, double state_of_charge, double current_A,
                                 double temperature_C, double exponent) {
  const double z = std::clamp(state_of_charge, kNearestToPole, 1.0);
  const double resistance = 4.0 / (1.0 + std::pow(current_A, 1.3)) + 0.27 / std::pow(z, exponent) + 0.02;
  const double fall =
      rate_of(string, current_A) * resistance * (1.0 - 0.007 * (temperature_C - kReference_C));
  const bool charge_valid = state_of_charge > 0.0 && state_of_charge <= 1.0;
  return {2.085 - 0.12 * (1.0 - z) - fall, charge_valid && current_valid(string, current_A)};
}

CopettiValue copetti_charge_V(const CopettiString& string, double state_of_charge, double current_A,
                              double temperature_C) {
  const double z = std::clamp(state_of_charge, 0.0, 1.0 - kNearestToPole);
  const double resistance = 6.0 / (1.0 + std::pow(current_A, kCopettiChargeCurrentExponent)) +
                            0.48 / std::pow(1.0 - z, kCopettiChargeExponent) + 0.036;
  const double rise =
      rate_of(string, current_A) * resistance * (1.0 - 0.025 * (temperature_C - kReference_C));
  const bool charge_valid = state_of_charge > 0.0 && state_of_charge < 1.0;
  return {2.0 + 0.16 * z + rise, charge_valid && current_valid(string, current_A)};
}

CopettiValue copetti_gassing_V(const CopettiString& string, double current_A, double temperature_C) {
  return {against_current(2.24, 1.97, rate_of(string, current_A), temperature_C),
          current_valid(string, current_A)};
}

CopettiValue copetti_final_V(const CopettiString& string, double current_A, double temperature_C) {
  return {against_current(2.45, 2.011, rate_of(string, current_A), temperature_C),
          current_valid(string, current_A)};
}

CopettiValue copetti_time_constant_h(const CopettiString& string, double current_A) {
  return {kCopettiTimeConstant_h / (1.0 + 852.0 * std::pow(rate_of(string, current_A), 1.67)),
          current_valid(string, current_A)};
}

CopettiValue copetti_overcharge_V(const CopettiString& string, double current_A, double temperature_C,
                                  double hours) {
  const double onset_V = copetti_gassing_V(string, current_A, temperature_C).value;
  const double final_V = copetti_final_V(string, current_A, temperature_C).value;
  const double passed = std::max(hours, 0.0) / copetti_time_constant_h(string, current_A).value;
  return {onset_V + (final_V - onset_V) * -std::expm1(-passed), current_valid(string, current_A)};
}

CopettiValue copetti_gassing_charge(const CopettiString& string, double current_A, double temperature_C) {
  const double onset_V = copetti_gassing_V(string, current_A, temperature_C).value;
  const auto below_onset = [&](double z) {
    return copetti_charge_V(string, z, current_A, temperature_C).value < onset_V;
  };
  constexpr int kHalvings = 60;
  double low = 0.0;
  double high = 1.0 - kNearestToPole;
  const bool valid = current_valid(string, current_A);
  if (below_onset(high)) return {1.0, valid};
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (below_onset(middle) ? low : high) = middle;
  }
  return {0.5 * (low + high), valid};
}

CopettiValue copetti_capacity_Ah(const CopettiString& string, double current_A, double temperature_C) {
  const double of_ten_hour_current = kTenHours * rate_of(string, current_A);
  const double at_reference =
      string.ten_hour_Ah * 1.67 / (1.0 + 0.67 * std::pow(of_ten_hour_current, kCopettiCapacityExponent));
  return {at_reference * (1.0 + 0.005 * (temperature_C - kReference_C)), current_valid(string, current_A)};
}

CopettiValue copetti_charge_efficiency(const CopettiString& string, double state_of_charge,
                                       double current_A) {
  const double z = std::clamp(state_of_charge, 0.0, 1.0);
  const double of_ten_hour_current = kTenHours * rate_of(string, current_A);
  const bool charge_valid = state_of_charge >= 0.0 && state_of_charge <= 1.0;
  return {-std::expm1(20.73 / (of_ten_hour_current + 0.55) * (z - 1.0)),
          charge_valid && current_valid(string, current_A)};
}

}  // namespace voltwright::cell
