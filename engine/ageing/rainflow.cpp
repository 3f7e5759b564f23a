#include "engine/ageing/rainflow.h"

#include <cmath>

namespace voltwright::ageing {

void RainflowCounter::add(double value) {
  if (!started_) {
    started_ = true;
    extreme_ = value;
    turns_.push_back(value);
    return;
  }
  if (direction_ == 0) {
    if (std::fabs(value - turns_.back()) < smallest_) return;
    direction_ = value > turns_.back() ? 1 : -1;
    extreme_ = value;
    return;
  }
  const double onward = (value - extreme_) * direction_;
  if (onward >= 0.0) {
    extreme_ = value;
  } else if (-onward >= smallest_) {
    turn(extreme_);
    direction_ = -direction_;
    extreme_ = value;
  }
}

void RainflowCounter::turn(double value) {
  turns_.push_back(value);
  while (turns_.size() >= 3) {
    const double y_from = turns_[turns_.size() - 3];
    const double y_to = turns_[turns_.size() - 2];
    const double x_to = turns_[turns_.size() - 1];
    const double y = std::fabs(y_to - y_from);
    if (std::fabs(x_to - y_to) < y) break;
    if (turns_.size() == 3) {
      // Range Y contains the start of the series: half a cycle, and its start is dropped.
      closed_.push_back({y, 0.5 * (y_from + y_to), 0.5});
      turns_.erase(turns_.begin());
    } else {
      closed_.push_back({y, 0.5 * (y_from + y_to), 1.0});
      turns_.erase(turns_.end() - 3, turns_.end() - 1);
    }
  }
}

std::vector<Cycle> RainflowCounter::cycles() const {
  RainflowCounter ended = *this;
  if (started_ && direction_ != 0) ended.turn(extreme_);
  std::vector<Cycle> all = ended.closed_;
  for (std::size_t i = 1; i < ended.turns_.size(); ++i) {
    const double from = ended.turns_[i - 1];
    const double to = ended.turns_[i];
    all.push_back({std::fabs(to - from), 0.5 * (from + to), 0.5});
  }
  return all;
}

}  // namespace voltwright::ageing
