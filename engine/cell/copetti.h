#pragma once
// The photovoltaic battery model of Copetti, Lorenzo and Chenlo 1993: stationary flooded lead-acid of about
// 1990, per 2 V cell. For comparison only; it does not describe a modern glass-mat block, and no season uses
// it. See docs/method/copetti.md.
//
// The bare current in two of its terms is in amperes, so that the result depends on size: of a bank of
// several strings side by side give one string and its current. Currents are magnitudes [A, >= 0].

namespace voltwright::cell {

/// One string of the model.
struct CopettiString {
  double ten_hour_Ah = 100.0;  // C10, > 0
};

/// A value of the model and whether its inputs lie where it holds: 0 < state of charge <= 1 (below 1 while
/// charging) and at most twice the ten-hour current. A state of charge outside is taken at the end for the
/// value, 0.01 or 0.99 where the formula has a pole.
struct CopettiValue {
  double value = 0.0;
  bool valid = true;
};

/// Exponents on which copies of the model disagree; see the method page for the reasons.
inline constexpr double kCopettiDischargeExponent = 1.5;       // on z; three of four copies, one has 1.2
inline constexpr double kCopettiChargeExponent = 1.2;          // on 1 - z; four of four
inline constexpr double kCopettiChargeCurrentExponent = 0.86;  // three of four, one has 0.6
inline constexpr double kCopettiCapacityExponent = 0.9;        // from memory; one copy has none
inline constexpr double kCopettiTimeConstant_h = 17.3;         // two copies; 1.73 would end in minutes

/// Voltage of a cell while discharging [V].
CopettiValue copetti_discharge_V(const CopettiString& string, double state_of_charge, double current_A,
                                 double temperature_C, double exponent = kCopettiDischargeExponent);

/// Voltage of a cell while charging, below the onset of gassing [V].
CopettiValue copetti_charge_V(const CopettiString& string, double state_of_charge, double current_A,
                              double temperature_C);

/// Voltage at which gassing begins [V].
CopettiValue copetti_gassing_V(const CopettiString& string, double current_A, double temperature_C);

/// Voltage to which overcharge leads in the end [V].
CopettiValue copetti_final_V(const CopettiString& string, double current_A, double temperature_C);

/// Time constant of the way from the onset of gassing to the final voltage [h].
CopettiValue copetti_time_constant_h(const CopettiString& string, double current_A);

/// Voltage `hours` after gassing began at a constant current [V].
CopettiValue copetti_overcharge_V(const CopettiString& string, double current_A, double temperature_C,
                                  double hours);

/// State of charge at which the charging voltage of a constant current reaches the onset of gassing; 1 if
/// it does not before full.
CopettiValue copetti_gassing_charge(const CopettiString& string, double current_A, double temperature_C);

/// Capacity at a constant current [Ah], C10 at the ten-hour current and 25 degC, 1.67 C10 at no current.
CopettiValue copetti_capacity_Ah(const CopettiString& string, double current_A, double temperature_C);

/// Share of a charge current that charges, 0 when full.
CopettiValue copetti_charge_efficiency(const CopettiString& string, double state_of_charge, double current_A);

}  // namespace voltwright::cell
