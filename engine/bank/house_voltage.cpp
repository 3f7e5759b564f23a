#include "engine/bank/house_voltage.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

namespace voltwright::bank {

namespace {

// Inverters and compressor fridges cut out near 10.5 V and bear 15 to 16 V in a 12 V system; the others are
// multiples. Common practice, no source.
constexpr std::array kSystems = {HouseSystem{12.0, 10.5, 15.5}, HouseSystem{24.0, 21.0, 31.0},
                                 HouseSystem{48.0, 42.0, 62.0}};

}  // namespace

double share_below(const base::Curve& ocv_V, double voltage_V) {
  if (ocv_V.empty()) return 0.0;
  std::vector<double> stops = {0.0, 1.0};
  for (const base::CurvePoint& point : ocv_V) {
    if (point.x > 0.0 && point.x < 1.0) stops.push_back(point.x);
  }
  std::sort(stops.begin(), stops.end());
  double share = 0.0;
  for (std::size_t i = 1; i < stops.size(); ++i) {
    const double width = stops[i] - stops[i - 1];
    const double low_V = base::curve_at(ocv_V, stops[i - 1], 0.0);
    const double high_V = base::curve_at(ocv_V, stops[i], 0.0);
    const auto [least_V, most_V] = std::minmax(low_V, high_V);
    if (most_V < voltage_V) {
      share += width;
    } else if (least_V < voltage_V) {
      share += width * (voltage_V - least_V) / (most_V - least_V);
    }
  }
  return share;
}

HouseFit fit_house(const base::Curve& ocv_V, int cells) {
  HouseFit best;
  double most = 0.0;
  for (const HouseSystem& system : kSystems) {
    HouseFit fit;
    fit.system = system;
    fit.lost_below = share_below(ocv_V, system.cut_off_V / cells);
    fit.lost_above = std::max(0.0, 1.0 - share_below(ocv_V, system.bears_V / cells));
    const double usable = 1.0 - fit.lost_below - fit.lost_above;
    if (usable <= most) continue;
    most = usable;
    best = fit;
  }
  return best;
}

}  // namespace voltwright::bank
