// What must hold for a step of any bank of any chemistry, from any state, at any current. The source of every
// statement is conservation of energy and charge, Ohm's law with positive resistance, or the exactness of the
// exponential solution; tolerances are those of binary arithmetic unless a case says more.
#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/season/bus.h"
#include "tests/laws/chemistries/every_chemistry.h"

namespace voltwright::laws {
namespace {

constexpr int kTrials = 2000;

double mean_V(const bank::Terminal<double>& t, double current_A) {
  return t.source_V - (current_A < 0.0 ? t.charge_ohm : t.discharge_ohm) * current_A;
}

TEST_P(EveryChemistry, EnergyAndChargeOfAStepClose) {
  base::RandomStream random(1);
  for (const double step_s : {1.0, 30.0, 60.0, 600.0}) {
    const auto p = parameters(step_s);
    for (int i = 0; i < kTrials; ++i) {
      bank::State<double> s = random_state(random);
      const double before = s.charge;
      const double current_A = random_current_A(random);
      const auto t = bank::terminal<double>(p, s);
      const auto w = bank::advance<double>(p, t, s, current_A, 20.0, 0.0);
      const double given_W = mean_V(t, current_A) * current_A;
      const double balance_W =
          w.stored_W - w.ohmic_W - w.cable_W - w.relaxing_W - w.side_W - w.self_discharge_W;
      EXPECT_NEAR(given_W, balance_W, 1e-9 * (std::fabs(w.stored_W) + std::fabs(given_W) + w.side_W));
      const double fallen_Ah = (before - s.charge) * p.capacity_Ah;
      const double drawn_Ah = (current_A + w.side_A + w.self_discharge_A) * step_s / 3600.0;
      EXPECT_NEAR(fallen_Ah, drawn_Ah, 1e-9 * (p.capacity_Ah + std::fabs(drawn_Ah)));
    }
  }
}

TEST_P(EveryChemistry, LossesAreNotNegative) {
  base::RandomStream random(2);
  const auto p = parameters(60.0);
  for (int i = 0; i < kTrials; ++i) {
    bank::State<double> s = random_state(random);
    const auto t = bank::terminal<double>(p, s);
    EXPECT_GT(t.ohmic_ohm, 0.0);
    EXPECT_GE(t.fast_ohm, 0.0);
    EXPECT_GE(t.slow_ohm, 0.0);
    EXPECT_GE(t.charge_extra_ohm, 0.0);
    EXPECT_GE(t.ocv_fall_ohm, 0.0);
    EXPECT_GT(t.discharge_ohm, 0.0);
    EXPECT_GE(t.charge_ohm, t.discharge_ohm);
    const auto w = bank::advance<double>(p, t, s, random_current_A(random), 20.0, 0.0);
    EXPECT_GE(w.ohmic_W, 0.0);
    EXPECT_GE(w.cable_W, 0.0);
    EXPECT_GE(w.side_W, 0.0);
    EXPECT_GE(w.self_discharge_W, 0.0);
    EXPECT_LE(s.charge, cell::most_charge(chemistry_));
    EXPECT_TRUE(std::isfinite(s.temperature_C));
  }
}

TEST_P(EveryChemistry, MoreCurrentLessVoltage) {
  base::RandomStream random(3);
  const auto p = parameters(60.0);
  for (int i = 0; i < kTrials; ++i) {
    const auto t = bank::terminal<double>(p, random_state(random));
    double a = random_current_A(random);
    double b = random_current_A(random);
    if (a > b) std::swap(a, b);
    if (b - a < 1e-6) continue;
    EXPECT_GT(mean_V(t, a), mean_V(t, b));
  }
}

// Without side reaction and self-discharge a bank at rest comes back to the open-circuit voltage of its
// charge, rising all the way after a discharge and falling all the way after a charge. It is held at 20 degC:
// the mixing of the tanks warms it a little, and the voltage follows the temperature.
TEST_P(EveryChemistry, RestLeadsToOpenCircuit) {
  base::RandomStream random(4);
  auto p = parameters(60.0);
  p.side_A = 0.0;
  p.self_discharge_A = 0.0;
  for (int i = 0; i < 20; ++i) {
    bank::State<double> s = random_state(random);
    const double sign = i % 2 == 0 ? 1.0 : -1.0;
    s.fast_V = sign * std::fabs(s.fast_V);
    s.slow_V = sign * std::fabs(s.slow_V);
    s.imbalance = sign * std::fabs(s.imbalance);
    s.side = sign;
    s.temperature_C = s.enclosure_C = 20.0;
    const double charge = s.charge;
    double last_V = bank::terminal<double>(p, s).source_V;
    for (int minute = 0; minute < 3 * 1440; ++minute) {
      const auto t = bank::terminal<double>(p, s);
      EXPECT_GE(sign * (t.source_V - last_V), -1e-9);
      last_V = t.source_V;
      bank::advance<double>(p, t, s, 0.0, 20.0, 0.0);
      s.temperature_C = s.enclosure_C = 20.0;
    }
    EXPECT_EQ(s.charge, charge);
    // Between the points of the 512-step grid the curve is a straight line. What the hysteresis holds back
    // stays.
    const double spread_V = cell::open_circuit_V(chemistry_, std::min(1.0, charge + 1.0 / 512.0), 20.0) -
                            cell::open_circuit_V(chemistry_, charge - 1.0 / 512.0, 20.0);
    const double half_gap_V = bank::terminal<double>(p, s).half_gap_V / p.cells;
    const double lost = bank::terminal<double>(p, s).usable_floor - p.empty_level;
    if (charge < p.empty_level + bank::kFallingOff + lost) {
      // Near the end the temperature lets the voltage fall off earlier.
      EXPECT_LE(last_V / p.cells,
                cell::open_circuit_V(chemistry_, charge, 20.0) - sign * half_gap_V + spread_V + 1e-6);
      continue;
    }
    EXPECT_NEAR(last_V / p.cells, cell::open_circuit_V(chemistry_, charge, 20.0) - sign * half_gap_V,
                spread_V + 1e-6);
  }
}

// The exponential update is exact where the constants do not change on the way: one step of 60 s and two of
// 30 s at a constant current end alike, charge to 1e-9 and voltages to 1e-6 V.
TEST_P(EveryChemistry, TwoHalfStepsMakeOne) {
  chemistry_.resistance.ohmic_by_soc.clear();
  chemistry_.resistance.relaxing_by_soc.clear();
  chemistry_.resistance.slow_by_soc.clear();
  chemistry_.resistance.activation_kJ_mol = 0.0;
  chemistry_.side_reaction.current_A_per_Ah = 0.0;
  chemistry_.self_discharge_per_month = 0.0;
  tables_ = cell::make_tables(chemistry_);
  const auto whole = parameters(60.0);
  const auto half = parameters(30.0);
  base::RandomStream random(5);
  for (int i = 0; i < kTrials; ++i) {
    bank::State<double> one = random_state(random);
    one.charge = 0.02 + 0.95 * random.uniform();
    bank::State<double> two = one;
    const double current_A = random_current_A(random);
    bank::advance<double>(whole, bank::terminal<double>(whole, one), one, current_A, 20.0, 0.0);
    for (int k = 0; k < 2; ++k) {
      bank::advance<double>(half, bank::terminal<double>(half, two), two, current_A, 20.0, 0.0);
    }
    EXPECT_NEAR(one.charge, two.charge, 1e-9);
    EXPECT_NEAR(one.fast_V, two.fast_V, 1e-6);
    EXPECT_NEAR(one.slow_V, two.slow_V, 1e-6);
    EXPECT_NEAR(one.imbalance, two.imbalance, 1e-9);
  }
}

/// The state after a minute at a constant current, taken in pieces.
bank::State<double> after_pieces(const bank::Parameters<double>& p, bank::State<double> s, double current_A,
                                 const std::vector<double>& pieces_s) {
  for (const double piece_s : pieces_s) {
    const auto short_step = bank::with_step(p, piece_s);
    bank::advance<double>(short_step, bank::terminal<double>(short_step, s), s, current_A, 20.0, 0.0);
  }
  return s;
}

// The same minute as 10 and 50 s, 50 and 10 s, or three parts: charge agrees to 1e-6 with everything that
// depends on charge, temperature and voltage left in, side reaction and coulombic loss included, within the
// range the model of charging is valid in: up to half the capacity per hour, and no charge beyond the
// absorption voltage, where gassing grows e-fold each 90 mV.
TEST_P(EveryChemistry, OrderOfSplittingAStepDoesNotMatterToTheCharge) {
  const auto p = parameters(60.0);
  base::RandomStream random(8);
  int taken = 0;
  for (int i = 0; i < kTrials; ++i) {
    bank::State<double> start = random_state(random);
    start.charge = 0.02 + 0.95 * random.uniform();
    const double any_A = random_current_A(random);
    const double current_A = any_A < 0.0 ? 0.5 * any_A : any_A;
    start.last_A = current_A;  // resistances look ahead by the current that flowed before
    const auto t = bank::terminal<double>(p, start);
    if (current_A < 0.0 && mean_V(t, current_A) > chemistry_.stages.absorption_V * p.cells) continue;
    ++taken;
    const auto one = after_pieces(p, start, current_A, {10.0, 50.0});
    for (const auto& pieces : {std::vector{50.0, 10.0}, std::vector{20.0, 10.0, 30.0}}) {
      const auto other = after_pieces(p, start, current_A, pieces);
      EXPECT_NEAR(one.charge, other.charge, 1e-6);
      // Of what the imbalance settles to at 1C.
      EXPECT_NEAR(one.imbalance, other.imbalance, 1e-6 / (p.tank_share * p.tank_rate_per_h));
      EXPECT_NEAR(one.side, other.side, 1e-6);
    }
  }
  EXPECT_GT(taken, kTrials / 3);
}

// And where the constants do not change on the way, voltages of the pairs agree as well.
TEST_P(EveryChemistry, OrderOfSplittingAStepDoesNotMatterAtConstantResistance) {
  chemistry_.resistance.ohmic_by_soc.clear();
  chemistry_.resistance.relaxing_by_soc.clear();
  chemistry_.resistance.slow_by_soc.clear();
  chemistry_.resistance.activation_kJ_mol = 0.0;
  tables_ = cell::make_tables(chemistry_);
  const auto p = parameters(60.0);
  base::RandomStream random(9);
  for (int i = 0; i < kTrials; ++i) {
    bank::State<double> start = random_state(random);
    start.charge = 0.02 + 0.95 * random.uniform();
    const double current_A = random_current_A(random);
    const auto one = after_pieces(p, start, current_A, {10.0, 50.0});
    const auto other = after_pieces(p, start, current_A, {50.0, 10.0});
    EXPECT_NEAR(one.fast_V, other.fast_V, 1e-6);
    EXPECT_NEAR(one.slow_V, other.slow_V, 1e-6);
  }
}

TEST_P(EveryChemistry, OpenCircuitCurveRises) {
  double last_V = cell::open_circuit_V(chemistry_, 0.0);
  for (int i = 1; i <= 1000; ++i) {
    const double now_V = cell::open_circuit_V(chemistry_, i / 1000.0);
    EXPECT_GE(now_V, last_V);
    last_V = now_V;
  }
  EXPECT_GT(last_V, cell::open_circuit_V(chemistry_, 0.0));
}

// No load and no source: no current, whatever the bank has been through. And a set-point at the bank's own
// voltage asks for none either, as current is voltage difference over resistance.
TEST_P(EveryChemistry, NoCurrentWithoutCause) {
  base::RandomStream random(6);
  season::System<double> system;
  system.bank = parameters(60.0);
  for (int i = 0; i < kTrials; ++i) {
    const auto t = bank::terminal<double>(system.bank, random_state(random));
    const double start_V = t.source_V * (0.7 + 0.6 * random.uniform());
    const season::Minute minute;
    const auto bus = season::solve_bus<double>(season::BusCase<double>{system, minute}, t, start_V);
    EXPECT_NEAR(bus.bank_A, 0.0, 1e-9);
    EXPECT_NEAR(bus.bus_V, t.source_V, 1e-9);
    EXPECT_FALSE(bus.collapsed);
  }
}

// Kirchhoff's first law at the solution: what the bank gives is what the loads take less what the sources
// give.
TEST_P(EveryChemistry, CurrentsOfTheBusBalance) {
  base::RandomStream random(7);
  season::System<double> system;
  system.bank = parameters(60.0);
  system.inverter_cable_ohm = 0.0005;
  system.engine_limit_A = 30.0;
  system.mains_limit_A = 20.0;
  for (int i = 0; i < kTrials; ++i) {
    const auto t = bank::terminal<double>(system.bank, random_state(random));
    season::Minute minute;
    minute.solar_W = 300.0 * random.uniform();
    minute.engine = random.uniform() < 0.3;
    minute.mains = random.uniform() < 0.3;
    const double load_W = 200.0 * random.uniform();
    const double inverter_W = 300.0 * random.uniform();
    season::BusCase<double> around{system, minute};
    around.running.fill(1.0);
    // Now and then the three chargers hold voltages of their own, close to the bank's.
    for (double& set_V : around.set_V) set_V = t.source_V * (0.99 + 0.1 * random.uniform());
    around.direct_W = load_W;
    around.inverter_W = inverter_W;
    const auto bus = season::solve_bus<double>(around, t, t.source_V);
    if (bus.collapsed) continue;
    double sources_A = 0.0;
    for (std::size_t kind = 0; kind < season::kSourceKinds; ++kind) {
      if (around.has(kind)) sources_A += season::output<double>(around, kind, bus.bus_V).current_A;
    }
    const double input_A =
        season::cable_draw<double>(bus.bus_V, inverter_W, system.inverter_cable_ohm).current_A;
    const double through_A = sources_A + load_W / bus.bus_V + input_A + std::fabs(bus.bank_A);
    EXPECT_NEAR(bus.bank_A + sources_A, load_W / bus.bus_V + input_A, 1e-9 * through_A);
  }
}

INSTANTIATE_TEST_SUITE_P(Catalogue, EveryChemistry, ::testing::ValuesIn(simulated()), name_of);

}  // namespace
}  // namespace voltwright::laws
