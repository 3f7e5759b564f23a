#include "engine/advise/caution.h"

#include <algorithm>
#include <cmath>

#include "engine/advise/engine_caution.h"
#include "engine/advise/wording.h"
#include "engine/supply/dc_dc.h"
#include "engine/supply/engine_use.h"

namespace voltwright::advise {

namespace {

/// A charger below this share of the absorption voltage leaves the bank short of full; common practice, no
/// source.
constexpr double kEnough = 0.985;

std::string degrees(double temperature_C) { return figure(std::round(temperature_C), "°C"); }

bool is_lead_acid(const cell::Chemistry& chemistry) { return chemistry.family == cell::Family::kLeadAcid; }

double cells_of(const Trial& trial) {
  return static_cast<double>(trial.candidate.battery->cells_in_series) * trial.candidate.layout.in_series;
}

void add_cold(const Trial& trial, std::vector<Caution>& cautions) {
  const cell::Chemistry& chemistry = *trial.candidate.chemistry;
  if (trial.coldest_C >= std::max(0.0, chemistry.limits.charge_min_C)) return;
  if (!is_lead_acid(chemistry)) {
    cautions.push_back(
        {"Cold charging", "The bank gets down to " + degrees(trial.coldest_C) + ". At " +
                              degrees(chemistry.limits.charge_min_C) +
                              " and below it must not be charged; the block that prevents it, or a "
                              "heater, belongs to the bank."});
    return;
  }
  std::string text = "The bank gets down to " + degrees(trial.coldest_C) +
                     ". A discharged lead-acid battery freezes and bursts; keep it charged in the cold.";
  const double at_V = std::max(0.0, std::min(1.0, trial.deepest_charge));
  if (!chemistry.freezing_C.empty()) {
    text += " At its lowest charge here, " + percent(at_V) + ", it freezes near " +
            degrees(base::curve_at(chemistry.freezing_C, at_V, 0.0)) + ".";
  }
  if (trial.ledger.frozen_h > 0.0)
    text += " In these seasons it froze: it must not be charged then, nor used after.";
  cautions.push_back({"Frost", text});
}

bool any_wakes(const Plan& plan) {
  return (plan.mains && plan.mains->regulation.wakes) || (plan.engine && plan.engine->regulation.wakes) ||
         (!plan.arrays.empty() && plan.solar_charging.wakes);
}

void add_protection(const Plan& plan, const Trial& trial, std::vector<Caution>& cautions) {
  if (trial.ledger.load_dumps > 0.0) {
    cautions.push_back({"Load dump", "The bank's protection opened while the alternator gave up to " +
                                         figure(std::round(trial.highest_load_dump_A), "A") +
                                         " through the relay. An alternator that loses its battery under "
                                         "load drives its voltage to several "
                                         "times the rated one for some tenths of a second, which destroys "
                                         "its diodes and what hangs on it. Let "
                                         "the protection stop the charging before it opens, keep a lead-acid "
                                         "battery or a suppressor on the "
                                         "alternator, or charge through a DC-DC converter."});
  }
  if (trial.ledger.unwoken_h > 0.0) {
    cautions.push_back(
        {"Locked out",
         "Drawn to the end, the protection opened and the bank showed no voltage; sources were there for " +
             duration_text(trial.ledger.unwoken_h * 60.0) +
             " in these seasons and could not start. Switch the loads off before the protection does, and "
             "keep a "
             "charger that starts on a dead bank."});
  } else if (trial.candidate.battery->has_protection && trial.ledger.drawn_blocked_Wh > 0.0 &&
             !any_wakes(plan)) {
    cautions.push_back(
        {"Charging blocked, loads on",
         "While the bank might not be charged, loads drew " + figure(trial.ledger.drawn_blocked_Wh, "Wh") +
             " from it in these seasons. If that lasts until its protection opens, no charger of this plan "
             "is "
             "known to start on it again: keep one that does, or a switch that drops the loads in time."});
  }
  if (trial.ledger.over_current_h > 0.0) {
    cautions.push_back(
        {"Over-current",
         "The bank's protection opened on over-current in these seasons and left the loads without "
         "power until it closed again. Take a bank for more current, or limit the largest load."});
  }
}

void add_profile(const std::string& source, const supply::Regulation& regulation, const Trial& trial,
                 std::vector<Caution>& cautions) {
  if (!regulation.profile.has_value()) return;
  const supply::ChargeProfile& set = *regulation.profile;
  const cell::Chemistry& chemistry = *trial.candidate.chemistry;
  if (set.of == chemistry.id) return;
  const double own_V = chemistry.stages.absorption_V * cells_of(trial);
  const double set_V = units::as_volts(set.absorption);
  const double highest_V = chemistry.limits.max_V * cells_of(trial);
  const double float_V = units::as_volts(set.float_voltage);
  std::string text = "The charger of " + source + " holds " + figure(set_V, "V") +
                     (set.of.empty() ? std::string() : " as for " + set.of) + "; this bank asks for " +
                     figure(own_V, "V") + ". ";
  if (set_V > highest_V) {
    text += "That is above the " + figure(highest_V, "V") + " its cells bear: overcharge and heat. ";
  } else if (set_V < kEnough * own_V) {
    text += "It will not be charged full. ";
  } else if (set.absorption_at_most < units::hours(0.5 * chemistry.stages.absorption_max_h)) {
    text += "It holds that for " + duration_text(units::as_seconds(set.absorption_at_most) / 60.0) +
            " at most, this bank asks for up to " + duration_text(chemistry.stages.absorption_max_h * 60.0) +
            ": it will not be charged full. ";
  }
  if (set.compensation_V_per_K < 0.0 && chemistry.stages.compensation_V_per_K == 0.0) {
    text += "Compensation for temperature adds " + figure(-25.0 * set.compensation_V_per_K, "V") +
            " at 0 °C, which this chemistry does not want. ";
  }
  if (float_V > 0.0 && chemistry.stages.float_V <= 0.0) {
    text += "Floating at " + figure(float_V, "V") + " keeps the cells full, where they age fastest. ";
  }
  text += "In these seasons the bank rose to " + figure(trial.highest_V, "V") +
          " and was blocked for charge " + duration_text(trial.ledger.charge_blocked_h * 60.0) + ".";
  cautions.push_back({"Charger set for another battery", text});
}

void add_starved_converter(const Plan& plan, const Trial& trial, std::vector<Caution>& cautions) {
  if (!plan.engine || plan.engine->coupling != supply::EngineCoupling::kDcDc) return;
  const supply::EngineCharging& engine = *plan.engine;
  const double low_V = engine.low_share > 0.0 ? units::as_volts(engine.alternator_low_voltage)
                                              : units::as_volts(engine.alternator_voltage);
  const double output_W = units::as_amperes(engine.output_limit) *
                          trial.candidate.chemistry->stages.absorption_V * cells_of(trial);
  const supply::DcDcInput input =
      supply::dc_dc_input(low_V, supply::engine_loop_ohm(engine), output_W, engine.efficiency);
  if (input.possible && input.input_V >= units::as_volts(engine.input_lock_out)) return;
  cautions.push_back(
      {"DC-DC converter starved",
       input.possible
           ? "At full output the converter draws " + figure(input.current_A, "A") +
                 " through its cable and "
                 "is left with " +
                 figure(input.input_V, "V") + ", below the " +
                 figure(units::as_volts(engine.input_lock_out), "V") +
                 " at which it stops. Fuse the cable for that current, and take a thicker one or a "
                 "smaller converter."
           : "No current through its cable gives the converter its full output. Take a thicker cable or "
             "a smaller converter."});
}

}  // namespace

std::vector<Caution> usual_cautions(const Plan& plan) {
  std::vector<Caution> cautions = {
      {"Short circuit and fusing",
       "A bank drives many times its working current into a short circuit. Fit a fuse beside the positive "
       "pole that "
       "can break that current, fuse each conductor for its own cross-section, and cover bare terminals."}};
  if (plan.mains || plan.inverter) {
    cautions.push_back({"Mains voltage",
                        "Shore power, chargers and inverters carry voltages that kill. Their connection, "
                        "protective earth and "
                        "residual-current device are the work of a licensed person."});
  }
  for (Caution& c : engine_side_cautions(plan)) cautions.push_back(std::move(c));
  cautions.push_back({"Mixing chemistries",
                      "Do not join batteries of different chemistry, age or size in one bank. Chargers must "
                      "be set to the voltages "
                      "of the kind that is fitted."});
  return cautions;
}

std::vector<Caution> cautions_of(const Plan& plan, const Trial& trial) {
  std::vector<Caution> cautions = usual_cautions(plan);
  if (is_lead_acid(*trial.candidate.chemistry)) {
    cautions.push_back({"Hydrogen",
                        "Lead-acid batteries give off hydrogen while charging, sealed ones when overcharged. "
                        "Vent their space to "
                        "the outside and keep flames and switches that spark out of it."});
  }
  add_cold(trial, cautions);
  add_protection(plan, trial, cautions);
  if (!plan.arrays.empty()) add_profile("the solar array", plan.solar_charging, trial, cautions);
  if (plan.engine) add_profile("the engine", plan.engine->regulation, trial, cautions);
  if (plan.mains) add_profile("mains", plan.mains->regulation, trial, cautions);
  if (plan.wind) add_profile("the wind turbine", plan.wind->regulation, trial, cautions);
  if (plan.water) add_profile("the water generator", plan.water->regulation, trial, cautions);
  add_starved_converter(plan, trial, cautions);
  for (Caution& c : towing_plug_cautions(plan, trial)) cautions.push_back(std::move(c));
  return cautions;
}

}  // namespace voltwright::advise
