// A constant power until the loads are cut off, by voltage or because nothing more can be had: when, and what
// has been given by then. Expected values: the same equations integrated in continuous time, to 1e-9.
#include <algorithm>
#include <cmath>

#include "tests/oracle/every_oracle.h"
#include "tests/oracle/integrator.h"

namespace voltwright::oracle {
namespace {

/// The guard holds a bank empty this far above its floor (docs/method/protection.md).
constexpr double kEmptyAbove = 1e-3;

struct End {
  Course course;
  bool by_voltage = false;
};

/// Current of a constant power behind a step's resistance, the smaller of two [A].
double current_for_A(const bank::Terminal<double>& t, double power_W) {
  const double root_V = std::sqrt(std::max(0.0, t.source_V * t.source_V - 4.0 * t.discharge_ohm * power_W));
  return 2.0 * power_W / (t.source_V + root_V);
}

/// Whole steps up to the one in which the bank is cut off, which is gone through again in steps of a second.
/// The mean voltage of a minute hides a crossing in its second half: the voltage after it decides.
End stepped_until_empty(const bank::Parameters<double>& whole, const bank::Parameters<double>& refined,
                        bank::State<double> state, double power_W, double cut_off_V, double air_C) {
  End end;
  const bank::Parameters<double>* p = &whole;
  for (;;) {
    const double step_s = p->step_s;
    const bank::State<double> before = state;
    const auto t = bank::terminal<double>(*p, state);
    const double current_A = current_for_A(t, power_W);
    const double voltage_V = t.source_V - t.discharge_ohm * current_A;
    bank::advance<double>(*p, t, state, current_A, air_C, 0.0);
    const double level = state.charge - (1.0 - p->tank_share) * state.imbalance;
    const auto after = bank::terminal<double>(refined, state);
    const bool low = after.source_V - after.discharge_ohm * current_for_A(after, power_W) < cut_off_V;
    const bool empty = low || level <= t.usable_floor + kEmptyAbove;
    if (empty && p == &whole) {
      state = before;
      p = &refined;
      continue;
    }
    end.course.add(step_s, voltage_V, current_A);
    end.course.charge = state.charge;
    end.course.temperature_C = state.temperature_C;
    end.by_voltage = low;
    if (empty) return end;
  }
}

End integrated_until_empty(const Bank& bank, std::vector<double> start, double power_W, double cut_off_V,
                           double air_C) {
  Integrator integrator(
      std::move(start), tolerances(),
      [&](double, std::span<const double> y, std::span<double> dydt) {
        slope_of(bank, y, poles_of(bank, y).current_for_A(power_W), air_C, 0.0, dydt);
      },
      2,
      [&](double, std::span<const double> y, std::span<double> g) {
        const Poles poles = poles_of(bank, y);
        g[0] = poles.voltage_V(poles.current_for_A(power_W)) - cut_off_V;
        g[1] = poles.available - poles.floor - kEmptyAbove;
      });
  const Stop stop = integrator.run_to(1e6);
  EXPECT_FALSE(stop.crossed.empty()) << "never empty";
  return {course_of(stop.t_s, integrator.state()), stop.met(0)};
}

/// A power as a share of what would empty the bank in an hour, and how near the engine must come: charge and
/// energy as shares of the whole capacity. The last second of a crossing is half a second late on average;
/// the rest is that temperature stands still within a minute, which grows with the rate. At the
/// lowest rate ten seconds are 0.014 % of the capacity: what the grid of the curve leaves in lead-acid's
/// knee.
struct Case {
  double rate_per_h, time_s, share, temperature_K;
};
constexpr Case kCases[] = {{0.05, 15.0, 0.001, 0.01}, {0.2, 2.0, 0.001, 0.01}, {0.6, 5.0, 0.001, 0.05}};

TEST_P(Oracle, ConstantPowerToCutOff) {
  const auto whole = stepped(kWhole_s);
  const auto refined = stepped(kRefined_s);
  for (const double temperature_C : {25.0, 0.0}) {
    for (const Case& c : kCases) {
      const double bank_Wh = battery_.nominal_V * battery_.capacity_Ah;
      const double power_W = c.rate_per_h * bank_Wh;
      const bank::State<double> start = rested(0.98, temperature_C);
      const End engine =
          stepped_until_empty(whole, refined, start, power_W, battery_.under_voltage_V, temperature_C);
      const End oracle =
          integrated_until_empty(bank_, unknowns_of(start), power_W, battery_.under_voltage_V, temperature_C);
      const Course& e = engine.course;
      const Course& o = oracle.course;
      std::printf(
          "%-8s %4.0f degC %.2f per h: %9.2f s by %-7s engine %+7.2f s, %+.4f %% Ah, %+.4f %% Wh, %+.4f K\n",
          chemistry_.id.c_str(), temperature_C, c.rate_per_h, o.time_s,
          oracle.by_voltage ? "voltage" : "level", e.time_s - o.time_s,
          100.0 * apart(e.discharged_Ah, o.discharged_Ah), 100.0 * apart(e.discharged_Wh, o.discharged_Wh),
          e.temperature_C - o.temperature_C);
      EXPECT_EQ(engine.by_voltage, oracle.by_voltage);
      EXPECT_NEAR(e.time_s, o.time_s, c.time_s);
      EXPECT_NEAR(e.discharged_Ah, o.discharged_Ah, c.share * battery_.capacity_Ah);
      EXPECT_NEAR(e.discharged_Wh, o.discharged_Wh, c.share * bank_Wh);
      EXPECT_NEAR(e.charge, o.charge, c.share);
      EXPECT_NEAR(e.temperature_C, o.temperature_C, c.temperature_K);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Catalogue, Oracle, ::testing::ValuesIn(laws::simulated()), laws::name_of);

}  // namespace
}  // namespace voltwright::oracle
