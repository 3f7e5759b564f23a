#include "tests/oracle/bus.h"

#include "tests/oracle/zero.h"

namespace voltwright::oracle {

namespace {

constexpr double kColdest_C = -20.0;
constexpr double kWarmest_C = 50.0;
constexpr double kReference_C = 25.0;

}  // namespace

double held_V(const supply::StageSettings<double>& settings, double stage, double temperature_C) {
  const double reference_V = stage > 1.5 ? settings.float_V : settings.absorption_V;
  const double above_K = std::clamp(temperature_C, kColdest_C, kWarmest_C) - kReference_C;
  return std::min(reference_V + settings.compensation_V_per_K * above_K, settings.highest_V);
}

BusPoint balance(const Poles& poles, std::span<const Source> sources, double load_W, double charge_limit_A) {
  const auto others_A = [&](double bus_V) {
    double sum_A = -load_W / bus_V;
    for (const Source& source : sources) sum_A += source.given_A(bus_V);
    return sum_A;
  };
  const auto sum_A = [&](double bus_V) { return poles.current_at_A(bus_V) + others_A(bus_V); };
  const double rest_V = poles.source_V;
  const double at_rest_A = others_A(rest_V);
  BusPoint point{rest_V, 0.0};
  if (at_rest_A > 0.0) point.bus_V = zero_of(sum_A, rest_V, 1.5 * rest_V);
  if (at_rest_A < 0.0) point.bus_V = zero_of(sum_A, 0.6 * rest_V, rest_V);
  point.bank_A = poles.current_at_A(point.bus_V);
  if (point.bank_A < -charge_limit_A) {
    point.bank_A = -charge_limit_A;
    point.bus_V = poles.voltage_V(point.bank_A);
  }
  return point;
}

}  // namespace voltwright::oracle
