#include "app/runtime.h"

#include "engine/advise/wording.h"
#include "engine/units/parse.h"

namespace voltwright::app {

namespace {

constexpr double kLeastLoad = 1e-3;
constexpr double kMostLoad_W = 1e6;
constexpr double kMostLoad_A = 1e5;
constexpr double kMost_V = 100.0;
constexpr double kColdest_C = -40.0;
constexpr double kHottest_C = 80.0;
constexpr double kLeastShare = 0.01;

double celsius_of(units::Temperature t) { return t.as_celsius(); }
double fraction_of(units::Fraction f) { return units::as_fraction(f); }

std::vector<std::string> cautions_of(const RuntimeResponse& r) {
  std::vector<std::string> cautions;
  if (r.answer.run.mean_A > r.figures.continuous_A) {
    cautions.push_back("The load takes " + advise::figure(r.answer.run.mean_A, "A") +
                       " and the bank carries " + advise::figure(r.figures.continuous_A, "A") +
                       " for long: it is too small for this load.");
  }
  if (r.chemistry.family == cell::Family::kLeadAcid && r.conditions.depth > r.chemistry.usable_depth) {
    cautions.push_back("Lead-acid that is drawn below " + advise::percent(1.0 - r.chemistry.usable_depth) +
                       " of its charge wears much faster, and left empty it sulphates.");
  }
  cautions.push_back(
      "A planning aid for one steady load on a fully charged, healthy bank. Local codes, the makers' "
      "instructions and a licensed person decide.");
  return cautions;
}

}  // namespace

advise::SteadyLoad steady_load(const LoadRequest& request, OptionReader& reader) {
  advise::SteadyLoad load;
  const auto current = units::parse_current(request.load);
  if (current) {
    load.current_A = reader.checked(units::as_amperes(current.value()), request.load, "load", 1.0, kLeastLoad,
                                    kMostLoad_A);
    if (!request.efficiency.empty() || !request.idle.empty()) {
      reader.add({"A load in amperes is taken at the bank: an inverter has no part in it.",
                  {},
                  "load",
                  request.load,
                  {},
                  "Give its power in watts.",
                  base::Severity::kError});
    }
    return load;
  }
  load.power_W =
      reader.take(request.load, "load", units::parse_power, units::as_watts, 1.0, kLeastLoad, kMostLoad_W);
  if (request.load.empty()) {
    reader.add(
        {"A load is needed.", {}, "load", {}, {}, "Give \"60 W\" or \"5 A\".", base::Severity::kError});
  }
  load.efficiency = reader.take(request.efficiency, "--efficiency", units::parse_fraction, fraction_of, 1.0,
                                kLeastShare, 1.0);
  load.idle_W =
      reader.take(request.idle, "--idle", units::parse_power, units::as_watts, 0.0, 0.0, kMostLoad_W);
  return load;
}

double depth_of(const std::string& text, const char* option, double otherwise, OptionReader& reader) {
  if (text == "protection") return 1.0;
  return reader.take(text, option, units::parse_fraction, fraction_of, otherwise, kLeastShare, 1.0);
}

advise::RuntimeConditions conditions_of(const LoadRequest& request, OptionReader& reader) {
  advise::RuntimeConditions conditions;
  conditions.temperature_C = reader.take(request.temperature, "--temperature", units::parse_temperature,
                                         celsius_of, conditions.temperature_C, kColdest_C, kHottest_C);
  conditions.cut_off_V =
      reader.take(request.cut_off, "--cut-off", units::parse_voltage, units::as_volts, 0.0, 0.0, kMost_V);
  return conditions;
}

base::Result<RuntimeResponse> runtime(const RuntimeRequest& request) {
  auto read = files::read_catalogue();
  if (!read) return read.problems();
  const files::Catalogue& catalogue = read.value();
  OptionReader reader;
  RuntimeResponse r;
  r.catalogue_mark = catalogue.mark;
  r.load = steady_load(request.load, reader);
  r.conditions = conditions_of(request.load, reader);
  r.conditions.start_charge = reader.take(request.start_charge, "--charge", units::parse_fraction,
                                          fraction_of, 1.0, kLeastShare, 1.0);
  r.on_hand = battery_on_hand(request.battery, catalogue, reader);
  const double practice = r.on_hand.bank.chemistry != nullptr ? r.on_hand.bank.chemistry->usable_depth : 1.0;
  r.conditions.depth = depth_of(request.load.depth, "--depth", practice, reader);
  if (!reader.problems().empty()) return reader.problems();
  r.chemistry = *r.on_hand.bank.chemistry;
  r.figures = bank::bank_figures(*r.on_hand.battery, r.on_hand.bank.layout);
  r.answer = advise::how_long(r.on_hand.bank, r.load, r.conditions);
  r.on_hand.bank.chemistry = nullptr;  // the catalogue ends here; the copy stays
  r.cautions = cautions_of(r);
  return r;
}

}  // namespace voltwright::app
