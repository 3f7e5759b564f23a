#pragma once
// What else must change in the installation when one bank takes the place of another.
#include <string>
#include <string_view>
#include <vector>

#include "engine/advise/equivalents.h"

namespace voltwright::advise {

/// What a change is about.
enum class Topic {
  kCharger,
  kAlternator,
  kColdCharging,
  kFuse,
  kMonitor,
  kSecuring,
  kSeries,
  kParallel,
  kMixing,
  kVoltage,
  kCurrent,
  kStarting,
  kCold,
  kGas,
};

enum class Urgency {
  kMust,   // unsafe or not working without it
  kCheck,  // may be right already: look
  kKnow,   // nothing to do
};

struct Change {
  Topic topic = Topic::kCharger;
  Urgency urgency = Urgency::kCheck;
  std::string text;  // what and why, in a sentence or two
};

std::string_view name_of(Topic topic);      // "charger"
std::string_view name_of(Urgency urgency);  // "must"

/// The changes from the incumbent to an equivalent, the musts first. A planning aid: local codes, the makers'
/// instructions and a licensed person decide.
std::vector<Change> changes_between(const SwapQuestion& question, const Compared& incumbent,
                                    const Compared& equivalent);

}  // namespace voltwright::advise
