#include "engine/ageing/rainflow.h"

#include <algorithm>
#include <cmath>

namespace voltwright::ageing {

namespace {

double ratio(double sum, double weight, double if_none) { return weight > 0.0 ? sum / weight : if_none; }

Swing swing_of(double from, double to, double count, const Way& out, const Way& back) {
  const bool rises = to > from;
  const Way& charge = rises ? out : back;
  const Way& discharge = rises ? back : out;
  Swing swing;
  swing.depth = std::fabs(to - from);
  swing.mean_soc = 0.5 * (from + to);
  swing.count = count;
  swing.charge_per_h = ratio(charge.up_by_rate, charge.up, 0.0);
  swing.discharge_per_h = ratio(discharge.down_by_rate, discharge.down, 0.0);
  swing.temperature_C =
      ratio(out.temperature_Ch + back.temperature_Ch, out.hours + back.hours, swing.temperature_C);
  return swing;
}

}  // namespace

void Way::add(double change, double temperature_C, double step_h) {
  hours += step_h;
  temperature_Ch += temperature_C * step_h;
  if (change == 0.0) return;
  const double by_rate = step_h > 0.0 ? change * change / step_h : 0.0;
  if (change > 0.0) {
    up += change;
    up_by_rate += by_rate;
  } else {
    down -= change;
    down_by_rate += by_rate;
  }
}

void Way::add(const Way& other, double share) {
  hours += share * other.hours;
  temperature_Ch += share * other.temperature_Ch;
  up += share * other.up;
  down += share * other.down;
  up_by_rate += share * other.up_by_rate;
  down_by_rate += share * other.down_by_rate;
}

void RainflowCounter::add(double value, double temperature_C, double step_h) {
  if (!started_) {
    started_ = true;
    extreme_ = last_ = value;
    turns_.push_back({value, {}});
    return;
  }
  const double change = value - last_;
  const bool at_extreme = last_ == extreme_ && since_.hours == 0.0;
  last_ = value;
  // Most steps go on as the one before did.
  if (at_extreme && change * direction_ > 0.0) {
    onward_.add(change, temperature_C, step_h);
    extreme_ = value;
    return;
  }
  since_.add(change, temperature_C, step_h);
  if (direction_ == 0) {
    const double off = value - turns_.back().value;
    if (off == 0.0 || std::fabs(off) < smallest_) return;
    direction_ = off > 0.0 ? 1 : -1;
  } else {
    const double further = (value - extreme_) * direction_;
    if (further == 0.0 || (further < 0.0 && -further < smallest_)) return;
    if (further < 0.0) {
      turn(extreme_, onward_);
      direction_ = -direction_;
      onward_ = {};
    }
  }
  extreme_ = value;
  onward_.add(since_);
  since_ = {};
}

void RainflowCounter::turn(double value, const Way& before) {
  turns_.push_back({value, before});
  while (turns_.size() >= 3) {
    const std::size_t last = turns_.size() - 1;
    const double from = turns_[last - 2].value;
    const double to = turns_[last - 1].value;
    const double range = std::fabs(to - from);
    const double latest = std::fabs(value - to);
    if (latest < range) break;
    const Way out = turns_[last - 1].before;
    if (last == 2) {
      // The range contains the start of the series: half a cycle, and its start is dropped.
      closed_.push_back(swing_of(from, to, 0.5, out, {}));
      turns_.erase(turns_.begin());
      turns_.front().before = {};
    } else {
      const double share = range / latest;
      Way back;
      back.add(turns_[last].before, share);
      closed_.push_back(swing_of(from, to, 1.0, out, back));
      Way around = turns_[last - 2].before;
      around.add(turns_[last].before, 1.0 - share);
      turns_.erase(turns_.end() - 3, turns_.end() - 1);
      turns_.back().before = around;
    }
  }
}

std::vector<Swing> RainflowCounter::swings() const {
  RainflowCounter ended = *this;
  ended.onward_.add(since_);
  if (direction_ != 0) ended.turn(extreme_, ended.onward_);
  std::vector<Swing> all = std::move(ended.closed_);
  for (std::size_t i = 1; i < ended.turns_.size(); ++i) {
    all.push_back(
        swing_of(ended.turns_[i - 1].value, ended.turns_[i].value, 0.5, ended.turns_[i].before, {}));
  }
  return all;
}

}  // namespace voltwright::ageing
