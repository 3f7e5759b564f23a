#include "app/battery_on_hand.h"

#include <algorithm>
#include <cmath>

#include "engine/advise/wording.h"
#include "engine/units/parse.h"
#include "files/suggest.h"

namespace voltwright::app {

namespace {

using advise::figure;

constexpr double kMost = 1e6;
constexpr double kLeast = 1e-3;
/// Worn-out by the rule of the catalogue: a fifth of the capacity gone.
constexpr double kWornBy = 0.2;
/// However old, this much is not taken for gone without a measurement.
constexpr double kMostLost = 0.6;

double fraction_of(units::Fraction f) { return units::as_fraction(f); }
double money_of(units::Money m) { return units::as_money(m); }
base::Result<units::Money> parse_dollars(std::string_view text) { return units::parse_money(text, "USD"); }

base::Problem unknown(const std::string& word, const files::Catalogue& catalogue) {
  std::vector<std::string> ids;
  for (const bank::Battery& b : catalogue.batteries) ids.push_back(b.id);
  for (const cell::Chemistry& c : catalogue.chemistries) ids.push_back(c.id);
  const std::string near = files::nearest_word(word, ids);
  base::Problem problem;
  problem.field = "battery";
  problem.what = "This is neither a battery nor a chemistry of the catalogue.";
  problem.given = word;
  problem.remedy = near.empty()
                       ? "See `voltwright catalogue batteries` and `voltwright catalogue chemistries`."
                       : "Did you mean \"" + near + "\"?";
  return problem;
}

/// The catalogue battery of a kind that is nearest in voltage and then in ampere-hours; null if there is
/// none.
/// @param voltage_V  nominal; 0 = not said, then one for a system of 12 V
const bank::Battery* nearest_of_kind(const files::Catalogue& catalogue, const std::string& kind,
                                     double voltage_V, double capacity_Ah) {
  constexpr double kUsual_V = 12.0;
  constexpr double kVoltageFirst = 10.0;  // another voltage class is another kind of battery
  const bank::Battery* best = nullptr;
  double least = 0.0;
  for (const bank::Battery& b : catalogue.batteries) {
    if (b.chemistry != kind) continue;
    const double of_voltage = voltage_V > 0.0 ? b.nominal_V / voltage_V : b.system_V / kUsual_V;
    const double off =
        kVoltageFirst * std::fabs(std::log(of_voltage)) + std::fabs(std::log(b.capacity_Ah / capacity_Ah));
    if (best == nullptr || off < least) {
      best = &b;
      least = off;
    }
  }
  return best;
}

units::Ranged times(const units::Ranged& range, double factor) {
  return {range.min * factor, range.typical * factor, range.max * factor};
}

/// The template with another number of cells and ampere-hours: mass, room and price by energy, currents by
/// ampere-hours.
bank::Battery scaled(const bank::Battery& from, double voltage_V, double capacity_Ah) {
  bank::Battery battery = from;
  const double cell_V = from.nominal_V / from.cells_in_series;
  // "12 V" is also said of four cells with 12.8 V, "48 V" of sixteen with 51.2 V.
  constexpr double kSameClass = 0.15;
  if (std::fabs(voltage_V / from.nominal_V - 1.0) > kSameClass) {
    battery.cells_in_series = std::max(1, static_cast<int>(std::lround(voltage_V / cell_V)));
  }
  const double cells = static_cast<double>(battery.cells_in_series) / from.cells_in_series;
  const double ampere_hours = capacity_Ah / from.capacity_Ah;
  battery.id.clear();
  battery.nominal_V = cell_V * battery.cells_in_series;
  battery.system_V = from.system_V * cells;
  battery.capacity_Ah = capacity_Ah;
  battery.mass_kg = times(from.mass_kg, cells * ampere_hours);
  battery.volume_L = times(from.volume_L, cells * ampere_hours);
  battery.price = times(from.price, cells * ampere_hours);
  battery.continuous_A *= ampere_hours;
  battery.peak_A *= ampere_hours;
  battery.charge_A *= ampere_hours;
  battery.extra_resistance_ohm *= cells / ampere_hours;
  battery.over_voltage_V *= cells;
  battery.under_voltage_V *= cells;
  battery.under_voltage_release_V *= cells;
  return battery;
}

void take_own(const std::string& text, double value, units::Ranged& range) {
  if (!text.empty()) range = {value, value, value};
}

/// Share of the capacity gone after some years: a fifth over the calendar life of its kind, on a straight
/// line.
double lost_by_age(const cell::Chemistry& chemistry, double years) {
  return std::min(kWornBy * years / chemistry.life.calendar_years.typical, kMostLost);
}

}  // namespace

double OptionReader::checked(double value, const std::string& text, const char* option, double otherwise,
                             double least, double most) {
  if (value >= least && value <= most) return value;
  base::Problem problem;
  problem.field = option;
  problem.what = "This value is out of range.";
  problem.given = text;
  problem.limit = figure(least) + " to " + figure(most);
  add(problem);
  return otherwise;
}

BatteryOnHand battery_on_hand(const BatteryRequest& request, const files::Catalogue& catalogue,
                              OptionReader& reader) {
  BatteryOnHand answer;
  const double capacity_Ah = reader.take(request.capacity, "--capacity", units::parse_charge,
                                         units::as_ampere_hours, 0.0, kLeast, kMost);
  const double voltage_V =
      reader.take(request.voltage, "--voltage", units::parse_voltage, units::as_volts, 0.0, 1.0, 100.0);
  const double mass_kg =
      reader.take(request.mass, "--mass", units::parse_mass, units::as_kilograms, 0.0, kLeast, kMost);
  const double volume_L =
      reader.take(request.volume, "--volume", units::parse_volume, units::as_litres, 0.0, kLeast, kMost);
  const double price = reader.take(request.price, "--price", parse_dollars, money_of, 0.0, kLeast, kMost);
  const double years =
      reader.take(request.age, "--age", units::parse_duration, units::as_years, 0.0, 0.0, 50.0);
  const double lost = reader.take(request.lost, "--lost", units::parse_fraction, fraction_of, 0.0, 0.0, 0.9);
  constexpr int kMostBatteries = 64;
  (void)reader.checked(request.in_series, std::to_string(request.in_series), "--series", 1.0, 1.0,
                       kMostBatteries);
  (void)reader.checked(request.in_parallel, std::to_string(request.in_parallel), "--parallel", 1.0, 1.0,
                       kMostBatteries);

  const bank::Battery* known = catalogue.battery(request.battery);
  const cell::Chemistry* chemistry =
      catalogue.chemistry(known != nullptr ? known->chemistry : request.battery);
  if (chemistry == nullptr) {
    reader.add(unknown(request.battery, catalogue));
    return answer;
  }
  if (!chemistry->simulated) {
    reader.add({chemistry->name + " is not simulated: " + chemistry->not_simulated_because,
                {},
                "battery",
                request.battery,
                {},
                {},
                base::Severity::kError});
    return answer;
  }
  bank::Battery battery;
  if (known != nullptr && request.capacity.empty() && request.voltage.empty()) {
    battery = *known;
  } else {
    if (known == nullptr && request.capacity.empty()) {
      reader.add({"A battery described by its kind needs its ampere-hours.",
                  {},
                  "--capacity",
                  {},
                  {},
                  "Add --capacity \"100 Ah\".",
                  base::Severity::kError});
      return answer;
    }
    const double wanted_Ah = capacity_Ah > 0.0 ? capacity_Ah : (known != nullptr ? known->capacity_Ah : 1.0);
    const bank::Battery* like =
        known != nullptr ? known : nearest_of_kind(catalogue, chemistry->id, voltage_V, wanted_Ah);
    if (like == nullptr) {
      reader.add(unknown(request.battery, catalogue));
      return answer;
    }
    battery = scaled(*like, voltage_V > 0.0 ? voltage_V : like->nominal_V, wanted_Ah);
    battery.name =
        chemistry->short_name + " " + figure(battery.nominal_V, "V") + " " + figure(wanted_Ah, "Ah");
    answer.assumed.push_back("What was not stated is scaled from " + like->name +
                             " of the catalogue: mass, room and price by energy, currents by ampere-hours.");
  }
  take_own(request.mass, mass_kg, battery.mass_kg);
  take_own(request.volume, volume_L, battery.volume_L);
  take_own(request.price, price, battery.price);

  bank::Layout layout;
  layout.in_series = request.in_series;
  layout.in_parallel = request.in_parallel;
  layout.lost_capacity = lost;
  if (request.lost.empty() && years > 0.0) {
    layout.lost_capacity = lost_by_age(*chemistry, years);
    answer.assumed.push_back(
        "By its age alone " + advise::percent(layout.lost_capacity) +
        " of the capacity is taken for gone: a fifth over the typical calendar life of " +
        figure(chemistry->life.calendar_years.typical, "years") +
        " at 25 °C. A capacity test says more (--lost).");
  }
  const int count = request.in_series * request.in_parallel;
  answer.name = (count > 1 ? std::to_string(count) + " × " : std::string()) + battery.name;
  answer.battery = std::make_shared<const bank::Battery>(std::move(battery));
  answer.bank = {answer.battery.get(), chemistry, layout};
  return answer;
}

}  // namespace voltwright::app
