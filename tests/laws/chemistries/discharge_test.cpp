// While a bank is discharged at a steady current or a steady power its voltage only falls. The source is that
// the open-circuit voltage falls with the charge and that no loss of these models shrinks on the way to
// empty. What may raise the voltage of a real bank is its own warmth, as resistance falls with temperature:
// here it is held at one temperature by a great heat loss. The dip and recovery of lead-acid in the first
// minutes of a discharge is not modelled.
#include <cmath>
#include <limits>
#include <vector>

#include "engine/bank/laboratory.h"
#include "tests/laws/chemistries/every_chemistry.h"

namespace voltwright::laws {
namespace {

constexpr double kRise = 1e-9;       // of the voltage
constexpr double kHeldBy_W_K = 1e9;  // a heat loss that leaves the bank no warmth of its own
constexpr double kStep_s = 60.0;
constexpr double kLongest_s = 60.0 * 3600.0;

/// The current that the bank is to give, from its behaviour over the coming step.
using Drawn = double (*)(const bank::Terminal<double>&, double asked);

double as_current(const bank::Terminal<double>&, double current_A) { return current_A; }

double as_power(const bank::Terminal<double>& t, double power_W) {
  const double under_root = t.source_V * t.source_V - 4.0 * t.discharge_ohm * power_W;
  return 2.0 * power_W / (t.source_V + std::sqrt(under_root));  // not a number where none gives it
}

class DischargeOfEveryChemistry : public EveryChemistry {
 protected:
  /// Multiples of the rating, up to what the battery bears and at most 2.
  std::vector<double> rates_per_h() const {
    std::vector<double> rates;
    for (const double rate : {0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 1.0, 1.5, 2.0}) {
      if (rate * battery_.capacity_Ah <= battery_.continuous_A) rates.push_back(rate);
    }
    return rates;
  }

  /// Discharges from full and rested to the cut-off voltage or until nothing is available. Looks at the
  /// voltage of the instant in which each step begins: the mean over a step takes the slope of the
  /// open-circuit voltage from its start and misses where the curve bends within it.
  int steps_that_only_fall(Drawn drawn, double asked, double temperature_C) const {
    const auto p = bank::assemble(battery_, chemistry_, tables_, {}, 0.0007, kHeldBy_W_K, kStep_s);
    const double cut_off_V = chemistry_.limits.min_V * p.cells;
    double last_V = std::numeric_limits<double>::infinity();
    int steps = 0;
    bool ended = false;
    const bank::LabCurrent watched = [&](const bank::Terminal<double>& t, double time_s) {
      const double current_A = drawn(t, asked);
      const double bank_V = t.instant_V - t.instant_ohm * current_A;
      // The step is tried again and again, each time shorter, once the run is to end.
      ended = ended || !(bank_V > cut_off_V) || t.available <= t.usable_floor;
      if (ended) return std::numeric_limits<double>::quiet_NaN();
      // Before the first step no current is foretold.
      if (++steps > 2) {
        EXPECT_LE(bank_V, last_V * (1.0 + kRise)) << asked << " asked for, " << temperature_C << " degC, "
                                                  << time_s / 3600.0 << " h, available " << t.available;
      }
      last_V = bank_V;
      return current_A;
    };
    bank::State<double> full;
    full.side = -1.0;  // as after a charge
    full.temperature_C = full.enclosure_C = temperature_C;
    bank::run_current(p, full, watched, 0.0, std::numeric_limits<double>::infinity(), temperature_C,
                      kLongest_s);
    return steps;
  }

  void expect_only_falling(Drawn drawn, double asked_at_1_per_h) const {
    int steps = 0;
    for (const double temperature_C : {-10.0, 0.0, 10.0, 25.0, 35.0, 45.0}) {
      for (const double rate_per_h : rates_per_h()) {
        steps += steps_that_only_fall(drawn, rate_per_h * asked_at_1_per_h, temperature_C);
      }
    }
    EXPECT_GT(steps, 1000);
  }
};

TEST_P(DischargeOfEveryChemistry, VoltageOnlyFallsAtConstantCurrent) {
  expect_only_falling(as_current, battery_.capacity_Ah);
}

TEST_P(DischargeOfEveryChemistry, VoltageOnlyFallsAtConstantPower) {
  expect_only_falling(as_power, battery_.capacity_Ah * chemistry_.nominal_V * battery_.cells_in_series);
}

INSTANTIATE_TEST_SUITE_P(Catalogue, DischargeOfEveryChemistry, ::testing::ValuesIn(simulated()), name_of);

}  // namespace
}  // namespace voltwright::laws
