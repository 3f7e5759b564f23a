#include "tests/oracle/parallel.h"

#include <algorithm>

#include "tests/oracle/zero.h"

namespace voltwright::oracle {

namespace {

/// From the voltage at the far end of the row towards the take-off: what each battery gives, and the total.
double total_from_far_end(const Row& row, const std::vector<Poles>& poles, double far_V,
                          std::vector<double>& current_A) {
  double node_V = far_V;
  double passing_A = 0.0;
  for (std::size_t k = poles.size(); k-- > 0;) {
    const double ohm = (node_V > poles[k].source_V ? poles[k].charge_ohm : poles[k].discharge_ohm);
    current_A[k] = (poles[k].source_V - node_V) / (ohm + row.lead_ohm[k]);
    passing_A += current_A[k];
    if (k > 0) node_V -= row.link_ohm[k - 1] * passing_A;
  }
  return passing_A;
}

}  // namespace

std::vector<double> currents_of(const Row& row, const std::vector<Poles>& poles, double total_A) {
  std::vector<double> current_A(poles.size());
  const auto excess_A = [&](double far_V) {
    return total_from_far_end(row, poles, far_V, current_A) - total_A;
  };
  const auto by_source = [](const Poles& a, const Poles& b) { return a.source_V < b.source_V; };
  const double lowest_V = std::min_element(poles.begin(), poles.end(), by_source)->source_V;
  const double highest_V = std::max_element(poles.begin(), poles.end(), by_source)->source_V;
  // The more the far end falls, the more every battery gives.
  const double far_V = zero_of(excess_A, 0.5 * lowest_V, 1.5 * highest_V);
  total_from_far_end(row, poles, far_V, current_A);
  return current_A;
}

}  // namespace voltwright::oracle
