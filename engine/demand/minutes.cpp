#include "engine/demand/minutes.h"

#include <algorithm>
#include <cmath>

#include "engine/base/random.h"
#include "engine/demand/cooling.h"
#include "engine/demand/inverter.h"

namespace voltwright::demand {

namespace {

constexpr double kMinute_s = 60.0;
constexpr int kDay_s = 86400;
/// A compressor that starts runs at least this long, so that cycling looks as it does in practice.
constexpr double kShortestRun_min = 12.0;

bool present(const Load& load, const Timeline& t, std::size_t i) {
  switch (load.presence) {
    case Presence::kOccupied:
      return t.occupied;
    case Presence::kAlways:
      return true;
    case Presence::kDriving:
      return t.driving[i] != 0;
    case Presence::kParked:
      return t.driving[i] == 0 && t.occupied;
  }
  return false;
}

/// Share of the minute [0..1] that lies in a run of `length_s` starting at `start_s`, both in seconds of day.
double overlap(double minute_s, double start_s, double length_s) {
  const double from = std::max(minute_s, start_s);
  const double to = std::min(minute_s + kMinute_s, start_s + length_s);
  return std::max(0.0, to - from) / kMinute_s;
}

/// Share of each minute in which the load runs.
std::vector<float> running_share(const Load& load, const Timeline& t, std::uint64_t seed,
                                 std::uint64_t season, std::uint64_t index) {
  const std::size_t n = t.second_of_day.size();
  std::vector<float> share(n, 0.0F);
  switch (load.pattern) {
    case Pattern::kAlwaysOn:
      std::fill(share.begin(), share.end(), 1.0F);
      break;
    case Pattern::kWindow:
      for (std::size_t i = 0; i < n; ++i) share[i] = load.window.contains(t.second_of_day[i]) ? 1.0F : 0.0F;
      break;
    case Pattern::kHours: {
      const double length_s = units::as_seconds(load.hours_per_day);
      for (std::size_t i = 0; i < n; ++i) {
        const double s = t.second_of_day[i];
        const double run =
            overlap(s, load.window.from_s, length_s) + overlap(s + kDay_s, load.window.from_s, length_s);
        share[i] = static_cast<float>(std::min(1.0, run));
      }
      break;
    }
    case Pattern::kEvents: {
      const double length_s = units::as_seconds(load.event_length);
      const int span_s = load.window.to_s == load.window.from_s
                             ? kDay_s
                             : (load.window.to_s - load.window.from_s + kDay_s) % kDay_s;
      std::vector<double> starts;
      std::int32_t day = 0;
      for (std::size_t i = 0; i < n; ++i) {
        if (i == 0 || t.day[i] != day) {
          day = t.day[i];
          base::RandomStream random(seed, season, (index << 32) + 1, static_cast<std::uint64_t>(day));
          const double whole = std::floor(load.events_per_day);
          const int count =
              static_cast<int>(whole) + (random.uniform() < load.events_per_day - whole ? 1 : 0);
          starts.clear();
          for (int k = 0; k < count; ++k) {
            const double latest_s = std::max(0.0, span_s - length_s);
            starts.push_back(std::fmod(load.window.from_s + random.uniform() * latest_s, kDay_s));
          }
        }
        double run = 0.0;
        for (const double start : starts) run += overlap(t.second_of_day[i], start, length_s);
        share[i] = static_cast<float>(std::min(run, std::max(1.0, static_cast<double>(starts.size()))));
      }
      break;
    }
    case Pattern::kTemperature: {
      const double running_W = units::as_watts(load.power);
      double owed_W_min = 0.0;
      bool on = false;
      for (std::size_t i = 0; i < n; ++i) {
        const double wanted_W = std::min(running_W, cooling_power_W(load.cooling, t.room_C[i]));
        owed_W_min += wanted_W;
        if (!on && owed_W_min >= running_W * kShortestRun_min) on = true;
        if (!on) continue;
        const double run = std::clamp(owed_W_min / running_W, 0.0, 1.0);
        share[i] = static_cast<float>(run);
        owed_W_min -= run * running_W;
        if (run < 1.0) on = false;
      }
      break;
    }
  }
  return share;
}

struct Feeds {
  std::vector<float> power_W, essential_W, surge_W;
  explicit Feeds(std::size_t n) : power_W(n, 0.0F), essential_W(n, 0.0F), surge_W(n, 0.0F) {}
};

void add_load(const Load& load, const std::vector<float>& share, const Timeline& t, Feeds& to) {
  const double power_W = units::as_watts(load.power) * load.count;
  const double standby_W = units::as_watts(load.standby) * load.count;
  const double start_W = units::as_watts(load.power) * std::max(0.0, load.surge_factor - 1.0);
  bool was_on = false;
  for (std::size_t i = 0; i < share.size(); ++i) {
    if (!present(load, t, i)) {
      was_on = false;
      continue;
    }
    const double run = static_cast<double>(share[i]);
    const auto w = static_cast<float>(power_W * run + standby_W * std::max(0.0, 1.0 - run));
    to.power_W[i] += w;
    if (load.need == Need::kEssential) to.essential_W[i] += w;
    const bool on = run > 0.0;
    if (on && !was_on) to.surge_W[i] = std::max(to.surge_W[i], static_cast<float>(start_W));
    was_on = on;
  }
}

}  // namespace

DemandMinutes demand_minutes(std::span<const Load> loads, const Inverter* inverter, const Timeline& timeline,
                             std::uint64_t seed, std::uint64_t season) {
  const std::size_t n = timeline.second_of_day.size();
  Feeds direct(n);
  Feeds alternating(n);
  bool essential_alternating = false;
  DemandMinutes result;
  for (std::size_t k = 0; k < loads.size(); ++k) {
    const Load& load = loads[k];
    const std::vector<float> share = running_share(load, timeline, seed, season, k);
    if (load.far.has_value()) {
      Feeds own(n);
      add_load(load, share, timeline, own);
      result.far.push_back({std::move(own.power_W), std::move(own.essential_W), std::move(own.surge_W)});
      continue;
    }
    add_load(load, share, timeline, load.feed == Feed::kDirect ? direct : alternating);
    essential_alternating |= load.feed == Feed::kInverter && load.need == Need::kEssential;
  }
  result.direct_W = std::move(direct.power_W);
  result.essential_direct_W = std::move(direct.essential_W);
  result.surge_direct_W = std::move(direct.surge_W);
  result.inverter_W.assign(n, 0.0F);
  result.essential_inverter_W.assign(n, 0.0F);
  result.surge_inverter_W.assign(n, 0.0F);
  if (inverter == nullptr) return result;
  for (std::size_t i = 0; i < n; ++i) {
    const double out_W = static_cast<double>(alternating.power_W[i]);
    const double in_W = inverter_input_W(*inverter, out_W);
    result.inverter_W[i] = static_cast<float>(in_W);
    const double share = out_W > 0.0 ? static_cast<double>(alternating.essential_W[i]) / out_W
                                     : (essential_alternating ? 1.0 : 0.0);
    result.essential_inverter_W[i] = static_cast<float>(in_W * share);
    const double start_W = static_cast<double>(alternating.surge_W[i]);
    if (start_W > 0.0) {
      result.surge_inverter_W[i] = static_cast<float>(inverter_input_W(*inverter, out_W + start_W) - in_W);
    }
  }
  return result;
}

}  // namespace voltwright::demand
