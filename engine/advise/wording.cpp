#include "engine/advise/wording.h"

#include <cmath>

namespace voltwright::advise {

std::string chance_text(int events, int seasons, double low, double high) {
  const std::string count = std::to_string(events) + " of " + units::with_thousands(seasons) + " seasons";
  if (events == 0) return count + ", under " + percent(high);
  if (events == seasons) return count + ", over " + percent(low);
  return count + " (" + percent(low) + " to " + percent(high) + ")";
}

std::string duration_text(double minutes) {
  if (minutes < 90.0) return figure(std::round(minutes), "min");
  if (minutes < 48.0 * 60.0) return figure(std::round(minutes / 60.0), "h");
  return figure(std::round(minutes / 1440.0), "days");
}

}  // namespace voltwright::advise
