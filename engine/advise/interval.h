#pragma once

namespace voltwright::advise {

/// A share of seasons with its 95 % interval.
struct Chance {
  int events = 0;
  int seasons = 0;
  double share = 0.0;
  double low = 0.0;
  double high = 1.0;
};

/// Wilson score interval of a binomial share at 95 % (Wilson 1927). seasons = 0 gives 0..1.
Chance chance_of(int events, int seasons);

/// Number of seasons after which the interval would no longer contain `limit` if the share stayed what it is;
/// 0 if it does not contain it now, at most `most`.
int seasons_to_decide(const Chance& chance, double limit, int most = 1000000);

}  // namespace voltwright::advise
