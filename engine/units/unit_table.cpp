#include "engine/units/unit_table.h"

#include <array>
#include <cstddef>

#include "engine/base/edit_distance.h"
#include "engine/units/quantity.h"

namespace voltwright::units {
namespace {

constexpr double kHour = kSecondsPerHour;
constexpr double kDay = kSecondsPerDay;
constexpr double kYear = kSecondsPerYear;
// International foot, inch and pound, exact by the agreement of 1959.
constexpr double kInch = 0.0254;
constexpr double kFoot = 0.3048;
constexpr double kPound = 0.45359237;
constexpr double kFahrenheitStep = 5.0 / 9.0;
constexpr double kFahrenheitZero = -32.0 * 5.0 / 9.0;

constexpr UnitSpelling kSpellings[] = {
    {"W", Kind::kPower, 1.0},
    {"kW", Kind::kPower, 1e3},
    {"mW", Kind::kPower, 1e-3},
    {"watt", Kind::kPower, 1.0},
    {"watts", Kind::kPower, 1.0},
    {"Wh", Kind::kEnergy, kHour},
    {"kWh", Kind::kEnergy, 1e3 * kHour},
    {"MWh", Kind::kEnergy, 1e6 * kHour},
    {"J", Kind::kEnergy, 1.0},
    {"kJ", Kind::kEnergy, 1e3},
    {"MJ", Kind::kEnergy, 1e6},
    {"Ah", Kind::kCharge, kHour},
    {"mAh", Kind::kCharge, 1e-3 * kHour},
    {"kAh", Kind::kCharge, 1e3 * kHour},
    {"V", Kind::kVoltage, 1.0},
    {"mV", Kind::kVoltage, 1e-3},
    {"kV", Kind::kVoltage, 1e3},
    {"volt", Kind::kVoltage, 1.0},
    {"volts", Kind::kVoltage, 1.0},
    {"A", Kind::kCurrent, 1.0},
    {"mA", Kind::kCurrent, 1e-3},
    {"kA", Kind::kCurrent, 1e3},
    {"amp", Kind::kCurrent, 1.0},
    {"amps", Kind::kCurrent, 1.0},
    {"ohm", Kind::kResistance, 1.0},
    {"ohms", Kind::kResistance, 1.0},
    {"mohm", Kind::kResistance, 1e-3},
    {"\xCE\xA9", Kind::kResistance, 1.0},           // Greek omega
    {"\xE2\x84\xA6", Kind::kResistance, 1.0},       // ohm sign
    {"m\xCE\xA9", Kind::kResistance, 1e-3},         //
    {"m\xE2\x84\xA6", Kind::kResistance, 1e-3},     //
    {"\xC2\xB5\xCE\xA9", Kind::kResistance, 1e-6},  // micro sign
    {"\xCE\xBC\xCE\xA9", Kind::kResistance, 1e-6},  // Greek mu
    {"uohm", Kind::kResistance, 1e-6},
    {"s", Kind::kDuration, 1.0},
    {"sec", Kind::kDuration, 1.0},
    {"second", Kind::kDuration, 1.0},
    {"seconds", Kind::kDuration, 1.0},
    {"min", Kind::kDuration, 60.0},
    {"mins", Kind::kDuration, 60.0},
    {"minute", Kind::kDuration, 60.0},
    {"minutes", Kind::kDuration, 60.0},
    {"h", Kind::kDuration, kHour},
    {"hr", Kind::kDuration, kHour},
    {"hrs", Kind::kDuration, kHour},
    {"hour", Kind::kDuration, kHour},
    {"hours", Kind::kDuration, kHour},
    {"d", Kind::kDuration, kDay},
    {"day", Kind::kDuration, kDay},
    {"days", Kind::kDuration, kDay},
    {"week", Kind::kDuration, 7.0 * kDay},
    {"weeks", Kind::kDuration, 7.0 * kDay},
    {"month", Kind::kDuration, kYear / 12.0},
    {"months", Kind::kDuration, kYear / 12.0},
    {"a", Kind::kDuration, kYear},
    {"yr", Kind::kDuration, kYear},
    {"year", Kind::kDuration, kYear},
    {"years", Kind::kDuration, kYear},
    {"m", Kind::kLength, 1.0},
    {"metre", Kind::kLength, 1.0},
    {"metres", Kind::kLength, 1.0},
    {"meter", Kind::kLength, 1.0},
    {"meters", Kind::kLength, 1.0},
    {"cm", Kind::kLength, 1e-2},
    {"mm", Kind::kLength, 1e-3},
    {"km", Kind::kLength, 1e3},
    {"in", Kind::kLength, kInch},
    {"inch", Kind::kLength, kInch},
    {"inches", Kind::kLength, kInch},
    {"ft", Kind::kLength, kFoot},
    {"foot", Kind::kLength, kFoot},
    {"feet", Kind::kLength, kFoot},
    {"mm2", Kind::kArea, 1e-6},
    {"mm^2", Kind::kArea, 1e-6},
    {"mm\xC2\xB2", Kind::kArea, 1e-6},
    {"sqmm", Kind::kArea, 1e-6},
    {"cm2", Kind::kArea, 1e-4},
    {"cm\xC2\xB2", Kind::kArea, 1e-4},
    {"m2", Kind::kArea, 1.0},
    {"m\xC2\xB2", Kind::kArea, 1.0},
    {"L", Kind::kVolume, 1e-3},
    {"l", Kind::kVolume, 1e-3},
    {"litre", Kind::kVolume, 1e-3},
    {"litres", Kind::kVolume, 1e-3},
    {"liter", Kind::kVolume, 1e-3},
    {"liters", Kind::kVolume, 1e-3},
    {"mL", Kind::kVolume, 1e-6},
    {"dm3", Kind::kVolume, 1e-3},
    {"dm\xC2\xB3", Kind::kVolume, 1e-3},
    {"m3", Kind::kVolume, 1.0},
    {"m^3", Kind::kVolume, 1.0},
    {"m\xC2\xB3", Kind::kVolume, 1.0},
    {"kg", Kind::kMass, 1.0},
    {"g", Kind::kMass, 1e-3},
    {"t", Kind::kMass, 1e3},
    {"lb", Kind::kMass, kPound},
    {"lbs", Kind::kMass, kPound},
    {"oz", Kind::kMass, kPound / 16.0},
    {"degC", Kind::kTemperature, 1.0},
    {"\xC2\xB0"
     "C",
     Kind::kTemperature, 1.0},
    {"\xC2\xBA"
     "C",
     Kind::kTemperature, 1.0},  // ordinal sign, which keyboards offer in its place
    {"\xE2\x84\x83", Kind::kTemperature, 1.0},
    {"C", Kind::kTemperature, 1.0},
    {"degF", Kind::kTemperature, kFahrenheitStep, kFahrenheitZero},
    {"\xC2\xB0"
     "F",
     Kind::kTemperature, kFahrenheitStep, kFahrenheitZero},
    {"\xE2\x84\x89", Kind::kTemperature, kFahrenheitStep, kFahrenheitZero},
    {"F", Kind::kTemperature, kFahrenheitStep, kFahrenheitZero},
    {"K", Kind::kTemperatureDifference, 1.0},
    {"kelvin", Kind::kTemperatureDifference, 1.0},
    {"W/K", Kind::kHeatConductance, 1.0},
    {"W/degC", Kind::kHeatConductance, 1.0},
    {"W/\xC2\xB0"
     "C",
     Kind::kHeatConductance, 1.0},
    {"mW/K", Kind::kHeatConductance, 1e-3},
    {"%", Kind::kFraction, 0.01},
    {"percent", Kind::kFraction, 0.01},
};

struct KindText {
  std::string_view words;
  std::string_view example;
  std::string_view units;
};

constexpr std::array<KindText, 15> kKindTexts = {{
    {"a power", "45 W", "mW, W or kW"},
    {"an energy", "1.2 kWh", "Wh, kWh or MJ"},
    {"a charge", "100 Ah", "mAh or Ah"},
    {"a voltage", "12.8 V", "mV or V"},
    {"a current", "30 A", "mA or A"},
    {"a resistance", "15 mohm", "mohm or ohm"},
    {"a time", "20 min", "s, min, h, days, weeks, months or years"},
    {"a length", "4.2 m", "mm, cm, m, in or ft"},
    {"a conductor area", "35 mm2", "mm2 or AWG"},
    {"a volume", "60 L", "L, dm3 or m3"},
    {"a mass", "95 kg", "kg, g or lb"},
    {"a temperature", "18 degC", "degC or degF"},
    {"a temperature difference", "30 K", "K"},
    {"a heat loss", "0.8 W/K", "W/K"},
    {"a share", "15 %", "%, or a plain number from 0 to 1"},
}};

const KindText& texts_of(Kind kind) { return kKindTexts[static_cast<std::size_t>(kind)]; }

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

}  // namespace

std::span<const UnitSpelling> unit_spellings() { return kSpellings; }

const UnitSpelling* find_unit(std::string_view unit) {
  for (const UnitSpelling& s : kSpellings) {
    if (s.text == unit) return &s;
  }
  return nullptr;
}

std::string_view near_unit(std::string_view unit, Kind kind) {
  const std::string low = lower(unit);
  for (const UnitSpelling& s : kSpellings) {
    if (s.kind == kind && lower(s.text) == low) return s.text;
  }
  if (low.size() < 2) return {};
  for (const UnitSpelling& s : kSpellings) {
    if (s.kind == kind && s.text.size() > 1 && base::edit_distance(low, lower(s.text)) == 1) return s.text;
  }
  return {};
}

std::string_view kind_words(Kind kind) { return texts_of(kind).words; }
std::string_view kind_example(Kind kind) { return texts_of(kind).example; }
std::string_view kind_units(Kind kind) { return texts_of(kind).units; }

}  // namespace voltwright::units
