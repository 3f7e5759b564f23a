#include "engine/advise/interval.h"

#include <algorithm>
#include <cmath>

namespace voltwright::advise {

namespace {
constexpr double kNormal95 = 1.959963984540054;

void wilson(double share, double n, double& low, double& high) {
  const double z2 = kNormal95 * kNormal95;
  const double middle = (share + z2 / (2.0 * n)) / (1.0 + z2 / n);
  const double half = kNormal95 / (1.0 + z2 / n) * std::sqrt(share * (1.0 - share) / n + z2 / (4.0 * n * n));
  low = std::max(0.0, middle - half);
  high = std::min(1.0, middle + half);
}
}  // namespace

Chance chance_of(int events, int seasons) {
  Chance chance{events, seasons, 0.0, 0.0, 1.0};
  if (seasons <= 0) return chance;
  const double n = static_cast<double>(seasons);
  chance.share = static_cast<double>(events) / n;
  wilson(chance.share, n, chance.low, chance.high);
  if (events == 0) chance.low = 0.0;
  if (events == seasons) chance.high = 1.0;
  return chance;
}

int seasons_to_decide(const Chance& chance, double limit, int most) {
  if (chance.low > limit || chance.high <= limit) return 0;
  int below = std::max(1, chance.seasons);
  int n = below;
  const auto decided = [&](int seasons) {
    double low = 0.0;
    double high = 1.0;
    wilson(chance.share, static_cast<double>(seasons), low, high);
    return low > limit || high <= limit;
  };
  while (!decided(n)) {
    if (n >= most) return most;
    below = n;
    n = std::min(most, n * 2);
  }
  while (n - below > 1) {
    const int middle = below + (n - below) / 2;
    (decided(middle) ? n : below) = middle;
  }
  return n;
}

}  // namespace voltwright::advise
