// Groups of parallel batteries of every chemistry: what must hold whatever they are, however they are joined
// and whatever is drawn. Sources: conservation of energy and charge, Kirchhoff's laws, Ohm's law with
// positive resistance; alike batteries are one large one. Tolerance: the project's bar of 1e-9.
#include "engine/bank/group.h"

#include <cmath>
#include <numeric>

#include "engine/season/setup.h"
#include "tests/laws/chemistries/every_chemistry.h"

namespace voltwright::laws {
namespace {

class EveryGroup : public EveryChemistry {
 protected:
  bank::Member member() const {
    bank::Member m;
    m.battery = battery_;
    m.guard = season::make_system(battery_, chemistry_, tables_, {1, 1, 0.0}, season::Installation{}).guard;
    return m;
  }
  /// Two to five batteries of several sizes, ages and charges in a row with any take-off.
  bank::Group random_group(base::RandomStream& random, double step_s) const {
    bank::GroupSetup setup;
    const std::size_t count = 2 + static_cast<std::size_t>(4.0 * random.uniform());
    setup.step_s = step_s;
    setup.wiring = bank::same_end(count, 0.0);
    const auto any = [&] { return static_cast<std::size_t>(random.uniform() * static_cast<double>(count)); };
    setup.wiring.positive_at = any();
    setup.wiring.negative_at = any();
    for (double& ohm : setup.wiring.positive_link_ohm) ohm = 5e-4 * random.uniform();
    for (double& ohm : setup.wiring.negative_link_ohm) ohm = 5e-4 * random.uniform();
    for (double& ohm : setup.wiring.lead_ohm) ohm = 1e-3 * random.uniform();
    for (std::size_t k = 0; k < count; ++k) {
      bank::Member m = member();
      m.battery.capacity_Ah *= 0.5 + 1.5 * random.uniform();
      m.lost_capacity = 0.4 * random.uniform();
      m.resistance_factor = 1.0 + random.uniform();
      setup.members.push_back(m);
    }
    bank::Group group = bank::make_group(setup, chemistry_, tables_).value();
    for (bank::GroupBattery& b : group.batteries) b.state = random_state(random);
    return group;
  }
};

TEST_P(EveryGroup, EnergyAndChargeOfAStepClose) {
  base::RandomStream random(21);
  int carried = 0;
  int trips = 0;
  int circulating = 0;
  for (const double step_s : {1.0, 60.0}) {
    for (int trial = 0; trial < 400; ++trial) {
      bank::Group group = random_group(random, step_s);
      const double total_A = trial % 4 == 0 ? 0.0 : random_current_A(random);
      std::vector<double> before;
      for (const bank::GroupBattery& b : group.batteries) before.push_back(b.state.charge);
      const bank::GroupReport r = bank::step(group, total_A, 20.0);
      double inner_W = -r.link_loss_W;
      double scale_W = r.link_loss_W + std::fabs(r.bus_V * r.total_A);
      EXPECT_GE(r.link_loss_W, 0.0);
      for (std::size_t k = 0; k < group.batteries.size(); ++k) {
        const bank::GroupBattery& b = group.batteries[k];
        const bank::StepLosses<double>& w = r.losses[k];
        inner_W += w.stored_W - w.ohmic_W - w.cable_W - w.relaxing_W - w.side_W - w.self_discharge_W;
        scale_W += std::fabs(w.stored_W) + w.side_W;
        const double fallen_Ah = (before[k] - b.state.charge) * b.parameters.capacity_Ah;
        const double drawn_Ah = (r.current_A[k] + w.side_A + w.self_discharge_A) * step_s / 3600.0;
        EXPECT_NEAR(fallen_Ah, drawn_Ah, 1e-9 * (b.parameters.capacity_Ah + std::fabs(drawn_Ah)));
      }
      EXPECT_NEAR(r.bus_V * r.total_A, inner_W, 1e-9 * scale_W);
      EXPECT_NEAR(std::accumulate(r.current_A.begin(), r.current_A.end(), 0.0), r.total_A,
                  1e-9 * (1.0 + std::fabs(r.total_A)));
      EXPECT_EQ(r.total_A, r.carried ? total_A : 0.0);
      if (r.carried) ++carried;
      if (!r.trips.empty()) ++trips;
      if (total_A == 0.0 && std::fabs(r.current_A[0]) > 0.1) ++circulating;
    }
  }
  EXPECT_GT(carried, 200) << "the sample is meant to hold groups that carry their load";
  EXPECT_GT(trips, 50) << "and batteries that open";
  EXPECT_GT(circulating, 50) << "and batteries that charge each other";
}

// n batteries alike on bars without resistance are the bank of the same number in parallel.
TEST_P(EveryGroup, AlikeBatteriesAreTheUniformBank) {
  for (const int count : {1, 2, 5}) {
    bank::GroupSetup setup;
    setup.wiring = bank::bus_bars(std::vector<double>(static_cast<std::size_t>(count), 0.0));
    setup.members.assign(static_cast<std::size_t>(count), member());
    for (bank::Member& m : setup.members) {
      m.lost_capacity = 0.05;
      m.heat_loss_W_K = 1.5;
      m.charge = 0.8;
      m.guard = bank::Guard<double>{};
      m.guard.charge_limit_A = m.guard.charge_max_C = m.guard.discharge_max_C = 1e9;
      m.guard.charge_min_C = m.guard.discharge_min_C = -1e9;
      m.guard.floor_charge = -1e9;
    }
    bank::Group group = bank::make_group(setup, chemistry_, tables_).value();
    const auto p = bank::assemble(battery_, chemistry_, tables_, {1, count, 0.05}, 0.0, 1.5 * count, 60.0);
    bank::State<double> s;
    s.charge = 0.8;
    base::RandomStream random(22);
    for (int minute = 0; minute < 600; ++minute) {
      const double total_A = (2.0 * random.uniform() - 1.0) * 0.4 * count * battery_.capacity_Ah;
      const auto t = bank::terminal<double>(p, s);
      const bank::GroupTerminal of_group = bank::terminal(group, 10.0);
      EXPECT_NEAR(of_group.source_V, t.source_V, 1e-9);
      EXPECT_NEAR(of_group.discharge_ohm, t.discharge_ohm, 1e-9);
      EXPECT_NEAR(of_group.charge_ohm, t.charge_ohm, 1e-9);
      bank::advance<double>(p, t, s, total_A, 15.0, 0.0);
      const bank::GroupReport r = bank::step(group, total_A, 15.0);
      ASSERT_TRUE(r.carried);
      for (const bank::GroupBattery& b : group.batteries) {
        ASSERT_NEAR(b.state.charge, s.charge, 1e-9);
        ASSERT_NEAR(b.state.imbalance, s.imbalance, 1e-9);
        ASSERT_NEAR(b.state.temperature_C, s.temperature_C, 1e-9);
      }
      for (const double a : r.current_A) ASSERT_NEAR(a, total_A / count, 1e-9 * (1.0 + std::fabs(total_A)));
    }
  }
}

TEST_P(EveryGroup, MoreCurrentLessVoltage) {
  base::RandomStream random(23);
  for (int trial = 0; trial < 200; ++trial) {
    const bank::Group group = random_group(random, 60.0);
    std::vector<bank::Branch> branches;
    for (const bank::GroupBattery& b : group.batteries) {
      const auto t = bank::terminal<double>(b.parameters, b.state);
      branches.push_back({t.source_V, t.discharge_ohm, t.charge_ohm});
    }
    double last_V = 1e9;
    for (int i = -5; i <= 5; ++i) {
      const bank::Flow now = bank::flow(branches, group.wiring, 0.2 * i * battery_.capacity_Ah);
      EXPECT_LT(now.voltage_V, last_V);
      EXPECT_GT(now.slope_ohm, 0.0);
      last_V = now.voltage_V;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Catalogue, EveryGroup, ::testing::ValuesIn(simulated()), name_of);

}  // namespace
}  // namespace voltwright::laws
