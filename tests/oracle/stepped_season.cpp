#include "tests/oracle/stepped_season.h"

#include <algorithm>
#include <utility>

#include "engine/season/refined_step.h"

namespace voltwright::oracle {

namespace {

constexpr double kMinute_s = 60.0;

/// Adds what differs between two states.
void note(const season::SystemState<double>& before, const season::SystemState<double>& after, double t_s,
          std::vector<Change>& changes) {
  using Guard = bank::GuardState<double>;
  static constexpr std::pair<double Guard::*, const char*> kLatches[] = {
      {&Guard::charge_cold, "charge cold"},
      {&Guard::charge_hot, "charge hot"},
      {&Guard::discharge_cold, "discharge cold"},
      {&Guard::discharge_hot, "discharge hot"},
      {&Guard::over_voltage, "over voltage"},
      {&Guard::empty, "empty"},
      {&Guard::frozen, "frozen"},
      {&Guard::over_current, "over current"}};
  for (const auto& [latch, name] : kLatches) {
    if (before.guard.*latch == after.guard.*latch) continue;
    changes.push_back({t_s, std::string(name) + (after.guard.*latch > 0.5 ? " on" : " off")});
  }
  for (std::size_t kind = 0; kind < season::kSourceKinds; ++kind) {
    const double stage = after.stages[kind].stage;
    if (before.stages[kind].stage != stage) changes.push_back({t_s, stage_name(kind, stage)});
  }
}

}  // namespace

std::vector<season::Minute> minutes_of(const Outside& outside, double end_s) {
  std::vector<season::Minute> minutes(static_cast<std::size_t>(end_s / kMinute_s + 0.5));
  std::size_t piece = 0;
  for (std::size_t i = 0; i < minutes.size(); ++i) {
    const double t_s = kMinute_s * static_cast<double>(i);
    while (piece + 1 < outside.pieces.size() && outside.pieces[piece + 1].start_s <= t_s + 0.5) ++piece;
    const Piece& now = outside.pieces[piece];
    season::Minute& m = minutes[i];
    m.direct_W = now.load_W;
    m.essential_direct_W = now.load_W;
    m.mains = now.mains;
    if (now.sun) {
      // Simpson's rule: the mean of a smooth curve over a minute.
      m.solar_W = (outside.solar_W(t_s) + 4.0 * outside.solar_W(t_s + 0.5 * kMinute_s) +
                   outside.solar_W(t_s + kMinute_s)) /
                  6.0;
    }
    m.surroundings_C = outside.air_C(t_s + 0.5 * kMinute_s);
  }
  return minutes;
}

SteppedCourse step_through(const season::System<double>& system, const std::vector<season::Minute>& minutes,
                           season::SystemState<double> state) {
  SteppedCourse course;
  course.charge.reserve(minutes.size());
  course.temperature_C.reserve(minutes.size());
  double t_s = 0.0;
  for (const season::Minute& minute : minutes) {
    const season::SystemState<double> before = state;
    course.ledger.add(season::step<double>(system, minute, state), state, kMinute_s / 3600.0);
    course.charge.push_back(state.bank.charge);
    course.temperature_C.push_back(state.bank.temperature_C);
    std::vector<Change> within;
    note(before, state, t_s + kMinute_s, within);
    if (!within.empty() && system.finer_count > 0) {
      within.clear();
      season::SystemState<double> by_second = before;
      const std::size_t finest = system.finer_count;
      const double step_s = system.paced(finest).step_s;
      for (double s = step_s; s < kMinute_s + 0.5 * step_s; s += step_s) {
        const season::SystemState<double> last = by_second;
        season::plain_step<double>(system, finest, minute, by_second);
        note(last, by_second, t_s + s, within);
      }
    }
    course.changes.insert(course.changes.end(), within.begin(), within.end());
    t_s += kMinute_s;
  }
  course.state = state;
  return course;
}

std::vector<double> times_of(const std::vector<Change>& changes, const std::string& what) {
  std::vector<double> times;
  for (const Change& change : changes) {
    if (change.what == what) times.push_back(change.t_s);
  }
  return times;
}

std::vector<std::string> kinds_of(const std::vector<Change>& changes) {
  std::vector<std::string> kinds;
  for (const Change& change : changes) kinds.push_back(change.what);
  std::sort(kinds.begin(), kinds.end());
  kinds.erase(std::unique(kinds.begin(), kinds.end()), kinds.end());
  return kinds;
}

}  // namespace voltwright::oracle
