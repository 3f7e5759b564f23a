#pragma once
// Quantities at the public edge: a number with its dimension, so that ampere-hours and watt-hours cannot be
// added and a temperature is not a temperature difference. Inner loops use plain doubles with the unit in the
// name; `as_watts(q)` and its kin cross the border.
#include <compare>

namespace voltwright::units {

/// Exponents of volt, ampere, second, kelvin, metre, kilogram and currency.
template <int V, int A, int S, int K, int M, int Kg, int C>
struct Dimension {};

template <class D>
class Quantity;

template <int V, int A, int S, int K, int M, int Kg, int C>
class Quantity<Dimension<V, A, S, K, M, Kg, C>> {
 public:
  constexpr Quantity() = default;
  /// From a number in the coherent unit (V, A, s, K, m, kg, currency and their products).
  static constexpr Quantity coherent(double value) { return Quantity(value); }
  constexpr double in_coherent_unit() const { return value_; }

  constexpr auto operator<=>(const Quantity&) const = default;
  constexpr Quantity operator+(Quantity other) const { return Quantity(value_ + other.value_); }
  constexpr Quantity operator-(Quantity other) const { return Quantity(value_ - other.value_); }
  constexpr Quantity operator-() const { return Quantity(-value_); }
  constexpr Quantity operator*(double factor) const { return Quantity(value_ * factor); }
  constexpr Quantity operator/(double divisor) const { return Quantity(value_ / divisor); }
  friend constexpr Quantity operator*(double factor, Quantity q) { return q * factor; }

 private:
  explicit constexpr Quantity(double value) : value_(value) {}
  double value_ = 0.0;
};

template <int V1, int A1, int S1, int K1, int M1, int G1, int C1, int V2, int A2, int S2, int K2, int M2,
          int G2, int C2>
constexpr auto operator*(Quantity<Dimension<V1, A1, S1, K1, M1, G1, C1>> x,
                         Quantity<Dimension<V2, A2, S2, K2, M2, G2, C2>> y) {
  using D = Dimension<V1 + V2, A1 + A2, S1 + S2, K1 + K2, M1 + M2, G1 + G2, C1 + C2>;
  return Quantity<D>::coherent(x.in_coherent_unit() * y.in_coherent_unit());
}

template <int V1, int A1, int S1, int K1, int M1, int G1, int C1, int V2, int A2, int S2, int K2, int M2,
          int G2, int C2>
constexpr auto operator/(Quantity<Dimension<V1, A1, S1, K1, M1, G1, C1>> x,
                         Quantity<Dimension<V2, A2, S2, K2, M2, G2, C2>> y) {
  using D = Dimension<V1 - V2, A1 - A2, S1 - S2, K1 - K2, M1 - M2, G1 - G2, C1 - C2>;
  return Quantity<D>::coherent(x.in_coherent_unit() / y.in_coherent_unit());
}

using Fraction = Quantity<Dimension<0, 0, 0, 0, 0, 0, 0>>;
using Voltage = Quantity<Dimension<1, 0, 0, 0, 0, 0, 0>>;
using Current = Quantity<Dimension<0, 1, 0, 0, 0, 0, 0>>;
using Duration = Quantity<Dimension<0, 0, 1, 0, 0, 0, 0>>;
using TemperatureDifference = Quantity<Dimension<0, 0, 0, 1, 0, 0, 0>>;
using Length = Quantity<Dimension<0, 0, 0, 0, 1, 0, 0>>;
using Area = Quantity<Dimension<0, 0, 0, 0, 2, 0, 0>>;
using Volume = Quantity<Dimension<0, 0, 0, 0, 3, 0, 0>>;
using Mass = Quantity<Dimension<0, 0, 0, 0, 0, 1, 0>>;
using Money = Quantity<Dimension<0, 0, 0, 0, 0, 0, 1>>;
using Power = Quantity<Dimension<1, 1, 0, 0, 0, 0, 0>>;
using Energy = Quantity<Dimension<1, 1, 1, 0, 0, 0, 0>>;
using Charge = Quantity<Dimension<0, 1, 1, 0, 0, 0, 0>>;
using Resistance = Quantity<Dimension<1, -1, 0, 0, 0, 0, 0>>;
using HeatConductance = Quantity<Dimension<1, 1, 0, -1, 0, 0, 0>>;

/// A temperature on the Celsius scale: a point, not a difference. Points subtract to a difference and do not
/// add.
class Temperature {
 public:
  constexpr Temperature() = default;
  static constexpr Temperature celsius(double value) { return Temperature(value); }
  constexpr double as_celsius() const { return celsius_; }
  constexpr double as_kelvin() const { return celsius_ + 273.15; }
  constexpr auto operator<=>(const Temperature&) const = default;
  constexpr TemperatureDifference operator-(Temperature other) const {
    return TemperatureDifference::coherent(celsius_ - other.celsius_);
  }
  constexpr Temperature operator+(TemperatureDifference d) const {
    return Temperature(celsius_ + d.in_coherent_unit());
  }
  constexpr Temperature operator-(TemperatureDifference d) const {
    return Temperature(celsius_ - d.in_coherent_unit());
  }

 private:
  explicit constexpr Temperature(double celsius) : celsius_(celsius) {}
  double celsius_ = 0.0;
};

constexpr double kSecondsPerHour = 3600.0;
constexpr double kSecondsPerDay = 86400.0;
constexpr double kSecondsPerYear = 365.25 * 86400.0;

constexpr Fraction fraction(double v) { return Fraction::coherent(v); }
constexpr Voltage volts(double v) { return Voltage::coherent(v); }
constexpr Current amperes(double v) { return Current::coherent(v); }
constexpr Duration seconds(double v) { return Duration::coherent(v); }
constexpr Duration hours(double v) { return Duration::coherent(v * kSecondsPerHour); }
constexpr Duration days(double v) { return Duration::coherent(v * kSecondsPerDay); }
constexpr Duration years(double v) { return Duration::coherent(v * kSecondsPerYear); }
constexpr TemperatureDifference kelvins(double v) { return TemperatureDifference::coherent(v); }
constexpr Length metres(double v) { return Length::coherent(v); }
constexpr Area square_metres(double v) { return Area::coherent(v); }
constexpr Area square_millimetres(double v) { return Area::coherent(v * 1e-6); }
constexpr Volume litres(double v) { return Volume::coherent(v * 1e-3); }
constexpr Mass kilograms(double v) { return Mass::coherent(v); }
constexpr Money money(double v) { return Money::coherent(v); }
constexpr Power watts(double v) { return Power::coherent(v); }
constexpr Energy watt_hours(double v) { return Energy::coherent(v * kSecondsPerHour); }
constexpr Charge ampere_hours(double v) { return Charge::coherent(v * kSecondsPerHour); }
constexpr Resistance ohms(double v) { return Resistance::coherent(v); }
constexpr HeatConductance watts_per_kelvin(double v) { return HeatConductance::coherent(v); }
constexpr Temperature celsius(double v) { return Temperature::celsius(v); }

constexpr double as_fraction(Fraction q) { return q.in_coherent_unit(); }
constexpr double as_volts(Voltage q) { return q.in_coherent_unit(); }
constexpr double as_amperes(Current q) { return q.in_coherent_unit(); }
constexpr double as_seconds(Duration q) { return q.in_coherent_unit(); }
constexpr double as_hours(Duration q) { return q.in_coherent_unit() / kSecondsPerHour; }
constexpr double as_days(Duration q) { return q.in_coherent_unit() / kSecondsPerDay; }
constexpr double as_years(Duration q) { return q.in_coherent_unit() / kSecondsPerYear; }
constexpr double as_kelvins(TemperatureDifference q) { return q.in_coherent_unit(); }
constexpr double as_metres(Length q) { return q.in_coherent_unit(); }
constexpr double as_square_metres(Area q) { return q.in_coherent_unit(); }
constexpr double as_square_millimetres(Area q) { return q.in_coherent_unit() * 1e6; }
constexpr double as_litres(Volume q) { return q.in_coherent_unit() * 1e3; }
constexpr double as_kilograms(Mass q) { return q.in_coherent_unit(); }
constexpr double as_money(Money q) { return q.in_coherent_unit(); }
constexpr double as_watts(Power q) { return q.in_coherent_unit(); }
constexpr double as_watt_hours(Energy q) { return q.in_coherent_unit() / kSecondsPerHour; }
constexpr double as_ampere_hours(Charge q) { return q.in_coherent_unit() / kSecondsPerHour; }
constexpr double as_ohms(Resistance q) { return q.in_coherent_unit(); }
constexpr double as_watts_per_kelvin(HeatConductance q) { return q.in_coherent_unit(); }

}  // namespace voltwright::units
