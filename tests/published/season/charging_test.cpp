// Charge voltages against temperature, and how banks of the two kinds take charge.
#include <gtest/gtest.h>

#include <algorithm>

#include "engine/season/refined_step.h"
#include "engine/season/setup.h"
#include "engine/supply/stages.h"
#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

// Temperatures clamped to -20 and 50 degC, voltage to 15.5 V for 12 V systems (common practice, no source).
TEST(Compensation, IsCapped) {
  supply::StageSettings<double> settings;
  settings.absorption_V = 14.4;
  settings.compensation_V_per_K = -0.018;
  const supply::StageState<double> state;
  const auto at = [&](double t) { return supply::set_point<double>(settings, state, t); };
  EXPECT_NEAR(at(-40.0), at(-20.0), 1e-12);
  EXPECT_NEAR(at(70.0), 14.4 - 25.0 * 0.018, 1e-9);
  settings.compensation_V_per_K = -0.030;
  EXPECT_NEAR(at(-20.0), 15.5, 1e-12);
}

/// A bank on a mains charger at 25 degC, from a state of charge on.
class Charging {
 public:
  Charging(const char* kind, const char* id, double rate, double from)
      : tables_(cell::make_tables(chemistry(kind))) {
    const bank::Battery& battery = *catalogue().battery(id);
    capacity_Ah_ = battery.capacity_Ah;
    supply::MainsCharger mains;
    limit_A_ = rate * capacity_Ah_;
    mains.output_limit = units::amperes(limit_A_);
    season::Installation installation;
    installation.mains = &mains;
    system_ = season::make_system(battery, chemistry(kind), tables_, {1, 1, 0.0}, installation);
    system_.guard.charge_limit_A = std::max(system_.guard.charge_limit_A, limit_A_);
    state_ = season::full_and_rested(system_, 25.0);
    state_.bank.charge = from;
    state_.bus_V = bank::terminal<double>(system_.bank, state_.bank).ocv_V;
    minute_.mains = true;
    minute_.surroundings_C = 25.0;
  }
  /// Minutes until the state of charge is reached; 1e9 if not within three days.
  double minutes_to(double charge) {
    for (int i = 0; i < 4320; ++i) {
      if (state_.bank.charge >= charge) return i;
      step();
    }
    return 1e9;
  }
  /// State of charge at which the current first falls below a share of the charger's.
  double charge_when_current_falls(double share) {
    for (int i = 0; i < 4320; ++i) {
      if (-step().bank_A < share * limit_A_) return state_.bank.charge;
    }
    return 1.0;
  }

 private:
  season::StepReport<double> step() { return season::step<double>(system_, minute_, state_); }

  cell::Tables tables_;
  season::System<double> system_;
  season::SystemState<double> state_;
  season::Minute minute_;
  double capacity_Ah_ = 0.0;
  double limit_A_ = 0.0;
};

// Lead-acid tapers: with 0.2 of its capacity per hour a battery goes from 50 to 80 % in one and a half to
// three hours, and the rest to 98 % takes more than two hours and less than a day (common practice, no
// source).
TEST(ChargingCourse, LeadAcidTapers) {
  for (const auto& [kind, id] :
       {std::pair{"agm", "agm-12v-200ah"}, {"gel", "gel-12v-100ah"}, {"flooded", "flooded-12v-100ah"}}) {
    Charging charging(kind, id, 0.2, 0.5);
    const double bulk_min = charging.minutes_to(0.8);
    EXPECT_GT(bulk_min, 80.0) << id;
    EXPECT_LT(bulk_min, 180.0) << id;
    const double rest_min = charging.minutes_to(0.98);
    EXPECT_GT(rest_min, 120.0) << id;
    EXPECT_LT(rest_min, 24.0 * 60.0) << id;
  }
}

// Iron-phosphate takes the charger's full current to about 95 % (common practice, no source; 0.2 to 0.5 C).
TEST(ChargingCourse, IronPhosphateTakesAllToNearlyFull) {
  for (const double rate : {0.2, 0.5}) {
    Charging charging("lfp", "lfp-12v-100ah", rate, 0.3);
    EXPECT_GT(charging.charge_when_current_falls(0.98), 0.93) << rate;
  }
}

}  // namespace
}  // namespace voltwright::published
