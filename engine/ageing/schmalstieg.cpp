#include "engine/ageing/schmalstieg.h"

#include <algorithm>
#include <cmath>

#include "engine/ageing/stress.h"

namespace voltwright::ageing {

namespace {

double activated(double slope_per_V, double offset, double rest_V, double energy_K, double temperature_C) {
  return std::max(0.0, slope_per_V * rest_V - offset) * std::exp(-energy_K / (temperature_C + kFreezing_K));
}

double square(double value) { return value * value; }

}  // namespace

double quadratic_mean_V(const base::Curve& rest_V_by_soc, double low_soc, double high_soc) {
  if (!(high_soc > low_soc)) return base::curve_at(rest_V_by_soc, low_soc, 0.0);
  double sum = 0.0;
  base::CurvePoint from{low_soc, base::curve_at(rest_V_by_soc, low_soc, 0.0)};
  const auto add = [&](const base::CurvePoint& to) {
    // The integral of the square of a straight line.
    sum += (to.x - from.x) * (square(from.y) + from.y * to.y + square(to.y)) / 3.0;
    from = to;
  };
  for (const base::CurvePoint& point : rest_V_by_soc) {
    if (point.x > low_soc && point.x < high_soc) add(point);
  }
  add({high_soc, base::curve_at(rest_V_by_soc, high_soc, 0.0)});
  return std::sqrt(sum / (high_soc - low_soc));
}

double Schmalstieg::loss_per_day_power(double temperature_C, double rest_V) const {
  return activated(constants_.capacity_slope_per_V, constants_.capacity_offset, rest_V, constants_.capacity_K,
                   std::max(temperature_C, constants_.held_below_C));
}

double Schmalstieg::growth_per_day_power(double temperature_C, double rest_V) const {
  return activated(constants_.resistance_slope_per_V, constants_.resistance_offset, rest_V,
                   constants_.resistance_K, std::max(temperature_C, constants_.held_below_C));
}

double Schmalstieg::loss_per_root_Ah(double mean_V, double depth) const {
  return constants_.use_square * square(mean_V - constants_.use_centre_V) + constants_.use_base +
         constants_.use_by_depth * depth;
}

double Schmalstieg::growth_per_Ah(double mean_V, double depth) const {
  return std::max(constants_.growth_least,
                  constants_.growth_square * square(mean_V - constants_.growth_centre_V) +
                      constants_.growth_base + constants_.growth_by_depth * depth);
}

void Schmalstieg::wear(Aged& aged, const Exposure& exposure, double times) const {
  const double power = 1.0 / constants_.time_exponent;
  double rest = 0.0, rest_growth = 0.0, use = 0.0, use_growth = 0.0;
  for (const Dwell& dwell : exposure.dwell) {
    const double rest_V = base::curve_at(constants_.rest_V_by_soc, dwell.soc, 0.0);
    const double days = dwell.hours / kHoursPerDay;
    rest += std::pow(loss_per_day_power(dwell.temperature_C, rest_V), power) * days;
    rest_growth += std::pow(growth_per_day_power(dwell.temperature_C, rest_V), power) * days;
  }
  for (const Swing& swing : exposure.swings) {
    const double mean_V = quadratic_mean_V(constants_.rest_V_by_soc, low_soc(swing), high_soc(swing));
    const double moved_Ah = 2.0 * full_cycles(swing) * constants_.cell_Ah;
    use += square(loss_per_root_Ah(mean_V, swing.depth)) * moved_Ah;
    use_growth += growth_per_Ah(mean_V, swing.depth) * moved_Ah;
  }
  aged.calendar_loss = stepped(aged.calendar_loss, constants_.time_exponent, rest * times);
  aged.cycle_loss = stepped(aged.cycle_loss, 0.5, use * times);
  const double by_time = stepped(aged.resistance_by_time, constants_.time_exponent, rest_growth * times);
  aged.resistance_growth += by_time - aged.resistance_by_time + use_growth * times;
  aged.resistance_by_time = by_time;
}

}  // namespace voltwright::ageing
