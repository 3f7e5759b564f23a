// The engine's charging: alternator, relay or DC-DC converter, towing plug, fuel.
#include <string>

#include "engine/season/setup.h"
#include "engine/units/parse.h"
#include "files/plan_parts.h"

namespace voltwright::files {
namespace {

using namespace units;  // NOLINT(google-build-using-namespace): the file is full of quantities

constexpr double kTwentyFour_V = 20.0;  // above: a vehicle of 24 V

supply::AlternatorUse read_alternator(Section section, Voltage held) {
  supply::AlternatorUse use;
  supply::Alternator& machine = use.machine;
  Current rated;
  section.set_wanted<Current>("rated", parse_current,
                              {amperes(5), amperes(1000), "5 A to 1000 A", "\"120 A\""}, rated);
  machine.rated_A = as_amperes(rated);
  Current own = amperes(machine.vehicle_A);
  section.set<Current>("vehicle", parse_current, {amperes(0), amperes(500), "0 A to 500 A", "\"25 A\""}, own);
  machine.vehicle_A = as_amperes(own);
  if (const auto ratio = section.number("pulley_ratio", 0.5, 6.0)) machine.pulley_ratio = *ratio;
  Fraction efficiency = fraction(machine.efficiency);
  section.set<Fraction>("efficiency", parse_fraction,
                        {fraction(0.2), fraction(0.95), "20 % to 95 %", "\"67 %\""}, efficiency);
  machine.efficiency = as_fraction(efficiency);
  if (as_volts(held) > 0.0) machine.regulated_V = as_volts(held);
  if (machine.regulated_V > kTwentyFour_V) machine.regulated_V_per_K *= 2.0;
  if (const auto rpm = section.number("driving_rpm", 300.0, 8000.0)) use.driving_rpm = *rpm;
  if (const auto rpm = section.number("idle_rpm", 200.0, 3000.0)) use.idle_rpm = *rpm;
  if (const auto controlled = section.flag("controlled")) use.controlled = *controlled;
  use.idle_share = use.controlled ? use.duty.idle_share : use.idle_share;
  Fraction idle = fraction(use.idle_share);
  section.set<Fraction>("idle_share", parse_fraction,
                        {fraction(0.0), fraction(1.0), "0 % to 100 %", "\"10 %\""}, idle);
  use.idle_share = as_fraction(idle);
  TemperatureDifference rise = kelvins(use.air_rise_K);
  section.set<TemperatureDifference>("air_rise", parse_temperature_difference,
                                     {kelvins(0), kelvins(100), "0 to 100 K", "\"40 K\""}, rise);
  use.air_rise_K = as_kelvins(rise);
  section.finish();
  return use;
}

supply::Derating read_derating(Section section) {
  supply::Derating derating;
  if (const auto i = section.choice("place", {"cabin", "outside", "engine bay"})) {
    static constexpr supply::ConverterPlace kPlaces[] = {
        supply::ConverterPlace::kCabin, supply::ConverterPlace::kOutside, supply::ConverterPlace::kEngineBay};
    derating.place = kPlaces[*i];
  }
  Temperature from = celsius(derating.from_C);
  section.set<Temperature>("from", parse_temperature,
                           {celsius(0), celsius(90), "0 to 90 degC", "\"45 degC\""}, from);
  derating.from_C = from.as_celsius();
  double slope_per_K = -derating.per_K;
  section.set<double>("per_K", parse_per_kelvin, {-0.2, 0.0, "-20 to 0 %/K", "\"-3 %/K\""}, slope_per_K);
  derating.per_K = -slope_per_K;
  section.finish();
  return derating;
}

supply::TowingPlug read_plug(Section section) {
  supply::TowingPlug plug;
  if (auto cable = section.section("cable")) {
    const advise::Cable run = read_cable(std::move(*cable));
    plug.loop_ohm = season::loop_resistance_ohm(as_metres(run.one_way), as_square_millimetres(run.area));
  } else if (!section.has("cable")) {
    section.note_missing("cable", "{ one_way = \"7.5 m\", area = \"2.5 mm2\" }");
  }
  Resistance contacts;
  section.set<Resistance>("contacts", parse_resistance, {ohms(0), ohms(1), "0 to 1 ohm", "\"10 mohm\""},
                          contacts);
  plug.contacts_ohm = as_ohms(contacts);
  const Span<Current> rating = {amperes(1), amperes(500), "1 A to 500 A", "\"20 A\""};
  Current pin;
  section.set<Current>("pin", parse_current, rating, pin);
  plug.pin_A = as_amperes(pin);
  Current fuse;
  section.set<Current>("fuse", parse_current, rating, fuse);
  plug.fuse_A = as_amperes(fuse);
  section.finish();
  return plug;
}

/// Parts that only one of the two couplings has, and a voltage that is said twice.
void check_coupling(Section& section, const supply::EngineCharging& engine) {
  const bool relay = engine.coupling == supply::EngineCoupling::kRelay;
  if (relay && engine.derating) {
    section.note("derating", "A relay has no converter that warm air could hold back.").remedy =
        "Leave it out, or write coupling = \"dc-dc\".";
  }
  if (!relay && as_volts(engine.relay_closes) > 0.0) {
    section.note("relay_closes", "A DC-DC converter has no relay.").remedy =
        "Leave it out, or write coupling = \"relay\".";
  }
  if (relay && as_volts(engine.relay_closes) > 0.0 && !engine.alternator) {
    section.note("relay_closes", "Without [engine.alternator] the relay is always closed while driving.")
        .remedy = "Add [engine.alternator], or leave it out.";
  }
  if (engine.alternator && engine.low_share > 0.0) {
    section.note("low_share", "The voltage of the alternator is said twice.").remedy =
        "Leave out alternator_low_voltage and low_share, and write controlled = true in [engine.alternator].";
  }
}

}  // namespace

supply::EngineCharging read_engine(Section section) {
  supply::EngineCharging engine;
  if (const auto i = section.choice("coupling", {"dc-dc", "relay"})) {
    engine.coupling = *i == 0 ? supply::EngineCoupling::kDcDc : supply::EngineCoupling::kRelay;
  }
  section.set_wanted<Current>("output_limit", parse_current,
                              {amperes(0.1), amperes(1000), "0.1 A to 1000 A", "\"30 A\""},
                              engine.output_limit);
  if (const auto share = section.value<Fraction>(
          "efficiency", parse_fraction, {fraction(0.5), fraction(1.0), "50 % to 100 %", "\"96 %\""})) {
    engine.efficiency = as_fraction(*share);
  }
  const Span<Voltage> held = {volts(10), volts(60), "10 V to 60 V", "\"14.2 V\""};
  section.set<Voltage>("alternator_voltage", parse_voltage, held, engine.alternator_voltage);
  section.set<Resistance>("loop_resistance", parse_resistance,
                          {ohms(1e-4), ohms(1), "0.1 mohm to 1 ohm", "\"15 mohm\""}, engine.loop_resistance);
  section.set<Voltage>("input_lock_out", parse_voltage, {volts(8), volts(60), "8 V to 60 V", "\"11.5 V\""},
                       engine.input_lock_out);
  const bool saves = section.has("alternator_low_voltage") || section.has("low_share");
  if (saves) {
    section.set_wanted<Voltage>("alternator_low_voltage", parse_voltage,
                                {volts(10), volts(60), "10 V to 60 V", "\"12.7 V\""},
                                engine.alternator_low_voltage);
    Fraction share;
    section.set_wanted<Fraction>("low_share", parse_fraction,
                                 {fraction(0.0), fraction(1.0), "0 % to 100 %", "\"70 %\""}, share);
    engine.low_share = as_fraction(share);
  }
  section.set<Voltage>("relay_closes", parse_voltage, {volts(10), volts(60), "10 V to 60 V", "\"13.3 V\""},
                       engine.relay_closes);
  if (const auto i = section.choice("fuel", {"petrol", "turbo petrol", "diesel", "lpg"})) {
    static constexpr supply::Fuel kFuels[] = {supply::Fuel::kPetrol, supply::Fuel::kPetrolTurbo,
                                              supply::Fuel::kDiesel, supply::Fuel::kLpg};
    engine.fuel = kFuels[*i];
  }
  if (auto alternator = section.section("alternator")) {
    const Voltage stated = section.has("alternator_voltage") ? engine.alternator_voltage : Voltage();
    engine.alternator = read_alternator(std::move(*alternator), stated);
  }
  if (auto derating = section.section("derating")) engine.derating = read_derating(std::move(*derating));
  if (auto plug = section.section("towing_plug")) engine.plug = read_plug(std::move(*plug));
  check_coupling(section, engine);
  section.finish();
  return engine;
}

}  // namespace voltwright::files
