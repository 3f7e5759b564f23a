#pragma once
// Where the energy and the ampere-hours of a season went.
#include "engine/season/system.h"

namespace voltwright::season {

/// Sums over a season [Wh], [Ah], [h].
template <class R>
struct Ledger {
  R solar_Wh{0.0}, engine_Wh{0.0}, mains_Wh{0.0};
  R wind_Wh{0.0}, water_Wh{0.0}, generator_Wh{0.0};
  R generator_h{0.0};  // run
  R direct_Wh{0.0}, inverter_Wh{0.0}, inverter_cable_Wh{0.0}, far_cable_Wh{0.0}, heater_Wh{0.0};
  R main_cable_Wh{0.0}, resistance_Wh{0.0}, relaxing_Wh{0.0}, side_Wh{0.0}, self_discharge_Wh{0.0};
  R drawn_from_store_Wh{0.0};  // fall of stored energy; negative if the bank ends fuller
  R charged_Ah{0.0}, discharged_Ah{0.0}, side_Ah{0.0}, self_discharge_Ah{0.0};
  R charged_Wh{0.0}, discharged_Wh{0.0};  // at the bus
  R solar_left_Wh{0.0};                   // could have been had
  R solar_clipped_Wh{0.0};                // held back by the output limits of controllers
  R solar_untracked_Wh{0.0};              // what peak tracking would find beyond directly coupled arrays
  R unmet_Wh{0.0}, unmet_essential_Wh{0.0}, short_h{0.0};
  R charge_blocked_h{0.0}, loads_off_h{0.0}, inverter_off_h{0.0};
  R drawn_blocked_Wh{0.0};  // from the bank while it may not be charged
  R far_off_h{0.0}, over_current_h{0.0}, frozen_h{0.0}, unwoken_h{0.0};
  R failed_starts{0.0}, collapses{0.0}, load_dumps{0.0};
  R residual_Wh{0.0};  // sum of |unbalanced power| of the bus solution

  void add(const StepReport<R>& r, const SystemState<R>& s, const R& step_h);

  R in_Wh() const {
    return solar_Wh + wind_Wh + water_Wh + engine_Wh + mains_Wh + generator_Wh + drawn_from_store_Wh;
  }
  R out_Wh() const {
    return direct_Wh + inverter_Wh + inverter_cable_Wh + far_cable_Wh + heater_Wh + main_cable_Wh +
           resistance_Wh + relaxing_Wh + side_Wh + self_discharge_Wh;
  }
};

template <class R>
void Ledger<R>::add(const StepReport<R>& r, const SystemState<R>& s, const R& step_h) {
  using L = base::Lanes<R>;
  const R zero(0.0);
  const auto charging = r.bank_A < zero;
  solar_Wh += r.solar_W * step_h;
  engine_Wh += r.engine_W * step_h;
  mains_Wh += r.mains_W * step_h;
  wind_Wh += r.wind_W * step_h;
  water_Wh += r.water_W * step_h;
  generator_Wh += r.generator_W * step_h;
  generator_h += r.generator_on * step_h;
  direct_Wh += r.direct_W * step_h;
  inverter_Wh += r.inverter_W * step_h;
  inverter_cable_Wh += r.inverter_cable_W * step_h;
  far_cable_Wh += r.far_cable_W * step_h;
  heater_Wh += r.heater_W * step_h;
  main_cable_Wh += r.bank.cable_W * step_h;
  resistance_Wh += r.bank.ohmic_W * step_h;
  relaxing_Wh += r.bank.relaxing_W * step_h;
  side_Wh += r.bank.side_W * step_h;
  self_discharge_Wh += r.bank.self_discharge_W * step_h;
  drawn_from_store_Wh += r.bank.stored_W * step_h;
  const R bank_Wh = r.bus_V * r.bank_A * step_h;
  charged_Ah += L::select(charging, zero - r.bank_A, zero) * step_h;
  discharged_Ah += L::select(charging, zero, r.bank_A) * step_h;
  charged_Wh += L::select(charging, zero - bank_Wh, zero);
  discharged_Wh += L::select(charging, zero, bank_Wh);
  side_Ah += r.bank.side_A * step_h;
  self_discharge_Ah += r.bank.self_discharge_A * step_h;
  solar_left_Wh += r.solar_left_W * step_h;
  solar_clipped_Wh += r.solar_clipped_W * step_h;
  solar_untracked_Wh += r.solar_untracked_W * step_h;
  unmet_Wh += r.unmet_W * step_h;
  unmet_essential_Wh += r.unmet_essential_W * step_h;
  short_h += L::select(r.unmet_essential_W > zero, step_h, zero);
  charge_blocked_h += r.charge_blocked * step_h;
  loads_off_h += r.loads_off * step_h;
  inverter_off_h += s.inverter_off * step_h;
  drawn_blocked_Wh += r.charge_blocked * L::select(charging, zero, bank_Wh);
  far_off_h += r.far_off * step_h;
  over_current_h += r.over_current * step_h;
  frozen_h += r.frozen * step_h;
  unwoken_h += r.unwoken * step_h;
  load_dumps += L::select(r.load_dump_A > zero, R(1.0), zero);
  failed_starts += r.failed_start;
  collapses += r.collapsed;
  residual_Wh += L::select(r.residual_W < zero, zero - r.residual_W, r.residual_W) * step_h;
}

}  // namespace voltwright::season
