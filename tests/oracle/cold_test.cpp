// A week outside in the cold: charging is blocked and released, discharge as well. When, against the same
// system in continuous time. Expected values: the integration, to 1e-9; thresholds:
// docs/method/protection.md.
#include <cmath>
#include <numbers>

#include "engine/season/setup.h"
#include "tests/oracle/every_oracle.h"
#include "tests/oracle/stepped_season.h"

namespace voltwright::oracle {
namespace {

constexpr double kDay_s = 86400.0;
constexpr double kHour_s = 3600.0;
constexpr int kDays = 7;
constexpr double kMean_C = -3.0;
constexpr double kSwing_K = 12.0;  // down to -15 degC

/// Sun from nine to fifteen, a small load all day and a larger one in the evening.
Outside cold_week(double bank_Wh) {
  Outside outside;
  for (int day = 0; day < kDays; ++day) {
    const double start_s = day * kDay_s;
    outside.pieces.push_back({start_s, 0.002 * bank_Wh, false, false});
    outside.pieces.push_back({start_s + 9.0 * kHour_s, 0.002 * bank_Wh, true, false});
    outside.pieces.push_back({start_s + 15.0 * kHour_s, 0.002 * bank_Wh, false, false});
    outside.pieces.push_back({start_s + 18.0 * kHour_s, 0.008 * bank_Wh, false, false});
    outside.pieces.push_back({start_s + 22.0 * kHour_s, 0.002 * bank_Wh, false, false});
  }
  outside.solar_W = [bank_Wh](double t_s) {
    const double share = (std::fmod(t_s, kDay_s) - 9.0 * kHour_s) / (6.0 * kHour_s);
    return 0.06 * bank_Wh * std::max(0.0, std::sin(share * std::numbers::pi));
  };
  outside.air_C = [](double t_s) {
    return kMean_C + kSwing_K * std::sin((t_s / kDay_s - 0.375) * 2.0 * std::numbers::pi);
  };
  return outside;
}

// A block is met to the second. Where the sun only just brings the voltage to its set-point, a stage is worth
// more.
constexpr double kBlock_s = 2.0;
constexpr double kStage_s = 60.0;
constexpr double kShare = 0.001;
constexpr double kEnergy = 0.001;

TEST_P(Oracle, ColdWeekBlocksAndReleases) {
  const double bank_Wh = battery_.nominal_V * battery_.capacity_Ah;
  season::Installation installation;
  installation.main_cable_ohm = kCable_ohm;
  installation.system_V = battery_.system_V;
  auto system = season::make_system(battery_, chemistry_, tables_, {1, 1, 0.0}, installation);
  // Thresholds of this case, so that every chemistry meets them; the coldest night goes below both.
  system.guard.charge_min_C = 0.0;
  system.guard.discharge_min_C = -8.0;
  const Outside outside = cold_week(bank_Wh);
  season::SystemState<double> start = season::full_and_rested(system, outside.air_C(0.0));
  start.bank.charge = 0.85;
  const SteppedCourse engine = step_through(system, minutes_of(outside, kDays * kDay_s), start);
  ContinuousSeason oracle(bank_, system, outside, unknowns_of(start.bank));
  oracle.run_to(kDays * kDay_s);

  EXPECT_EQ(kinds_of(engine.changes), kinds_of(oracle.changes()));
  for (const std::string& what : kinds_of(oracle.changes())) {
    const std::vector<double> found = times_of(engine.changes, what);
    const std::vector<double> expected = times_of(oracle.changes(), what);
    ASSERT_EQ(found.size(), expected.size()) << what;
    const bool is_block = what.find("cold") != std::string::npos;
    double farthest_s = 0.0;
    for (std::size_t i = 0; i < found.size(); ++i) {
      EXPECT_NEAR(found[i], expected[i], is_block ? kBlock_s : kStage_s) << what;
      farthest_s = std::max(farthest_s, std::fabs(found[i] - expected[i]));
    }
    std::printf("%-8s %-18s %2zu times, at most %6.2f s apart\n", chemistry_.id.c_str(), what.c_str(),
                found.size(), farthest_s);
  }
  EXPECT_GE(times_of(oracle.changes(), "charge cold on").size(), 5u);
  EXPECT_GE(times_of(oracle.changes(), "charge cold off").size(), 5u);
  EXPECT_GE(times_of(oracle.changes(), "discharge cold on").size(), 5u);
  EXPECT_GE(times_of(oracle.changes(), "discharge cold off").size(), 5u);
  const std::span<const double> y = oracle.state();
  const season::Ledger<double>& e = engine.ledger;
  std::printf("%-8s charge %+.5f %%, energy out %+.5f %%, in %+.5f %%, %+.4f K\n", chemistry_.id.c_str(),
              100.0 * (engine.charge.back() - y[kCharge]), 100.0 * apart(e.discharged_Wh, y[kDischarged_Wh]),
              100.0 * apart(e.charged_Wh, y[kCharged_Wh]), engine.temperature_C.back() - y[kTemperature_C]);
  EXPECT_NEAR(engine.charge.back(), y[kCharge], kShare);
  EXPECT_NEAR(e.discharged_Wh, y[kDischarged_Wh], kEnergy * y[kDischarged_Wh]);
  EXPECT_NEAR(e.charged_Wh, y[kCharged_Wh], kEnergy * y[kCharged_Wh]);
}

}  // namespace
}  // namespace voltwright::oracle
