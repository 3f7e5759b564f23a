#pragma once
// A season of one bank: the minutes stepped through, what happened, and how the bank fared.
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "engine/ageing/exposure_recorder.h"
#include "engine/ageing/plate_recorder.h"
#include "engine/cell/chemistry.h"
#include "engine/season/ledger.h"
#include "engine/season/refined_step.h"
#include "engine/season/system.h"

namespace voltwright::season {

/// Steps any number of banks through shared minutes; `observe(minute index, state, report)` sees every step.
template <class R, class Observer>
void run_minutes(const System<R>& system, std::span<const Minute> minutes, SystemState<R>& state,
                 Ledger<R>& ledger, Observer&& observe) {
  const R step_h = system.bank.step_s * R(1.0 / 3600.0);
  for (std::size_t i = 0; i < minutes.size(); ++i) {
    const StepReport<R> report = step<R>(system, minutes[i], state);
    ledger.add(report, state, step_h);
    observe(i, state, report);
  }
}

enum class EventKind {
  kShort,
  kChargeBlocked,
  kLoadsOff,
  kInverterTrip,
  kFailedStart,
  kCollapse,
  kFarLoadOff,   // a load at the end of its cable fell below its cut-off
  kOverCurrent,  // protection opened on over-current
  kLoadDump,     // protection opened while an alternator was charging through a relay
  kFrozen,
  kLockedOut,  // opened on low voltage, and no source there could start on the dead bank
};
inline constexpr std::size_t kEventKinds = 11;

struct Event {
  EventKind kind = EventKind::kShort;
  std::int64_t start_utc_s = 0;
  double minutes = 0.0;
  double energy_Wh = 0.0;  // unmet, for shortfalls
};

/// How a bank fared in one season.
struct Fared {
  Ledger<double> ledger;
  double minutes = 0.0;
  double charge_at_start = 1.0, charge_at_end = 1.0;
  double lowest_charge = 1.0;
  std::int64_t lowest_charge_utc_s = 0;
  double lowest_V = 1e9;
  double highest_V = 0.0;
  double coldest_C = 1e9, hottest_C = -1e9, mean_C = 0.0;
  double highest_discharge_A = 0.0, highest_charge_A = 0.0;  // minute means
  double highest_load_dump_A = 0.0;
  double highest_surge_A = 0.0;
  double lowest_surge_V = 1e9;  // 1e9: no start
  double longest_short_min = 0.0;
  double locked_out_h = 0.0;                 // loads off while charging was blocked
  ageing::Exposure exposure;                 // what the season asked of the bank, for the ageing laws
  std::vector<Event> events;                 // the first few hundred
  std::vector<float> daily_low, daily_high;  // state of charge, by days of 24 h from the start

  bool ran_short() const { return ledger.unmet_essential_Wh > 0.0; }
};

/// Minutes of one bank for charts and tables.
struct Trace {
  std::int64_t start_utc_s = 0;
  std::vector<float> charge, bank_C, bus_V, bank_A, unmet_W, solar_W, engine_W, mains_W, load_W;
  std::vector<float> wind_W, water_W, generator_W;
};

/// One bank going through one season; feed it the minutes in order, in any number of pieces.
class Passage {
 public:
  /// The system and the chemistry must outlive this.
  Passage(const System<double>& system, const cell::Chemistry& chemistry, std::int64_t start_utc_s,
          double start_temperature_C, Trace* trace = nullptr);

  void run(std::span<const Minute> minutes);

  /// Closes open events and sums up the exposure.
  Fared finish();

 private:
  void note(std::size_t index, const SystemState<double>& state, const StepReport<double>& report);
  void track(EventKind kind, bool on, std::int64_t now_utc_s, double energy_Wh);
  void keep(const StepReport<double>& report, const SystemState<double>& state);

  const System<double>* system_;
  SystemState<double> state_;
  Fared fared_;
  ageing::ExposureRecorder recorder_;
  std::optional<ageing::PlateRecorder> plates_;
  struct Open {
    bool on = false;
    Event event;
  };
  Open open_[kEventKinds];
  Trace* trace_;
  std::int64_t start_utc_s_;
  std::size_t done_ = 0;
  double temperature_sum_ = 0.0;
};

}  // namespace voltwright::season
