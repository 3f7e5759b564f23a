#include "engine/ageing/opinion.h"

#include <algorithm>

namespace voltwright::ageing {

const Opinions* opinions_on(std::span<const Opinions> all, std::string_view chemistry) {
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const Opinions& opinions) { return opinions.chemistry == chemistry; });
  return found != all.end() ? &*found : nullptr;
}

const Opinion* leading_opinion(const Opinions& opinions, const Exposure& exposure, const Aged& aged) {
  if (opinions.opinions.empty()) return nullptr;
  const auto known = std::find_if(
      opinions.opinions.begin(), opinions.opinions.end(),
      [&](const Opinion& opinion) { return opinion.law->reach(exposure, aged) != Reach::kOutside; });
  return known != opinions.opinions.end() ? &*known : &opinions.opinions.front();
}

double repetitions_until(const Law& law, const Exposure& exposure, double share, double most) {
  const auto left_after = [&](double times) {
    Aged aged;
    law.age(aged, exposure, times);
    return aged.capacity();
  };
  if (left_after(most) > share) return most;
  double low = 0.0;
  double high = most;
  // Halving until the two ends are neighbours in double precision, or near enough.
  constexpr int kHalvings = 200;
  for (int i = 0; i < kHalvings && high - low > 1e-12 * high; ++i) {
    const double middle = 0.5 * (low + high);
    (left_after(middle) > share ? low : high) = middle;
  }
  return high;
}

}  // namespace voltwright::ageing
