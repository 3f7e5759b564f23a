// Sources: solar arrays, mains.
#include <fmt/core.h>

#include <cmath>
#include <cstddef>
#include <iterator>
#include <string>

#include "engine/units/month_names.h"
#include "engine/units/parse.h"
#include "files/plan_parts.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

const Span<Current> kOutput = {amperes(0.1), amperes(1000), "0.1 A to 1000 A", "\"30 A\""};
const Span<Fraction> kEfficiency = {fraction(0.5), fraction(1.0), "50 % to 100 %", "\"96 %\""};

void set_fraction(Section& section, std::string_view key, const Span<Fraction>& span, double& target) {
  if (const auto share = section.value<Fraction>(key, parse_fraction, span)) target = as_fraction(*share);
}

/// The four figures of a module must fit each other, else two rows of the data sheet were mixed up.
void check_module(Section& section, const sky::Module& m) {
  if (m.at_peak_voltage >= m.open_circuit && as_volts(m.open_circuit) > 0.0) {
    base::Problem& problem =
        section.note("at_peak_voltage", "The voltage at peak power is not below the open-circuit voltage.");
    problem.given = fmt::format("{:.4g} V", as_volts(m.at_peak_voltage));
    problem.limit = fmt::format("below {:.4g} V", as_volts(m.open_circuit));
  }
  if (m.at_peak_current >= m.short_circuit && as_amperes(m.short_circuit) > 0.0) {
    base::Problem& problem =
        section.note("at_peak_current", "The current at peak power is not below the short-circuit current.");
    problem.given = fmt::format("{:.4g} A", as_amperes(m.at_peak_current));
    problem.limit = fmt::format("below {:.4g} A", as_amperes(m.short_circuit));
  }
  const double product_W = as_volts(m.at_peak_voltage) * as_amperes(m.at_peak_current);
  const double peak_W = as_watts(m.peak);
  if (product_W > 0.0 && peak_W > 0.0 && std::abs(product_W - peak_W) > 0.1 * peak_W) {
    base::Problem& problem = section.note(
        "peak",
        fmt::format("Voltage times current at peak power is {:.4g} W, not the peak power.", product_W));
    problem.given = fmt::format("{:.4g} W", peak_W);
    problem.limit = "within 10 % of each other";
  }
}

sky::Module read_module(Section section) {
  sky::Module m;
  section.set_wanted<Power>("peak", parse_power, {watts(1), watts(2000), "1 W to 2 kW", "\"175 W\""}, m.peak);
  const Span<Voltage> voltage = {volts(0.5), volts(200), "0.5 V to 200 V", "\"24.3 V\""};
  const Span<Current> current = {amperes(0.05), amperes(50), "0.05 A to 50 A", "\"9.4 A\""};
  section.set_wanted<Voltage>("open_circuit", parse_voltage, voltage, m.open_circuit);
  section.set_wanted<Current>("short_circuit", parse_current, current, m.short_circuit);
  section.set_wanted<Voltage>("at_peak_voltage", parse_voltage, voltage, m.at_peak_voltage);
  section.set_wanted<Current>("at_peak_current", parse_current, current, m.at_peak_current);
  const Span<double> slope = {-0.01, 0.0, "-1 to 0 %/K", "\"-0.35 %/K\""};
  section.set<double>("power_per_K", parse_per_kelvin, slope, m.power_per_K);
  section.set<double>("voltage_per_K", parse_per_kelvin, slope, m.voltage_per_K);
  check_module(section, m);
  section.finish();
  return m;
}

void read_controller(Section section, supply::SolarArray& array) {
  if (const auto i = section.choice("kind", {"mppt", "pwm"})) {
    array.controller = *i == 0 ? supply::ControllerKind::kMppt : supply::ControllerKind::kPwm;
  }
  set_fraction(section, "efficiency", kEfficiency, array.controller_efficiency);
  section.set_wanted<Current>("output_limit", parse_current, kOutput, array.output_limit);
  section.set_wanted<Voltage>("input_limit", parse_voltage,
                              {volts(10), volts(600), "10 V to 600 V", "\"100 V\""}, array.input_limit);
  section.finish();
}

void read_orientation(Section& section, supply::SolarArray& array) {
  const bool flat = section.flag("flat").value_or(false);
  const Span<double> tilt = {0.0, 90.0, "0 to 90 deg", "\"30 deg\""};
  const Span<double> azimuth = {0.0, 360.0, "0 to 360 deg from north over east", "\"180 deg\""};
  section.know({"tilt", "azimuth", "azimuth_from"});
  if (const auto from = section.choice("azimuth_from", {"north", "front"})) array.turns = *from == 1;
  if (flat) {
    for (const char* key : {"tilt", "azimuth"}) {
      if (section.has(key)) {
        section.note(key, "A flat array has no tilt and faces nowhere.").remedy =
            "Leave out flat, or this key.";
      }
    }
    return;
  }
  if (!section.has("tilt") && !section.has("flat")) {
    section.note_missing("tilt", "\"30 deg\" with azimuth, or flat = true");
    section.value<double>("azimuth", parse_direction_deg, azimuth);
    return;
  }
  section.set_wanted<double>("tilt", parse_angle_deg, tilt, array.tilt_deg);
  if (array.tilt_deg > 0.0) {
    section.set_wanted<double>("azimuth", parse_direction_deg, azimuth, array.azimuth_deg);
  } else {
    section.set<double>("azimuth", parse_direction_deg, azimuth, array.azimuth_deg);
  }
}

/// Twelve losses, January first: `soiling_by_month = { jan = "5 %", ... }`, where what is left out is as
/// `soiling`.
void read_months(Section& section, supply::SolarArray& array) {
  std::optional<Section> months = section.section("soiling_by_month");
  if (!months) return;
  const Span<Fraction> lost = {fraction(0.0), fraction(1.0), "0 % to 100 %", "\"80 %\""};
  array.soiling_by_month.assign(std::size(units::kMonthKeys), array.soiling);
  for (std::size_t m = 0; m < std::size(units::kMonthKeys); ++m) {
    set_fraction(*months, units::kMonthKeys[m], lost, array.soiling_by_month[m]);
  }
  months->finish();
}

}  // namespace

supply::SolarArray read_solar(Section section) {
  supply::SolarArray array;
  array.name = section.text("name").value_or("Solar array");
  if (std::optional<Section> module = section.section("module")) {
    array.module = read_module(std::move(*module));
  } else if (!section.has("module")) {
    section.note_missing(
        "module",
        "{ peak = \"175 W\", open_circuit = \"24.3 V\", short_circuit = \"9.4 A\", at_peak_voltage = "
        "\"20.1 V\", at_peak_current = \"8.7 A\" }");
  }
  if (const auto n = section.whole("in_series", 1, 50)) array.in_series = static_cast<int>(*n);
  if (const auto n = section.whole("in_parallel", 1, 100)) array.in_parallel = static_cast<int>(*n);
  read_orientation(section, array);
  if (const auto i = section.choice("mounting", {"open rack", "ventilated roof", "glued flat"})) {
    static constexpr sky::Mounting kMountings[] = {sky::Mounting::kOpenRack, sky::Mounting::kVentilatedRoof,
                                                   sky::Mounting::kGluedFlat};
    array.mounting = kMountings[*i];
  }
  read_shade(section, array);
  const Span<Fraction> losses = {fraction(0.0), fraction(0.9), "0 % to 90 %", "\"5 %\""};
  set_fraction(section, "soiling", losses, array.soiling);
  read_months(section, array);
  section.set<Temperature>("record_cold", parse_temperature,
                           {celsius(-70), celsius(30), "-70 to 30 degC", "\"-25 degC\""}, array.record_cold);
  set_fraction(section, "other_losses", losses, array.other_losses);
  if (std::optional<Section> controller = section.section("controller")) {
    read_controller(std::move(*controller), array);
  } else if (!section.has("controller")) {
    section.note_missing("controller",
                         "{ kind = \"mppt\", output_limit = \"30 A\", input_limit = \"100 V\" }");
  }
  const double open_V = array.in_series * as_volts(array.module.open_circuit);
  if (as_volts(array.input_limit) > 0.0 && open_V > as_volts(array.input_limit)) {
    section.warn(
        "in_series",
        fmt::format(
            "{} modules in series reach {:.4g} V open-circuit at 25 degC; the controller bears {:.4g} V.",
            array.in_series, open_V, as_volts(array.input_limit)),
        "Put fewer in series, or take a controller for a higher voltage.");
  }
  section.finish();
  return array;
}

supply::MainsCharger read_mains(Section section) {
  supply::MainsCharger mains;
  section.set_wanted<Current>("output_limit", parse_current, kOutput, mains.output_limit);
  set_fraction(section, "efficiency", kEfficiency, mains.efficiency);
  section.finish();
  return mains;
}

}  // namespace voltwright::files
