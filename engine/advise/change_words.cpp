#include "engine/advise/change.h"

namespace voltwright::advise {

std::string_view name_of(Topic topic) {
  switch (topic) {
    case Topic::kCharger:
      return "charger";
    case Topic::kAlternator:
      return "alternator";
    case Topic::kColdCharging:
      return "cold charging";
    case Topic::kFuse:
      return "fuse";
    case Topic::kMonitor:
      return "monitor";
    case Topic::kSecuring:
      return "securing";
    case Topic::kSeries:
      return "series";
    case Topic::kParallel:
      return "side by side";
    case Topic::kMixing:
      return "mixing";
    case Topic::kVoltage:
      return "voltage";
    case Topic::kCurrent:
      return "current";
    case Topic::kStarting:
      return "starting";
    case Topic::kCold:
      return "cold";
    case Topic::kGas:
      break;
  }
  return "gas";
}

std::string_view name_of(Urgency urgency) {
  switch (urgency) {
    case Urgency::kMust:
      return "must";
    case Urgency::kCheck:
      return "check";
    case Urgency::kKnow:
      break;
  }
  return "know";
}

}  // namespace voltwright::advise
