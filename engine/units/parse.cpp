#include "engine/units/parse.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "engine/units/number.h"
#include "engine/units/unit_table.h"

namespace voltwright::units {
namespace {

std::string capital(std::string_view text) {
  std::string out(text);
  if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') out[0] = static_cast<char>(out[0] - 'a' + 'A');
  return out;
}

base::Problem problem(std::string what, std::string_view given, std::string limit, std::string remedy) {
  base::Problem p;
  p.what = std::move(what);
  p.given = given;
  p.limit = std::move(limit);
  p.remedy = std::move(remedy);
  return p;
}

base::Problem too_large(std::string_view given) {
  return problem("The number is too large to count with.", given, "", "");
}

base::Problem unit_missing(Kind kind, std::string_view given) {
  return problem("The unit is missing: " + std::string(kind_words(kind)) + " is wanted, such as " +
                     std::string(kind_example(kind)) + ".",
                 given, std::string(kind_units(kind)), "");
}

base::Problem wrong_kind(Kind kind, const UnitSpelling& unit, std::string_view given) {
  return problem(capital(kind_words(kind)) + " is wanted, such as " + std::string(kind_example(kind)) + "; " +
                     std::string(unit.text) + " is " + std::string(kind_words(unit.kind)) + ".",
                 given, std::string(kind_units(kind)), "");
}

base::Problem unknown_unit(Kind kind, std::string_view unit, std::string_view given) {
  const std::string_view near = near_unit(unit, kind);
  std::string remedy;
  if (!near.empty()) remedy = "Did you mean " + std::string(near) + "?";
  return problem("\"" + std::string(unit.substr(0, 40)) + "\" is not a unit of " +
                     std::string(kind_words(kind).substr(kind_words(kind).find(' ') + 1)) + ".",
                 given, std::string(kind_units(kind)), remedy);
}

base::Result<double> convert(double value, std::string_view unit, Kind kind, std::string_view given) {
  if (unit.empty()) {
    if (kind == Kind::kFraction) return value;
    return unit_missing(kind, given);
  }
  const UnitSpelling* spelling = find_unit(unit);
  if (spelling == nullptr) return unknown_unit(kind, unit, given);
  if (spelling->kind != kind) return wrong_kind(kind, *spelling, given);
  const double coherent = value * spelling->size + spelling->offset;
  if (!std::isfinite(coherent)) return too_large(given);
  return coherent;
}

base::Result<double> parse_coherent(std::string_view text, Kind kind) {
  base::Result<LeadingNumber> number = read_leading_number(text, capital(kind_words(kind)));
  if (!number) return number.problems();
  return convert(number.value().value, number.value().rest, kind, text);
}

template <class Q>
base::Result<Q> parse_as(std::string_view text, Kind kind) {
  base::Result<double> value = parse_coherent(text, kind);
  if (!value) return value.problems();
  return Q::coherent(value.value());
}

bool ends_with(const std::string& text, std::string_view tail) {
  return text.size() >= tail.size() && std::string_view(text).substr(text.size() - tail.size()) == tail;
}

/// Cuts one of `tails` off the end of `text`; empty if none stands there.
template <std::size_t N>
std::optional<std::string> without_tail(const std::string& text,
                                        const std::array<std::string_view, N>& tails) {
  for (const std::string_view tail : tails) {
    if (ends_with(text, tail)) return plain_text(std::string_view(text).substr(0, text.size() - tail.size()));
  }
  return std::nullopt;
}

/// Gauge number of "10 AWG", "AWG 10", "2/0 AWG" (0 is 1/0, -1 is 2/0 …); empty if the text speaks of no
/// gauge.
std::optional<std::string> gauge_text(const std::string& plain) {
  for (const std::string_view mark : {"AWG", "awg", "Awg"}) {
    if (plain.substr(0, mark.size()) == mark) return plain_text(std::string_view(plain).substr(mark.size()));
    if (ends_with(plain, mark)) {
      return plain_text(std::string_view(plain).substr(0, plain.size() - mark.size()));
    }
  }
  return std::nullopt;
}

base::Result<Area> area_of_gauge(const std::string& gauge, std::string_view given) {
  static constexpr std::array<std::string_view, 4> kLargeSizes = {"1/0", "2/0", "3/0", "4/0"};
  std::optional<int> number;
  for (std::size_t i = 0; i < kLargeSizes.size(); ++i) {
    if (gauge == kLargeSizes[i]) number = -static_cast<int>(i);
  }
  const bool is_number =
      !gauge.empty() && gauge.size() <= 2 && gauge.find_first_not_of("0123456789") == std::string::npos;
  if (is_number) {
    int value = 0;
    for (const char c : gauge) value = 10 * value + (c - '0');
    number = value;
  }
  if (!number || *number > 40) {
    return problem("The wire gauge is a whole number, or 1/0 to 4/0.", given, "4/0 AWG to 40 AWG", "");
  }
  const double diameter_m = 0.127e-3 * std::pow(92.0, (36.0 - *number) / 39.0);
  return Area::coherent(0.25 * std::numbers::pi * diameter_m * diameter_m);
}

/// Moves a currency that stands before the number behind it.
std::string money_text(const std::string& plain) {
  const std::size_t first_of_number = plain.find_first_of("+-.,0123456789");
  if (first_of_number == 0 || first_of_number == std::string::npos) return plain;
  return plain.substr(first_of_number) + " " + plain.substr(0, first_of_number);
}

}  // namespace

base::Result<Power> parse_power(std::string_view text) { return parse_as<Power>(text, Kind::kPower); }
base::Result<Energy> parse_energy(std::string_view text) { return parse_as<Energy>(text, Kind::kEnergy); }
base::Result<Charge> parse_charge(std::string_view text) { return parse_as<Charge>(text, Kind::kCharge); }
base::Result<Voltage> parse_voltage(std::string_view text) { return parse_as<Voltage>(text, Kind::kVoltage); }
base::Result<Current> parse_current(std::string_view text) { return parse_as<Current>(text, Kind::kCurrent); }
base::Result<Resistance> parse_resistance(std::string_view text) {
  return parse_as<Resistance>(text, Kind::kResistance);
}
base::Result<Duration> parse_duration(std::string_view text) {
  return parse_as<Duration>(text, Kind::kDuration);
}
base::Result<Length> parse_length(std::string_view text) { return parse_as<Length>(text, Kind::kLength); }
base::Result<Volume> parse_volume(std::string_view text) { return parse_as<Volume>(text, Kind::kVolume); }
base::Result<Mass> parse_mass(std::string_view text) { return parse_as<Mass>(text, Kind::kMass); }
base::Result<Fraction> parse_fraction(std::string_view text) {
  return parse_as<Fraction>(text, Kind::kFraction);
}
base::Result<HeatConductance> parse_heat_conductance(std::string_view text) {
  return parse_as<HeatConductance>(text, Kind::kHeatConductance);
}
base::Result<TemperatureDifference> parse_temperature_difference(std::string_view text) {
  return parse_as<TemperatureDifference>(text, Kind::kTemperatureDifference);
}

base::Result<Temperature> parse_temperature(std::string_view text) {
  base::Result<double> value = parse_coherent(text, Kind::kTemperature);
  if (!value) return value.problems();
  return celsius(value.value());
}

base::Result<Area> parse_area(std::string_view text) {
  const std::string plain = plain_text(text);
  if (const std::optional<std::string> gauge = gauge_text(plain)) return area_of_gauge(*gauge, text);
  return parse_as<Area>(text, Kind::kArea);
}

base::Result<Money> parse_money(std::string_view text, std::string_view currency) {
  const std::string code(currency);
  base::Result<LeadingNumber> number = read_leading_number(money_text(plain_text(text)), "A sum of money");
  if (!number) {
    base::Problems problems = number.problems();
    for (base::Problem& p : problems) p.given = text;
    return problems;
  }
  std::string unit = number.value().rest;
  if (unit == "\xE2\x82\xAC") unit = "EUR";
  if (unit == "\xC2\xA3") unit = "GBP";
  if (unit == "$" && ends_with(code, "D")) unit = code;
  if (unit == code) return money(number.value().value);
  if (unit.empty()) {
    return problem("The currency is missing.", text, code, "Write the sum such as 3000 " + code + ".");
  }
  return problem("The plan counts in " + code + ", not in " + unit.substr(0, 20) + ".", text, code,
                 "Convert the sum, or set the currency of the plan.");
}

base::Result<double> parse_per_kelvin(std::string_view text) {
  static constexpr std::array<std::string_view, 4> kTails = {"/K", "/degC",
                                                             "/\xC2\xB0"
                                                             "C",
                                                             "/C"};
  const std::optional<std::string> share = without_tail(plain_text(text), kTails);
  const base::Problem wanted =
      problem("A relative change with temperature is wanted, such as -0.35 %/K.", text, "%/K", "");
  if (!share) return wanted;
  base::Result<double> value = parse_coherent(*share, Kind::kFraction);
  if (!value) return wanted;
  return value.value();
}

base::Result<double> parse_angle_deg(std::string_view text) {
  base::Result<LeadingNumber> number = read_leading_number(text, "An angle in degrees");
  if (!number) return number.problems();
  const std::string& unit = number.value().rest;
  if (unit.empty() || unit == "deg" || unit == "\xC2\xB0" || unit == "degrees" || unit == "\xC2\xBA") {
    return number.value().value;
  }
  return problem("An angle is wanted, such as 30 deg.", text, "deg", "");
}

base::Result<double> parse_direction_deg(std::string_view text) {
  struct Name {
    std::string_view word;
    std::string_view letters;
  };
  static constexpr std::array<Name, 16> kCompass = {{{"north", "N"},
                                                     {"north-north-east", "NNE"},
                                                     {"north-east", "NE"},
                                                     {"east-north-east", "ENE"},
                                                     {"east", "E"},
                                                     {"east-south-east", "ESE"},
                                                     {"south-east", "SE"},
                                                     {"south-south-east", "SSE"},
                                                     {"south", "S"},
                                                     {"south-south-west", "SSW"},
                                                     {"south-west", "SW"},
                                                     {"west-south-west", "WSW"},
                                                     {"west", "W"},
                                                     {"west-north-west", "WNW"},
                                                     {"north-west", "NW"},
                                                     {"north-north-west", "NNW"}}};
  const std::string plain = plain_text(text);
  for (std::size_t i = 0; i < kCompass.size(); ++i) {
    if (plain == kCompass[i].word || plain == kCompass[i].letters) return 22.5 * static_cast<double>(i);
  }
  base::Result<double> angle = parse_angle_deg(text);
  if (angle) return angle;
  return problem("A compass direction is wanted, such as 180 deg or south.", text,
                 "0 to 360 deg from north over east, or a compass point", "");
}

base::Result<Duration> parse_duration_per_day(std::string_view text) {
  static constexpr std::array<std::string_view, 4> kTails = {"/day", "/d", "per day", "a day"};
  const std::string plain = plain_text(text);
  const std::optional<std::string> time = without_tail(plain, kTails);
  if (!time) {
    base::Result<Duration> bare = parse_duration(plain);
    const std::string remedy = bare ? "Did you mean " + plain + "/day?" : std::string();
    return problem("A time a day is wanted, such as 4 h/day.", text, "h/day or min/day", remedy);
  }
  base::Result<Duration> duration = parse_duration(*time);
  if (duration) return duration;
  base::Problems problems = duration.problems();
  for (base::Problem& p : problems) {
    p.given = text;
    p.limit = "h/day or min/day";
  }
  return problems;
}

base::Result<double> parse_count_per_day(std::string_view text) {
  static constexpr std::array<std::string_view, 4> kDaily = {"/day", "/d", "per day", "a day"};
  static constexpr std::array<std::string_view, 3> kWeekly = {"/week", "per week", "a week"};
  const std::string plain = plain_text(text);
  double days = 1.0;
  std::optional<std::string> count = without_tail(plain, kDaily);
  if (!count) {
    count = without_tail(plain, kWeekly);
    days = 7.0;
  }
  base::Problem wanted =
      problem("A number of times a day is wanted, such as 6 /day.", text, "/day or /week", "");
  base::Result<LeadingNumber> number = read_leading_number(count.value_or(plain), "A number of times a day");
  if (!number) return number.problems();
  if (!count && number.value().rest.empty()) wanted.remedy = "Did you mean " + plain + " /day?";
  const std::string& rest = number.value().rest;
  if (!count || !(rest.empty() || rest == "times" || rest == "x")) return wanted;
  return number.value().value / days;
}

}  // namespace voltwright::units
