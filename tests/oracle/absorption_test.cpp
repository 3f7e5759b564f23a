// A lead-acid bank charged from half: full current to the absorption voltage, held until the current has
// tapered or the time is up, then float. When the stages change, and the charge and energy by then. Expected
// values: the same equations integrated in continuous time, to 1e-9; the stages as in
// docs/method/charging.md.
#include <algorithm>
#include <array>
#include <cmath>

#include "engine/season/setup.h"
#include "tests/oracle/bus.h"
#include "tests/oracle/every_oracle.h"
#include "tests/oracle/integrator.h"

namespace voltwright::oracle {
namespace {

constexpr double kFloat_s = 7200.0;
constexpr double kLimit_per_h = 0.2;  // what the charger gives, of the rated capacity
/// The charge resistance grows about twenty-fold in absorption; a step takes it as foreseen for its middle.
constexpr double kTime_s = 15.0;
constexpr double kBulk_s = 2.0;

/// A charger of one current that holds the voltage of its stage.
struct Charger {
  supply::StageSettings<double> stages;
  double limit_A = 0.0;

  double set_V(double stage, double temperature_C) const { return held_V(stages, stage, temperature_C); }
};

/// Ends of bulk and absorption, and of the hours of float behind them.
using Milestones = std::array<Course, 3>;

/// The engine's bank under that charger. A minute in which a stage ends is gone through again by the second.
class Stepped {
 public:
  Stepped(const Charger& charger, bank::Parameters<double> whole, bank::Parameters<double> refined,
          bank::State<double> state, double air_C)
      : charger_(&charger), whole_(whole), refined_(refined), state_(state), air_C_(air_C) {}

  Milestones run() {
    Milestones milestones;
    for (std::size_t i = 0; i < 2; ++i) {
      const auto stage = static_cast<double>(i);
      stage_s_ = 0.0;
      for (bool over = false; !over;) {
        const Stepped before = *this;
        if (!step(whole_, stage)) continue;
        *this = before;
        while (!over) over = step(refined_, stage);
      }
      milestones[i] = here();
    }
    for (double left_s = kFloat_s; left_s > 0.0; left_s -= kWhole_s) step(whole_, 2.0);
    milestones[2] = here();
    return milestones;
  }

 private:
  /// Whether the stage is over after the step.
  bool step(const bank::Parameters<double>& p, double stage) {
    const auto t = bank::terminal<double>(p, state_);
    const double current_A = current_of(t, charger_->set_V(stage, state_.temperature_C));
    bank::advance<double>(p, t, state_, current_A, air_C_, 0.0);
    course_.add(p.step_s, t.source_V - t.charge_ohm * current_A, current_A);
    stage_s_ += p.step_s;
    const auto after = bank::terminal<double>(refined_, state_);
    const double next_A = current_of(after, charger_->set_V(stage, state_.temperature_C));
    if (stage < 0.5) return next_A > -charger_->limit_A;
    return -next_A < charger_->stages.tail_A || stage_s_ >= charger_->stages.absorption_max_s;
  }
  double current_of(const bank::Terminal<double>& t, double set_V) const {
    const double ohm = set_V > t.source_V ? t.charge_ohm : t.discharge_ohm;
    return std::max((t.source_V - set_V) / ohm, -charger_->limit_A);
  }
  Course here() const {
    Course c = course_;
    c.charge = state_.charge;
    c.temperature_C = state_.temperature_C;
    return c;
  }

  const Charger* charger_;
  bank::Parameters<double> whole_, refined_;
  bank::State<double> state_;
  double air_C_;
  double stage_s_ = 0.0;
  Course course_;
};

Milestones integrated(const Charger& charger, const Bank& bank, std::vector<double> start, double air_C) {
  double stage = 0.0;
  const auto current_of = [&](std::span<const double> y, const Poles& poles) {
    return std::max(poles.current_at_A(charger.set_V(stage, y[kTemperature_C])), -charger.limit_A);
  };
  Integrator integrator(
      std::move(start), tolerances(),
      [&](double, std::span<const double> y, std::span<double> dydt) {
        slope_of(bank, y, current_of(y, poles_of(bank, y)), air_C, 0.0, dydt);
      },
      1,
      [&](double, std::span<const double> y, std::span<double> g) {
        const Poles poles = poles_of(bank, y);
        const double set_V = charger.set_V(stage, y[kTemperature_C]);
        if (stage < 0.5) g[0] = poles.voltage_V(-charger.limit_A) - set_V;
        if (stage > 0.5) g[0] = -current_of(y, poles) - charger.stages.tail_A;
        if (stage > 1.5) g[0] = 1.0;
      });
  Milestones milestones;
  for (Course& milestone : milestones) {
    const double longest_s =
        std::array{1e6, charger.stages.absorption_max_s, kFloat_s}[static_cast<std::size_t>(stage)];
    const Stop stop = integrator.run_to(integrator.time_s() + longest_s);
    milestone = course_of(stop.t_s, integrator.state());
    stage += 1.0;
    integrator.restart();
  }
  return milestones;
}

class LeadAcidOracle : public Oracle {};

std::vector<std::string> lead_acid() {
  std::vector<std::string> ids;
  for (const cell::Chemistry& c : laws::catalogue().chemistries) {
    if (c.simulated && c.family == cell::Family::kLeadAcid) ids.push_back(c.id);
  }
  return ids;
}

TEST_P(LeadAcidOracle, AbsorptionToTailAndFloat) {
  season::Installation installation;
  installation.main_cable_ohm = kCable_ohm;
  const auto system = season::make_system(battery_, chemistry_, tables_, {1, 1, 0.0}, installation);
  const Charger charger{system.chargers[season::kMains].stages, kLimit_per_h * battery_.capacity_Ah};
  for (const double temperature_C : {25.0, 5.0}) {
    const bank::State<double> start = rested(0.5, temperature_C);
    const Milestones engine =
        Stepped(charger, stepped(kWhole_s), stepped(kRefined_s), start, temperature_C).run();
    const Milestones oracle = integrated(charger, bank_, unknowns_of(start), temperature_C);
    static constexpr std::array kNames{"bulk", "absorption", "float"};
    for (std::size_t i = 0; i < engine.size(); ++i) {
      const Course& e = engine[i];
      const Course& o = oracle[i];
      std::printf(
          "%-8s %4.0f degC end of %-10s %9.2f s, %.5f full: engine %+7.2f s, %+.4f %% Ah, %+.4f %% Wh, "
          "%+.6f, "
          "%+.4f K\n",
          chemistry_.id.c_str(), temperature_C, kNames[i], o.time_s, o.charge, e.time_s - o.time_s,
          100.0 * apart(e.charged_Ah, o.charged_Ah), 100.0 * apart(e.charged_Wh, o.charged_Wh),
          e.charge - o.charge, e.temperature_C - o.temperature_C);
      EXPECT_NEAR(e.time_s, o.time_s, i == 0 ? kBulk_s : kTime_s);
      EXPECT_NEAR(e.charged_Ah, o.charged_Ah, 0.001 * o.charged_Ah);
      EXPECT_NEAR(e.charged_Wh, o.charged_Wh, 0.001 * o.charged_Wh);
      EXPECT_NEAR(e.charge, o.charge, 0.001);
      EXPECT_NEAR(e.temperature_C, o.temperature_C, 0.05);
    }
    EXPECT_LT(oracle[0].time_s, oracle[1].time_s - 600.0) << "the voltage is meant to be held for a while";
  }
}

INSTANTIATE_TEST_SUITE_P(Catalogue, LeadAcidOracle, ::testing::ValuesIn(lead_acid()), laws::name_of);

}  // namespace
}  // namespace voltwright::oracle
