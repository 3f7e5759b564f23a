#include "engine/sky/month_anomaly.h"

#include <algorithm>
#include <chrono>

#include "engine/base/random.h"

namespace voltwright::sky {

double month_anomaly_deviation(double clearness) {
  constexpr double kDull = 0.45;
  constexpr double kSunny = 0.65;
  constexpr double kMost = 0.06;
  constexpr double kLeast = 0.02;
  return kMost - (kMost - kLeast) * std::clamp((clearness - kDull) / (kSunny - kDull), 0.0, 1.0);
}

double month_anomaly(double clearness, std::int64_t days_since_1970, std::uint64_t seed,
                     std::uint64_t season) {
  using namespace std::chrono;
  const year_month_day date{sys_days{days{days_since_1970}}};
  const auto month =
      static_cast<std::uint64_t>(static_cast<int>(date.year()) * 12) + static_cast<unsigned>(date.month());
  constexpr std::uint64_t kPurpose = 0x6d6f6e7468;  // in the place of the leg, which no leg reaches
  base::RandomStream random(seed, season, kPurpose, month);
  constexpr double kCutOff = 2.5;
  return 1.0 + month_anomaly_deviation(clearness) * std::clamp(random.normal(), -kCutOff, kCutOff);
}

}  // namespace voltwright::sky
