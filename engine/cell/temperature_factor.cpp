#include "engine/cell/temperature_factor.h"

#include <algorithm>
#include <array>

namespace voltwright::cell {

namespace {

// IEEE Std 485, table 1: printed for whole degrees Fahrenheit, which is where the odd temperatures come from.
constexpr std::array<base::CurvePoint, 22> kTable{{
    {-3.9, 1.520}, {-1.1, 1.430}, {1.7, 1.350},  {4.4, 1.300},  {7.2, 1.250},  {10.0, 1.190},
    {12.8, 1.150}, {15.6, 1.110}, {18.3, 1.080}, {20.0, 1.056}, {21.1, 1.040}, {25.0, 1.000},
    {26.7, 0.980}, {29.4, 0.960}, {32.2, 0.940}, {35.0, 0.930}, {37.8, 0.910}, {40.6, 0.890},
    {43.3, 0.880}, {46.1, 0.870}, {48.9, 0.860}, {51.7, 0.850},
}};

bool within_table(double temperature_C) {
  return temperature_C >= kTable.front().x && temperature_C <= kTable.back().x;
}

}  // namespace

std::span<const base::CurvePoint> size_factor_table() { return kTable; }

SizeFactor size_factor(double temperature_C) {
  const base::Curve curve(kTable.begin(), kTable.end());
  const double inside = base::curve_at(curve, temperature_C, 1.0);
  const bool colder = temperature_C < kTable.front().x;
  return {colder ? std::max(inside, cubic_size_factor(temperature_C)) : inside, within_table(temperature_C)};
}

SizeFactor smooth_size_factor(double temperature_C) {
  const double t = std::clamp(temperature_C, kTable.front().x, kTable.back().x);
  return {1.0 / (0.711009126 + t * (0.0138667895 - t * 0.0000933332591)), within_table(temperature_C)};
}

double cubic_size_factor(double temperature_C) {
  const double x = temperature_C / 100.0;
  return 1.405 + x * (-2.4941 + x * (4.1916 - x * 2.8117));
}

}  // namespace voltwright::cell
