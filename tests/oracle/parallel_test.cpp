// Three batteries side by side that differ in size, age and charge, on links and leads: discharged together,
// left to settle among themselves, charged together. Expected values: the same equations integrated in
// continuous time, to 1e-9, the currents by Kirchhoff's laws at every instant.
#include "tests/oracle/parallel.h"

#include <array>
#include <cmath>

#include "engine/bank/group.h"
#include "tests/oracle/every_oracle.h"
#include "tests/oracle/integrator.h"

namespace voltwright::oracle {
namespace {

constexpr std::size_t kCount = 3;
constexpr double kLink_ohm = 0.0002;  // of one chain
constexpr double kAir_C = 15.0;
constexpr double kStep_s = 60.0;

/// A stretch of one total current, as a share of the rated capacity of all three in an hour.
struct Stretch {
  double rate_per_h = 0.0;
  double hours = 0.0;
};
constexpr std::array<Stretch, 4> kStretches{{{0.15, 2.0}, {0.0, 1.0}, {-0.1, 2.0}, {0.0, 1.0}}};

bank::GroupSetup three_of(const bank::Battery& battery, double loss_W_K) {
  static constexpr std::array kSize{1.0, 0.7, 0.5};
  static constexpr std::array kLost{0.0, 0.2, 0.1};
  static constexpr std::array kOhm{1.0, 1.6, 1.2};
  static constexpr std::array kCharge{0.8, 0.75, 0.82};
  bank::GroupSetup setup;
  for (std::size_t k = 0; k < kCount; ++k) {
    bank::Member member;
    member.battery = battery;
    member.battery.capacity_Ah *= kSize[k];
    member.battery.extra_resistance_ohm /= kSize[k];
    member.battery.mass_kg.typical *= kSize[k];
    member.lost_capacity = kLost[k];
    member.resistance_factor = kOhm[k];
    member.charge = kCharge[k];
    member.temperature_C = kAir_C;
    member.heat_loss_W_K = loss_W_K * std::pow(kSize[k], 2.0 / 3.0);
    member.guard.charge_limit_A = 1e6;  // nothing trips here
    setup.members.push_back(member);
  }
  setup.wiring = bank::same_end(kCount, kLink_ohm);
  setup.step_s = kStep_s;
  return setup;
}

Row row_of(const bank::GroupSetup& setup, const cell::Chemistry& chemistry) {
  Row row;
  for (const bank::Member& m : setup.members) {
    bank::Layout layout;
    layout.lost_capacity = m.lost_capacity;
    layout.resistance_factor = m.resistance_factor;
    row.batteries.push_back(make_bank(m.battery, chemistry, layout, 0.0, m.heat_loss_W_K));
  }
  for (std::size_t k = 0; k + 1 < setup.members.size(); ++k) {
    row.link_ohm.push_back(setup.wiring.positive_link_ohm[k] + setup.wiring.negative_link_ohm[k]);
  }
  row.lead_ohm = setup.wiring.lead_ohm;
  return row;
}

std::span<const double> part(std::span<const double> y, std::size_t k) {
  return y.subspan(k * kUnknowns, kUnknowns);
}

std::vector<double> currents_at(const Row& row, std::span<const double> y, double total_A) {
  std::vector<Poles> poles;
  for (std::size_t k = 0; k < row.batteries.size(); ++k) {
    poles.push_back(poles_of(row.batteries[k], part(y, k)));
  }
  return currents_of(row, poles, total_A);
}

TEST_P(Oracle, ThreeInParallelThatDiffer) {
  const bank::GroupSetup setup = three_of(battery_, loss_W_K_);
  bank::Group group = bank::make_group(setup, chemistry_, tables_).value();
  const Row row = row_of(setup, chemistry_);
  std::vector<double> start;
  std::vector<double> absolute;
  double rated_Ah = 0.0;
  for (std::size_t k = 0; k < kCount; ++k) {
    const std::vector<double> own = unknowns_of(group.batteries[k].state);
    start.insert(start.end(), own.begin(), own.end());
    const std::vector<double> tolerance = tolerances();
    absolute.insert(absolute.end(), tolerance.begin(), tolerance.end());
    rated_Ah += setup.members[k].battery.capacity_Ah;
  }
  double total_A = 0.0;
  Integrator integrator(start, absolute, [&](double, std::span<const double> y, std::span<double> dydt) {
    const std::vector<double> current_A = currents_at(row, y, total_A);
    for (std::size_t k = 0; k < kCount; ++k) {
      slope_of(row.batteries[k], part(y, k), current_A[k], kAir_C, 0.0,
               dydt.subspan(k * kUnknowns, kUnknowns));
    }
  });
  double farthest_A = 0.0;
  double farthest_charge = 0.0;
  double before_s = 0.0;
  for (const Stretch& stretch : kStretches) {
    total_A = stretch.rate_per_h * rated_Ah;
    integrator.restart();
    for (int minute = 1; minute <= static_cast<int>(stretch.hours * 60.0); ++minute) {
      const bank::GroupReport report = bank::step(group, total_A, kAir_C);
      ASSERT_TRUE(report.trips.empty());
      // The mean current of the minute is that of its middle, but for its curvature.
      integrator.run_to(before_s + 60.0 * (minute - 0.5));
      const std::vector<double> middle_A = currents_at(row, integrator.state(), total_A);
      integrator.run_to(before_s + 60.0 * minute);
      for (std::size_t k = 0; k < kCount; ++k) {
        // The jump of the total is answered within seconds; from the second minute on the middle counts.
        if (minute > 2) farthest_A = std::max(farthest_A, std::fabs(report.current_A[k] - middle_A[k]));
        farthest_charge = std::max(farthest_charge, std::fabs(group.batteries[k].state.charge -
                                                              part(integrator.state(), k)[kCharge]));
      }
    }
    before_s += stretch.hours * 3600.0;
  }
  std::printf(
      "%-8s currents at most %.4f A (%.4f %% of the capacity in an hour), charge at most %.5f %% apart; ends",
      chemistry_.id.c_str(), farthest_A, 100.0 * farthest_A / rated_Ah, 100.0 * farthest_charge);
  for (std::size_t k = 0; k < kCount; ++k) std::printf(" %.4f", part(integrator.state(), k)[kCharge]);
  std::printf("\n");
  EXPECT_LT(farthest_charge, 0.001);
  EXPECT_LT(farthest_A, 0.001 * rated_Ah);
  for (std::size_t k = 0; k < kCount; ++k) {
    EXPECT_NEAR(group.batteries[k].state.temperature_C, part(integrator.state(), k)[kTemperature_C], 0.05);
  }
}

}  // namespace
}  // namespace voltwright::oracle
