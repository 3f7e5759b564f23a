// One section of claims to a sheet.
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/units/number.h"
#include "engine/units/parse.h"
#include "files/sheet_parts.h"

namespace voltwright::files {
namespace {

using units::Charge;
using units::Current;
using units::Duration;
using units::Energy;
using units::Fraction;
using units::Length;
using units::Mass;
using units::Temperature;
using units::Voltage;
using units::Volume;

constexpr int kFirstYear = 1990;
constexpr int kLastYear = 2100;
constexpr double kMillimetresPerMetre = 1e3;
constexpr double kSecondsPerMinute = 60.0;

base::Problem unlike(std::string_view text, const char* what, const char* example) {
  base::Problem problem;
  problem.what = what;
  problem.given = text;
  problem.remedy = example;
  return problem;
}

/// A number with exactly one of the units that are named.
base::Result<double> parse_ratio(std::string_view text, std::initializer_list<std::string_view> tails,
                                 const char* what, const char* example) {
  const auto number = units::read_leading_number(text, what);
  if (!number) return number.problems();
  if (std::find(tails.begin(), tails.end(), number.value().rest) == tails.end()) {
    return unlike(text, what, example);
  }
  return number.value().value;
}

base::Result<double> parse_per_mass(std::string_view text) {
  return parse_ratio(text, {"Wh/kg"}, "An energy per mass is wanted.", "Write it such as \"120 Wh/kg\".");
}

base::Result<double> parse_per_volume(std::string_view text) {
  return parse_ratio(text, {"Wh/L", "Wh/l", "Wh/dm3"}, "An energy per volume is wanted.",
                     "Write it such as \"110 Wh/L\".");
}

base::Result<double> parse_c_rate(std::string_view text) {
  return parse_ratio(text, {"C", "/h"},
                     "A C-rate is wanted: a current in multiples of the capacity per hour.",
                     "Write it such as \"0.5C\".");
}

/// "3 %", "3 %/month".
base::Result<Fraction> parse_monthly(std::string_view text) {
  std::string plain = units::plain_text(text);
  for (const std::string_view tail : {"/month", "per month", "a month"}) {
    if (plain.size() > tail.size() && std::string_view(plain).substr(plain.size() - tail.size()) == tail) {
      plain.resize(plain.size() - tail.size());
      break;
    }
  }
  return units::parse_fraction(plain);
}

const Span<Charge> kCapacity = {units::ampere_hours(0.01), units::ampere_hours(1e5), "0.01 Ah to 100,000 Ah",
                                "\"100 Ah\""};
const Span<Voltage> kVoltage = {units::volts(0.5), units::volts(1000), "0.5 V to 1000 V", "\"12.8 V\""};
const Span<Energy> kEnergy = {units::watt_hours(0.01), units::watt_hours(1e7), "0.01 Wh to 10 MWh",
                              "\"1280 Wh\""};
const Span<Mass> kMass = {units::kilograms(0.001), units::kilograms(1e5), "1 g to 100 t", "\"11 kg\""};
const Span<Length> kLength = {units::metres(0.001), units::metres(100), "1 mm to 100 m", "\"330 mm\""};
const Span<Volume> kVolume = {units::litres(0.001), units::litres(1e6), "1 mL to 1000 m3", "\"11 L\""};
const Span<Current> kCurrent = {units::amperes(0.001), units::amperes(1e6), "1 mA to 1000 kA", "\"100 A\""};
const Span<Duration> kTime = {units::seconds(0.001), units::hours(1000), "0.001 s to 1000 h", "\"20 h\""};
const Span<Duration> kLife = {units::days(1), units::years(200), "1 day to 200 years", "\"10 years\""};
const Span<Temperature> kTemperature = {units::celsius(-100), units::celsius(200), "-100 degC to 200 degC",
                                        "\"0 degC\""};
const Span<Fraction> kShare = {units::fraction(0.0), units::fraction(1.0), "0 to 100 %", "\"80 %\""};
const Span<Fraction> kDepth = {units::fraction(0.001), units::fraction(1.0), "0.1 % to 100 %", "\"80 %\""};
const Span<double> kPerMass = {0.1, 1e5, "0.1 to 100,000 Wh/kg", "\"120 Wh/kg\""};
const Span<double> kPerVolume = {0.1, 1e5, "0.1 to 100,000 Wh/L", "\"110 Wh/L\""};
const Span<double> kRate = {0.001, 1000.0, "0.001C to 1000C", "\"0.5C\""};

template <class Q>
void take(Section& section, std::string_view key, Parser<Q> parse, const Span<Q>& span, double (*plain)(Q),
          std::optional<double>& target) {
  if (const std::optional<Q> value = section.value(key, parse, span)) target = plain(*value);
}

double as_is(double value) { return value; }
double minutes(Duration time) { return units::as_seconds(time) / kSecondsPerMinute; }
double degrees(Temperature temperature) { return temperature.as_celsius(); }

void read_identity(Section& section, claims::Sheet& sheet) {
  if (const auto name = section.text("name")) sheet.name = *name;
  if (!section.has("name")) section.note_missing("name", "\"Battery of a leaflet\"");
  std::vector<std::string> kinds;
  for (const cell::Chemistry& c : section.reading().catalogue.chemistries) kinds.push_back(c.id);
  kinds.emplace_back("lithium-ion");
  kinds.emplace_back("lead-acid");
  if (!section.has("chemistry")) section.note_missing("chemistry", "\"lfp\"");
  if (const auto kind = section.choice("chemistry", kinds)) sheet.kind = kinds[*kind];
  if (const auto level = section.choice("level", {"battery", "cell"})) {
    sheet.level = *level == 0 ? claims::Level::kBattery : claims::Level::kCell;
  }
  if (const auto form = section.text("form")) sheet.form = *form;
  if (const auto year = section.whole("year", kFirstYear, kLastYear)) sheet.year = static_cast<int>(*year);
  if (const auto series = section.whole("cells_in_series", 1, 400)) sheet.series = static_cast<int>(*series);
}

void read_size(Section& section, claims::Sheet& sheet) {
  take(section, "mass", units::parse_mass, kMass, units::as_kilograms, sheet.mass_kg);
  take(section, "volume", units::parse_volume, kVolume, units::as_litres, sheet.volume_L);
  take(section, "energy_per_mass", parse_per_mass, kPerMass, as_is, sheet.energy_Wh_per_kg);
  take(section, "energy_per_volume", parse_per_volume, kPerVolume, as_is, sheet.energy_Wh_per_L);
  const auto length = section.value("length", units::parse_length, kLength);
  const auto width = section.value("width", units::parse_length, kLength);
  const auto height = section.value("height", units::parse_length, kLength);
  if (length && width && height) {
    sheet.outside = claims::Outside{units::as_metres(*length) * kMillimetresPerMetre,
                                    units::as_metres(*width) * kMillimetresPerMetre,
                                    units::as_metres(*height) * kMillimetresPerMetre};
    return;
  }
  const bool any = section.has("length") || section.has("width") || section.has("height");
  for (const std::string_view key : {"length", "width", "height"}) {
    if (any && !section.has(key)) section.note_missing(key, "\"330 mm\"");
  }
}

void read_discharge(Section& section, claims::Sheet& sheet) {
  take(section, "continuous", units::parse_current, kCurrent, units::as_amperes, sheet.continuous_A);
  take(section, "continuous_for", units::parse_duration, kTime, units::as_seconds, sheet.continuous_s);
  take(section, "continuous_rate", parse_c_rate, kRate, as_is, sheet.continuous_per_h);
  take(section, "peak", units::parse_current, kCurrent, units::as_amperes, sheet.peak_A);
  take(section, "peak_for", units::parse_duration, kTime, units::as_seconds, sheet.peak_s);
  take(section, "peak_rate", parse_c_rate, kRate, as_is, sheet.peak_per_h);
  take(section, "cold_cranking", units::parse_current, kCurrent, units::as_amperes, sheet.cold_cranking_A);
  take(section, "marine_cranking", units::parse_current, kCurrent, units::as_amperes,
       sheet.marine_cranking_A);
  take(section, "reserve", units::parse_duration, kTime, minutes, sheet.reserve_min);
}

void read_charge(Section& section, claims::Sheet& sheet) {
  take(section, "charge", units::parse_current, kCurrent, units::as_amperes, sheet.charge_A);
  take(section, "charge_rate", parse_c_rate, kRate, as_is, sheet.charge_per_h);
  take(section, "charge_voltage", units::parse_voltage, kVoltage, units::as_volts, sheet.charge_V);
  take(section, "charge_time", units::parse_duration, kTime, units::as_hours, sheet.charge_time_h);
  take(section, "charger", units::parse_current, kCurrent, units::as_amperes, sheet.charger_A);
  take(section, "cold_charge", units::parse_current, kCurrent, units::as_amperes, sheet.cold_charge_A);
  take(section, "charge_coldest", units::parse_temperature, kTemperature, degrees, sheet.charge_min_C);
  take(section, "charge_hottest", units::parse_temperature, kTemperature, degrees, sheet.charge_max_C);
  take(section, "discharge_coldest", units::parse_temperature, kTemperature, degrees, sheet.discharge_min_C);
  take(section, "discharge_hottest", units::parse_temperature, kTemperature, degrees, sheet.discharge_max_C);
  sheet.heated = section.flag("heated");
  sheet.protection = section.flag("protection");
}

void read_life(Section& section, claims::Sheet& sheet) {
  if (const auto cycles = section.number("cycles", 1.0, 1e6)) sheet.cycles = *cycles;
  take(section, "cycles_depth", units::parse_fraction, kDepth, units::as_fraction, sheet.cycles_depth);
  take(section, "cycles_temperature", units::parse_temperature, kTemperature, degrees, sheet.cycles_C);
  take(section, "cycles_end", units::parse_fraction, kShare, units::as_fraction, sheet.cycles_end);
  take(section, "calendar_life", units::parse_duration, kLife, units::as_years, sheet.calendar_years);
  take(section, "self_discharge", parse_monthly, kShare, units::as_fraction, sheet.self_discharge_per_month);
}

void read_price(Section& section, claims::Sheet& sheet) {
  if (const auto currency = section.text("currency")) {
    const bool is_code = currency->size() == 3 && std::all_of(currency->begin(), currency->end(),
                                                              [](char c) { return c >= 'A' && c <= 'Z'; });
    if (is_code) {
      sheet.currency = *currency;
    } else {
      base::Problem& problem = section.note("currency", "A currency is written as three capital letters.");
      problem.given = shown(*currency);
      problem.remedy = "Write currency = \"EUR\".";
    }
  }
  const auto price = section.text("price");
  if (!price) return;
  const auto money = units::parse_money(*price, sheet.currency);
  if (money && units::as_money(money.value()) > 0.0) {
    sheet.price = units::as_money(money.value());
    return;
  }
  base::Problem& problem =
      section.note("price", money ? "A price is more than nothing." : "The price cannot be read.");
  problem.given = shown(*price);
  problem.remedy = money ? "Leave it out if it is not known." : money.problems().front().what;
}

}  // namespace

const std::vector<std::string>& sheet_keys() {
  static const std::vector<std::string> kKeys = {"name",
                                                 "chemistry",
                                                 "level",
                                                 "form",
                                                 "year",
                                                 "cells_in_series",
                                                 "capacity",
                                                 "capacity_time",
                                                 "voltage",
                                                 "energy",
                                                 "mass",
                                                 "volume",
                                                 "length",
                                                 "width",
                                                 "height",
                                                 "energy_per_mass",
                                                 "energy_per_volume",
                                                 "continuous",
                                                 "continuous_for",
                                                 "continuous_rate",
                                                 "peak",
                                                 "peak_for",
                                                 "peak_rate",
                                                 "cold_cranking",
                                                 "marine_cranking",
                                                 "reserve",
                                                 "charge",
                                                 "charge_rate",
                                                 "charge_voltage",
                                                 "charge_time",
                                                 "charger",
                                                 "cold_charge",
                                                 "charge_coldest",
                                                 "charge_hottest",
                                                 "discharge_coldest",
                                                 "discharge_hottest",
                                                 "heated",
                                                 "protection",
                                                 "cycles",
                                                 "cycles_depth",
                                                 "cycles_temperature",
                                                 "cycles_end",
                                                 "calendar_life",
                                                 "self_discharge",
                                                 "currency",
                                                 "price",
                                                 "usable",
                                                 "replaces_lead",
                                                 "note"};
  return kKeys;
}

claims::Sheet read_claims(Section& section) {
  claims::Sheet sheet;
  read_identity(section, sheet);
  (void)section.text("note");
  take(section, "capacity", units::parse_charge, kCapacity, units::as_ampere_hours, sheet.capacity_Ah);
  take(section, "capacity_time", units::parse_duration, kTime, units::as_hours, sheet.capacity_h);
  take(section, "voltage", units::parse_voltage, kVoltage, units::as_volts, sheet.nominal_V);
  take(section, "energy", units::parse_energy, kEnergy, units::as_watt_hours, sheet.energy_Wh);
  read_size(section, sheet);
  read_discharge(section, sheet);
  read_charge(section, sheet);
  read_life(section, sheet);
  read_price(section, sheet);
  take(section, "usable", units::parse_fraction, kDepth, units::as_fraction, sheet.usable_share);
  take(section, "replaces_lead", units::parse_charge, kCapacity, units::as_ampere_hours,
       sheet.replaces_lead_Ah);
  section.finish();
  return sheet;
}

}  // namespace voltwright::files
