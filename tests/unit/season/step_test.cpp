// The system step: energy and charge close, lanes agree with the plain run, limits are respected.
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "engine/base/random.h"
#include "engine/season/ledger.h"
#include "engine/season/refined_step.h"
#include "engine/season/run.h"
#include "tests/unit/season/sample_system.h"

namespace voltwright::season {
namespace {

std::vector<Minute> random_minutes(std::uint64_t seed, std::size_t count) {
  base::RandomStream random(seed);
  std::vector<Minute> minutes(count);
  for (std::size_t i = 0; i < count; ++i) {
    Minute& m = minutes[i];
    const double hour = static_cast<double>(i % 1440) / 60.0;
    m.direct_W = 20.0 + 60.0 * random.uniform();
    m.inverter_W = random.uniform() < 0.03 ? 1500.0 * random.uniform() : 12.0;
    m.essential_direct_W = 0.5 * m.direct_W;
    m.surge_inverter_W = random.uniform() < 0.002 ? 1200.0 : 0.0;
    m.solar_W =
        hour > 6.0 && hour < 18.0 ? 400.0 * std::sin((hour - 6.0) / 12.0 * 3.14159) * random.uniform() : 0.0;
    m.solar_A = m.solar_W > 0.0 ? 3.0 : 0.0;
    m.engine = hour > 9.0 && hour < 10.0;
    m.mains = i / 1440 % 5 == 4 && hour > 20.0;
    m.surroundings_C = 10.0 + 15.0 * std::sin(static_cast<double>(i) / 5000.0);
  }
  return minutes;
}

using Wide = base::simd::native_simd<double>;

/// The systems side by side, one a lane.
System<Wide> packed(const std::vector<System<double>>& plain) {
  using L = base::Lanes<Wide>;
  System<Wide> wide;
  const auto pick = [&](auto get) { return L::generate([&](std::size_t i) { return get(plain[i]); }); };
#define VW_PICK(member) wide.member = pick([](const System<double>& s) { return s.member; })
#define VW_PICK_BANK(bank)                                                                                  \
  for (std::size_t i = 0; i < L::kCount; ++i) wide.bank.tables[i] = plain[i].bank.tables;                   \
  VW_PICK(bank.cells), VW_PICK(bank.capacity_Ah), VW_PICK(bank.ohmic_ohm), VW_PICK(bank.fast_ohm);          \
  VW_PICK(bank.slow_ohm), VW_PICK(bank.charge_rho_ohm), VW_PICK(bank.charge_m), VW_PICK(bank.charge_c);     \
  VW_PICK(bank.fixed_ohm), VW_PICK(bank.cable_ohm), VW_PICK(bank.fast_keep), VW_PICK(bank.fast_mean);       \
  VW_PICK(bank.slow_keep), VW_PICK(bank.slow_mean), VW_PICK(bank.slow_curving_per_V2),                      \
      VW_PICK(bank.settling_Ah), VW_PICK(bank.tank_share);                                                  \
  VW_PICK(bank.tank_rate_per_h), VW_PICK(bank.tank_keep), VW_PICK(bank.tank_mean),                          \
      VW_PICK(bank.empty_level);                                                                            \
  VW_PICK(bank.most_charge), VW_PICK(bank.coulombic), VW_PICK(bank.side_A), VW_PICK(bank.side_reference_V), \
      VW_PICK(bank.side_per_V);                                                                             \
  VW_PICK(bank.side_per_K), VW_PICK(bank.side_reference_C), VW_PICK(bank.self_discharge_A);                 \
  VW_PICK(bank.heat_capacity_J_K), VW_PICK(bank.heat_loss_W_K), VW_PICK(bank.enclosure_K_W);                \
  VW_PICK(bank.bank_keep), VW_PICK(bank.bank_by_enclosure), VW_PICK(bank.enclosure_by_bank);                \
  VW_PICK(bank.enclosure_keep), VW_PICK(bank.balance_V), VW_PICK(bank.bleed_A), VW_PICK(bank.step_s)
  VW_PICK_BANK(bank);
  VW_PICK_BANK(finer[0]);
  VW_PICK_BANK(finer[1]);
  wide.finer_count = plain[0].finer_count;
  VW_PICK(guard.charge_min_C);
  VW_PICK(guard.charge_max_C);
  VW_PICK(guard.discharge_min_C);
  VW_PICK(guard.discharge_max_C);
  VW_PICK(guard.hysteresis_K);
  VW_PICK(guard.charge_limit_A);
  VW_PICK(guard.reduced_below_C);
  VW_PICK(guard.reduced_A);
  VW_PICK(guard.over_voltage_V);
  VW_PICK(guard.under_voltage_V);
  VW_PICK(guard.under_voltage_release_V);
  VW_PICK(guard.floor_charge);
  VW_PICK(guard.floor_release);
  VW_PICK(guard.continuous_A);
  VW_PICK(guard.peak_A);
  VW_PICK(guard.peak_s);
  VW_PICK(guard.electronic);
  for (std::size_t k = 0; k < kSourceKinds; ++k) {
    const auto stage = [&](auto member) {
      return L::generate([&](std::size_t i) { return plain[i].chargers[k].stages.*member; });
    };
    using S = supply::StageSettings<double>;
    auto& to = wide.chargers[k].stages;
    to.absorption_V = stage(&S::absorption_V);
    to.float_V = stage(&S::float_V);
    to.rebulk_V = stage(&S::rebulk_V);
    to.tail_A = stage(&S::tail_A);
    to.absorption_max_s = stage(&S::absorption_max_s);
    to.compensation_V_per_K = stage(&S::compensation_V_per_K);
    to.highest_V = stage(&S::highest_V);
    to.full_charge = stage(&S::full_charge);
    wide.chargers[k].lead_ohm = plain[0].chargers[k].lead_ohm;
    wide.chargers[k].wakes = plain[0].chargers[k].wakes;
  }
  VW_PICK(peak_A);
  VW_PICK(start_charge);
#undef VW_PICK_BANK
#undef VW_PICK
  wide.inverter_cable_ohm = plain[0].inverter_cable_ohm;
  wide.inverter_cut_off_V = plain[0].inverter_cut_off_V;
  wide.inverter_restart_V = plain[0].inverter_restart_V;
  wide.engine_limit_A = wide.engine_low_limit_A = plain[0].engine_limit_A;
  wide.mains_limit_A = plain[0].mains_limit_A;
  return wide;
}

class Step : public ::testing::TestWithParam<int> {
 protected:
  Step() {
    chemistry_ = GetParam() == 0 ? flat_chemistry() : two_tank_chemistry();
    tables_ = cell::make_tables(chemistry_);
    inverter_.rated = units::watts(2000.0);
    inverter_.idle = units::watts(12.0);
    inverter_.cut_off = units::volts(10.5);
    inverter_.restart = units::volts(12.0);
    engine_.output_limit = units::amperes(30.0);
    mains_.output_limit = units::amperes(40.0);
    installation_.inverter = &inverter_;
    installation_.engine = &engine_;
    installation_.mains = &mains_;
    installation_.main_cable_ohm = 0.001;
    installation_.inverter_cable_ohm = 0.002;
    installation_.usable_depth = chemistry_.usable_depth;
  }
  double cells_in_series() const { return GetParam() == 0 ? 4.0 : 6.0; }
  System<double> system_of(double capacity_Ah) {
    return make_system(battery_of(chemistry_, capacity_Ah), chemistry_, tables_, {1, 1, 0.0}, installation_);
  }

  cell::Chemistry chemistry_;
  cell::Tables tables_;
  demand::Inverter inverter_;
  supply::EngineCharging engine_;
  supply::MainsCharger mains_;
  Installation installation_;
};

// Energy conservation; the tolerance is the project's own bar.
TEST_P(Step, EnergyAndChargeClose) {
  for (const bool relay : {false, true}) {
    engine_.coupling = relay ? supply::EngineCoupling::kRelay : supply::EngineCoupling::kDcDc;
    const System<double> system = system_of(150.0);
    SystemState<double> state = full_and_rested(system, 15.0);
    Ledger<double> ledger;
    const auto minutes = random_minutes(7, 40 * 1440);
    run_minutes<double>(system, minutes, state, ledger, [](auto...) {});
    const double through_Wh = ledger.charged_Wh + ledger.discharged_Wh;
    EXPECT_GT(through_Wh, 1000.0);
    EXPECT_NEAR(ledger.in_Wh(), ledger.out_Wh(), 1e-9 * through_Wh);
    EXPECT_LT(ledger.residual_Wh, 1e-9 * through_Wh);
    // Ampere-hours: what went in and neither out nor astray is in the bank.
    const double gained_Ah =
        ledger.charged_Ah - ledger.discharged_Ah - ledger.side_Ah - ledger.self_discharge_Ah;
    EXPECT_NEAR(gained_Ah, (state.bank.charge - system.start_charge) * 150.0, 1e-9 * ledger.charged_Ah);
  }
}

// The stored energy of the ledger is the area under the open-circuit curve, up to what the two tanks lose by
// mixing.
TEST_P(Step, StoredEnergyFollowsTheOpenCircuitCurve) {
  const System<double> system = system_of(150.0);
  SystemState<double> state = full_and_rested(system, 15.0);
  Ledger<double> ledger;
  run_minutes<double>(system, random_minutes(11, 20 * 1440), state, ledger, [](auto...) {});
  const double full = system.start_charge;
  double area_V = 0.0;
  constexpr int kSlices = 20000;
  for (int i = 0; i < kSlices; ++i) {
    const double z = state.bank.charge + (full - state.bank.charge) * (i + 0.5) / kSlices;
    area_V += cell::open_circuit_V(chemistry_, z) * (full - state.bank.charge) / kSlices;
  }
  const double area_Wh = cells_in_series() * 150.0 * area_V;
  EXPECT_NEAR(ledger.drawn_from_store_Wh, area_Wh, 0.002 * ledger.discharged_Wh);
}

TEST_P(Step, StateStaysInBounds) {
  const System<double> system = system_of(60.0);
  SystemState<double> state = full_and_rested(system, 15.0);
  Ledger<double> ledger;
  run_minutes<double>(system, random_minutes(3, 30 * 1440), state, ledger,
                      [&](std::size_t, const SystemState<double>& s, const StepReport<double>& r) {
                        EXPECT_LE(s.bank.charge, 1.0);
                        // The largest minute of the sample, 1.6 kW, is about 4 % of this bank.
                        EXPECT_GE(s.bank.charge, 1.0 - chemistry_.usable_depth - 0.06);
                        EXPECT_GE(r.solar_W, 0.0);
                        EXPECT_GE(r.engine_W, 0.0);
                        EXPECT_GE(r.bank.ohmic_W, 0.0);
                        EXPECT_GE(-r.bank_A, -1e3);
                        EXPECT_GE(r.bank_A, -r.charge_limit_A - 1e-9);
                        EXPECT_TRUE(std::isfinite(r.bus_V));
                      });
  EXPECT_GT(ledger.unmet_essential_Wh, 0.0) << "the sample is meant to run a small bank short";
}

TEST_P(Step, LanesAgreeWithThePlainRun) {
  using L = base::Lanes<Wide>;
  const auto minutes = random_minutes(5, 10 * 1440);
  std::vector<System<double>> plain;
  for (std::size_t i = 0; i < L::kCount; ++i)
    plain.push_back(system_of(60.0 + 40.0 * static_cast<double>(i)));
  const System<Wide> wide = packed(plain);

  SystemState<Wide> state;
  state.bank.charge = wide.start_charge;
  state.bank.side = Wide(-1.0);
  state.bank.enclosure_C = Wide(15.0);
  state.bank.temperature_C = Wide(15.0);
  state.bus_V = bank::terminal<Wide>(wide.bank, state.bank).source_V;
  Ledger<Wide> ledger;
  run_minutes<Wide>(wide, minutes, state, ledger, [](auto...) {});
  for (std::size_t i = 0; i < L::kCount; ++i) {
    SystemState<double> alone = full_and_rested(plain[i], 15.0);
    Ledger<double> books;
    run_minutes<double>(plain[i], minutes, alone, books, [](auto...) {});
    EXPECT_NEAR(state.bank.charge[i], alone.bank.charge, 1e-9);
    EXPECT_NEAR(ledger.discharged_Wh[i], books.discharged_Wh, 1e-9 * books.discharged_Wh);
    EXPECT_NEAR(ledger.unmet_Wh[i], books.unmet_Wh, 1e-9 * books.discharged_Wh);
  }
}

INSTANTIATE_TEST_SUITE_P(Chemistries, Step, ::testing::Values(0, 1),
                         [](const auto& chosen) { return chosen.param == 0 ? "flat" : "two_tank"; });

}  // namespace
}  // namespace voltwright::season
