#include "engine/advise/engine_caution.h"

#include "engine/advise/wording.h"
#include "engine/supply/dc_dc.h"
#include "engine/supply/engine_use.h"

namespace voltwright::advise {

namespace {

/// A bank drawn down stands at this voltage for each 12 V (common practice, no source).
constexpr double kDrawnDownOver12V = 12.0 / 12.0;

/// Highest current that the charging lead is asked for [A].
double lead_A(const Plan& plan, const supply::EngineCharging& engine, const Trial& trial) {
  const double high_V = supply::highest_alternator_V(engine);
  const double loop_ohm = supply::engine_loop_ohm(engine);
  const double limit_A = units::as_amperes(engine.output_limit);
  if (engine.coupling == supply::EngineCoupling::kRelay) {
    const double rest_V = kDrawnDownOver12V * units::as_volts(plan.system_voltage);
    return supply::tow_direct({loop_ohm, 0.0, 0.0, 0.0}, high_V, limit_A, rest_V, 0.0).current_A;
  }
  const bank::Battery& battery = *trial.candidate.battery;
  const double cells = static_cast<double>(battery.cells_in_series) * trial.candidate.layout.in_series;
  const double output_W = limit_A * trial.candidate.chemistry->stages.absorption_V * cells;
  return supply::dc_dc_input(units::as_volts(engine.alternator_voltage), loop_ohm, output_W,
                             engine.efficiency)
      .current_A;
}

}  // namespace

std::vector<Caution> engine_side_cautions(const Plan& plan) {
  std::vector<Caution> cautions;
  const bool alternator = plan.engine && plan.engine->alternator;
  if (plan.generator || alternator || (plan.engine && plan.engine->fuel)) {
    cautions.push_back(
        {"Carbon monoxide",
         "Exhaust gas holds carbon monoxide, which has no smell and kills. Never run an engine or "
         "a generator set in, under or close beside a space where people stay, nor near its "
         "openings; fit an alarm for it. Local codes decide on distances and hours."});
  }
  if (alternator) {
    cautions.push_back(
        {"Hot alternator",
         "A bank that takes all that an alternator can give, above all at idle, heats it until "
         "its insulation or diodes fail and can set it on fire. Limit the current well below "
         "its rating, by a DC-DC converter or a regulator that feels its temperature."});
  }
  if (plan.generator) {
    cautions.push_back(
        {"Neutral and earth of the generator set",
         "A generator set and shore power must never feed the same circuit at once; a "
         "change-over switch that cannot join them belongs between. Neutral and protective earth "
         "are bonded at one place for each source, else a residual-current device does not "
         "trip. Local codes and a licensed person decide."});
  }
  if (plan.wind || plan.water) {
    cautions.push_back(
        {"Turbines without a load",
         "A wind or water turbine whose bank is full or cut off runs away and its voltage rises "
         "far beyond the system's. Its controller needs a dump load or a brake that works "
         "without the bank. Keep away from turning blades and lines."});
  }
  return cautions;
}

std::vector<Caution> towing_plug_cautions(const Plan& plan, const Trial& trial) {
  if (!plan.engine || !plan.engine->plug) return {};
  const supply::TowingPlug& plug = *plan.engine->plug;
  const double current_A = lead_A(plan, *plan.engine, trial);
  std::string text;
  const supply::FuseFate fate = supply::fuse_fate(plug.fuse_A, current_A);
  if (fate != supply::FuseFate::kHolds) {
    text = "The charging lead is asked for up to " + figure(current_A, "A") + "; its fuse of " +
           figure(plug.fuse_A, "A") +
           (fate == supply::FuseFate::kOpens ? " opens within minutes. " : " may open after hours. ");
    if (plan.engine->coupling == supply::EngineCoupling::kRelay)
      text += "These seasons count on it holding. ";
  }
  if (plug.pin_A > 0.0 && current_A > plug.pin_A) {
    text += "The contact is made for " + figure(plug.pin_A, "A") + " and would get " +
            figure(current_A, "A") + ": it can melt. ";
  }
  if (text.empty()) return {};
  text +=
      "Never fit a larger fuse than the wire and the contacts bear; take a smaller converter or a cable of "
      "its own.";
  return {{"Towing plug overloaded", text}};
}

}  // namespace voltwright::advise
