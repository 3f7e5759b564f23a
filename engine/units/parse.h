#pragma once
// "value unit" texts to quantities: "45 W", "0,045 kW", "2.5 mm2", "10 AWG", "−5 °C", "15 %".
// A missing unit, a unit of another dimension and a misspelt unit are problems that say what would be right.
// Numbers are finite; ranges are for the caller. Problems carry no place in a file.
#include <string_view>

#include "engine/base/result.h"
#include "engine/units/quantity.h"

namespace voltwright::units {

/// mW, W, kW.
base::Result<Power> parse_power(std::string_view text);
/// Wh, kWh, MWh, J, kJ, MJ.
base::Result<Energy> parse_energy(std::string_view text);
/// mAh, Ah, kAh.
base::Result<Charge> parse_charge(std::string_view text);
/// mV, V, kV.
base::Result<Voltage> parse_voltage(std::string_view text);
/// mA, A, kA.
base::Result<Current> parse_current(std::string_view text);
/// mohm, ohm, also with the Greek letter.
base::Result<Resistance> parse_resistance(std::string_view text);
/// s, min, h, days, weeks, months (a twelfth of a year), years (365.25 days).
base::Result<Duration> parse_duration(std::string_view text);
/// mm, cm, m, km, in, ft.
base::Result<Length> parse_length(std::string_view text);
/// mm2, cm2, m2, or American wire gauge from 4/0 AWG to 40 AWG as the area of the solid wire, whose diameter
/// is 0.127 mm * 92^((36 - n) / 39) (ASTM B258).
base::Result<Area> parse_area(std::string_view text);
/// mL, L, dm3, m3.
base::Result<Volume> parse_volume(std::string_view text);
/// g, kg, t, lb, oz.
base::Result<Mass> parse_mass(std::string_view text);
/// A point on a temperature scale: °C or °F.
base::Result<Temperature> parse_temperature(std::string_view text);
/// A difference of temperatures: K.
base::Result<TemperatureDifference> parse_temperature_difference(std::string_view text);
/// W/K.
base::Result<HeatConductance> parse_heat_conductance(std::string_view text);
/// "15 %" or a plain 0.15.
base::Result<Fraction> parse_fraction(std::string_view text);
/// "3000 EUR", "EUR 3000", "€3000". `currency` is the three-letter code that everything is counted in.
base::Result<Money> parse_money(std::string_view text, std::string_view currency);

/// Relative change per kelvin, 1/K: "-0.35 %/K".
base::Result<double> parse_per_kelvin(std::string_view text);
/// Degrees of arc: "30°", "30 deg" or a plain number.
base::Result<double> parse_angle_deg(std::string_view text);
/// A compass direction in degrees from north over east: as an angle, or "south", "SSW".
base::Result<double> parse_direction_deg(std::string_view text);
/// Time a day: "6 h/day", "20 min/day".
base::Result<Duration> parse_duration_per_day(std::string_view text);
/// How often a day: "6 /day", "2 per week".
base::Result<double> parse_count_per_day(std::string_view text);

}  // namespace voltwright::units
