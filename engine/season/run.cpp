#include "engine/season/run.h"

#include <algorithm>
#include <cmath>

#include "engine/season/setup.h"

namespace voltwright::season {

namespace {
constexpr std::size_t kMostEvents = 400;
constexpr std::size_t kMinutesPerDay = 1440;
constexpr double kStep_h = 1.0 / 60.0;
}  // namespace

Passage::Passage(const System<double>& system, const cell::Chemistry& chemistry, std::int64_t start_utc_s,
                 double start_temperature_C, Trace* trace)
    : system_(&system),
      state_(full_and_rested(system, start_temperature_C)),
      trace_(trace),
      start_utc_s_(start_utc_s) {
  if (chemistry.plate_wear) plates_.emplace(*chemistry.plate_wear, chemistry.ocv_V, system.cell_Ah);
  fared_.charge_at_start = state_.bank.charge;
  if (trace_ != nullptr) *trace_ = Trace{};
  if (trace_ != nullptr) trace_->start_utc_s = start_utc_s;
}

void Passage::run(std::span<const Minute> minutes) {
  run_minutes<double>(
      *system_, minutes, state_, fared_.ledger,
      [this](std::size_t, const SystemState<double>& state, const StepReport<double>& report) {
        note(done_, state, report);
        ++done_;
      });
}

void Passage::track(EventKind kind, bool on, std::int64_t now_utc_s, double energy_Wh) {
  Open& open = open_[static_cast<std::size_t>(kind)];
  if (on && !open.on) open.event = Event{kind, now_utc_s, 0.0, 0.0};
  if (on) {
    open.event.minutes += 1.0;
    open.event.energy_Wh += energy_Wh;
  } else if (open.on && fared_.events.size() < kMostEvents) {
    fared_.events.push_back(open.event);
  }
  open.on = on;
}

void Passage::keep(const StepReport<double>& report, const SystemState<double>& state) {
  const auto f = [](double x) { return static_cast<float>(x); };
  trace_->charge.push_back(f(state.bank.charge));
  trace_->bank_C.push_back(f(state.bank.temperature_C));
  trace_->bus_V.push_back(f(report.bus_V));
  trace_->bank_A.push_back(f(report.bank_A));
  trace_->unmet_W.push_back(f(report.unmet_W));
  trace_->solar_W.push_back(f(report.solar_W));
  trace_->engine_W.push_back(f(report.engine_W));
  trace_->mains_W.push_back(f(report.mains_W));
  trace_->wind_W.push_back(f(report.wind_W));
  trace_->water_W.push_back(f(report.water_W));
  trace_->generator_W.push_back(f(report.generator_W));
  trace_->load_W.push_back(f(report.direct_W + report.inverter_W + report.heater_W));
}

void Passage::note(std::size_t index, const SystemState<double>& state, const StepReport<double>& report) {
  const std::int64_t now_utc_s = start_utc_s_ + 60 * static_cast<std::int64_t>(index);
  Fared& f = fared_;
  const double charge = state.bank.charge;
  if (charge < f.lowest_charge) {
    f.lowest_charge = charge;
    f.lowest_charge_utc_s = now_utc_s;
  }
  f.lowest_V = std::min(f.lowest_V, report.bus_V);
  f.highest_V = std::max(f.highest_V, report.bus_V);
  const double temperature_C = state.bank.temperature_C;
  f.coldest_C = std::min(f.coldest_C, temperature_C);
  f.hottest_C = std::max(f.hottest_C, temperature_C);
  temperature_sum_ += temperature_C;
  f.highest_discharge_A = std::max(f.highest_discharge_A, report.bank_A);
  f.highest_charge_A = std::max(f.highest_charge_A, -report.bank_A);
  if (report.surge_A > 0.0) {
    f.highest_surge_A = std::max(f.highest_surge_A, report.surge_A);
    f.lowest_surge_V = std::min(f.lowest_surge_V, report.surge_V);
  }
  recorder_.add(charge, temperature_C, kStep_h);
  if (plates_) {
    plates_->add({charge, temperature_C, report.bus_V / system_->bank.cells,
                  report.bank_A / system_->bank.capacity_Ah, kStep_h});
  }
  if (index % kMinutesPerDay == 0) {
    f.daily_low.push_back(static_cast<float>(charge));
    f.daily_high.push_back(static_cast<float>(charge));
  } else {
    f.daily_low.back() = std::min(f.daily_low.back(), static_cast<float>(charge));
    f.daily_high.back() = std::max(f.daily_high.back(), static_cast<float>(charge));
  }
  const bool blocked = state.charge_blocked > 0.5;
  f.highest_load_dump_A = std::max(f.highest_load_dump_A, report.load_dump_A);
  if (blocked && report.loads_off > 0.5) f.locked_out_h += 1.0 / 60.0;
  track(EventKind::kShort, report.unmet_essential_W > 0.0, now_utc_s, report.unmet_essential_W / 60.0);
  track(EventKind::kChargeBlocked, blocked, now_utc_s, 0.0);
  track(EventKind::kLoadsOff, report.loads_off > 0.5, now_utc_s, report.unmet_W / 60.0);
  track(EventKind::kInverterTrip, state.inverter_off > 0.5, now_utc_s, 0.0);
  track(EventKind::kFailedStart, report.failed_start > 0.5, now_utc_s, 0.0);
  track(EventKind::kCollapse, report.collapsed > 0.5, now_utc_s, 0.0);
  track(EventKind::kFarLoadOff, report.far_off > 0.0, now_utc_s, 0.0);
  track(EventKind::kOverCurrent, report.over_current > 0.0, now_utc_s, report.unmet_W / 60.0);
  track(EventKind::kLoadDump, report.load_dump_A > 0.0, now_utc_s, 0.0);
  track(EventKind::kFrozen, report.frozen > 0.0, now_utc_s, report.unmet_W / 60.0);
  track(EventKind::kLockedOut, report.unwoken > 0.5, now_utc_s, report.unmet_W / 60.0);
  const Open& open_short = open_[static_cast<std::size_t>(EventKind::kShort)];
  if (open_short.on) f.longest_short_min = std::max(f.longest_short_min, open_short.event.minutes);
  if (trace_ != nullptr) keep(report, state);
}

Fared Passage::finish() {
  const std::int64_t end_utc_s = start_utc_s_ + 60 * static_cast<std::int64_t>(done_);
  for (std::size_t k = 0; k < std::size(open_); ++k) track(static_cast<EventKind>(k), false, end_utc_s, 0.0);
  fared_.minutes = static_cast<double>(done_);
  fared_.mean_C = done_ > 0 ? temperature_sum_ / static_cast<double>(done_) : 0.0;
  fared_.charge_at_end = state_.bank.charge;
  fared_.exposure = recorder_.exposure();
  if (plates_) fared_.exposure.plates = plates_->use();
  return std::move(fared_);
}

}  // namespace voltwright::season
