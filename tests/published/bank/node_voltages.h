#pragma once
// A second way to solve a row of parallel batteries: the potentials of all poles from conductances, by
// Gaussian elimination, and every assignment of directions tried in turn. Slow and plain on purpose.
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include "engine/bank/sharing.h"

namespace voltwright::published {

struct NodeSolution {
  std::vector<double> current_A;
  std::vector<double> across_V;  // between the two chains at each battery
  double takeoff_V = 0.0;
};

/// Solves a x = b with partial pivoting.
inline std::vector<double> eliminate(std::vector<std::vector<double>> a, std::vector<double> b) {
  const std::size_t n = b.size();
  for (std::size_t i = 0; i < n; ++i) {
    std::size_t best = i;
    for (std::size_t j = i + 1; j < n; ++j) {
      if (std::fabs(a[j][i]) > std::fabs(a[best][i])) best = j;
    }
    std::swap(a[i], a[best]);
    std::swap(b[i], b[best]);
    for (std::size_t j = i + 1; j < n; ++j) {
      const double factor = a[j][i] / a[i][i];
      for (std::size_t k = i; k < n; ++k) a[j][k] -= factor * a[i][k];
      b[j] -= factor * b[i];
    }
  }
  for (std::size_t i = n; i-- > 0;) {
    for (std::size_t k = i + 1; k < n; ++k) b[i] -= a[i][k] * b[k];
    b[i] /= a[i][i];
  }
  return b;
}

/// `ohm` = kBlocked: open. Links must have resistance. Node 2 k is the positive pole of battery k, 2 k + 1
/// the negative; the negative take-off is at nought.
inline NodeSolution solve_by_nodes(const std::vector<bank::Branch>& branches, const std::vector<double>& ohm,
                                   const bank::Wiring& wiring, double total_A) {
  const std::size_t count = branches.size();
  std::vector<std::vector<double>> g(2 * count, std::vector<double>(2 * count, 0.0));
  std::vector<double> b(2 * count, 0.0);
  const auto join = [&](std::size_t i, std::size_t j, double siemens) {
    g[i][i] += siemens;
    g[j][j] += siemens;
    g[i][j] -= siemens;
    g[j][i] -= siemens;
  };
  for (std::size_t k = 0; k < count; ++k) {
    const double siemens = 1.0 / (ohm[k] + wiring.lead_ohm[k]);
    join(2 * k, 2 * k + 1, siemens);
    b[2 * k] += siemens * branches[k].source_V;
    b[2 * k + 1] -= siemens * branches[k].source_V;
    if (k + 1 == count) break;
    join(2 * k, 2 * k + 2, 1.0 / wiring.positive_link_ohm[k]);
    join(2 * k + 1, 2 * k + 3, 1.0 / wiring.negative_link_ohm[k]);
  }
  b[2 * wiring.positive_at] -= total_A;
  const std::size_t ground = 2 * wiring.negative_at + 1;
  for (std::size_t k = 0; k < 2 * count; ++k) g[ground][k] = k == ground ? 1.0 : 0.0;
  b[ground] = 0.0;
  const std::vector<double> v = eliminate(g, b);
  NodeSolution solution;
  for (std::size_t k = 0; k < count; ++k) {
    solution.across_V.push_back(v[2 * k] - v[2 * k + 1]);
    solution.current_A.push_back((branches[k].source_V - solution.across_V[k]) /
                                 (ohm[k] + wiring.lead_ohm[k]));
  }
  solution.takeoff_V = v[2 * wiring.positive_at];
  return solution;
}

/// The linear network with the discharge resistances.
inline NodeSolution solve_by_nodes(const std::vector<bank::Branch>& branches, const bank::Wiring& wiring,
                                   double total_A) {
  std::vector<double> ohm;
  for (const bank::Branch& b : branches) ohm.push_back(b.discharge_ohm);
  return solve_by_nodes(branches, ohm, wiring, total_A);
}

struct Consistent {
  bool found = false;
  std::vector<double> current_A;
};

/// Tries all 3^n states (discharging, charging, at rest) and returns the one in which every current has its
/// direction and every battery at rest has the bus on the blocked side of its voltage.
inline Consistent only_consistent(const std::vector<bank::Branch>& branches, const bank::Wiring& wiring,
                                  double total_A) {
  const std::size_t count = branches.size();
  std::size_t states = 1;
  for (std::size_t k = 0; k < count; ++k) states *= 3;
  Consistent answer;
  for (std::size_t state = 0; state < states && !answer.found; ++state) {
    std::vector<double> ohm;
    std::vector<std::size_t> way;
    bool sensible = true;
    bool any_on = false;
    std::size_t rest = state;
    for (std::size_t k = 0; k < count; ++k, rest /= 3) {
      way.push_back(rest % 3);
      const double here = way[k] == 0   ? branches[k].discharge_ohm
                          : way[k] == 1 ? branches[k].charge_ohm
                                        : bank::Branch::kBlocked;
      if (way[k] < 2 && here == bank::Branch::kBlocked) sensible = false;
      any_on = any_on || way[k] < 2;
      ohm.push_back(here);
    }
    if (!sensible) continue;
    if (!any_on) {
      // Nothing conducts: right at no total current if no pair of batteries could drive one.
      double highest_V = -1e9;
      double lowest_V = 1e9;
      for (const bank::Branch& b : branches) {
        if (b.discharge_ohm < bank::Branch::kBlocked && b.source_V > highest_V) highest_V = b.source_V;
        if (b.charge_ohm < bank::Branch::kBlocked && b.source_V < lowest_V) lowest_V = b.source_V;
      }
      if (total_A == 0.0 && highest_V <= lowest_V) {
        answer.found = true;
        answer.current_A.assign(count, 0.0);
      }
      continue;
    }
    const NodeSolution s = solve_by_nodes(branches, ohm, wiring, total_A);
    bool agrees = true;
    for (std::size_t k = 0; k < count; ++k) {
      constexpr double kSlack_A = 1e-8;
      const double above_V = branches[k].source_V - s.across_V[k];
      if (way[k] == 0 && s.current_A[k] < -kSlack_A) agrees = false;
      if (way[k] == 1 && s.current_A[k] > kSlack_A) agrees = false;
      if (way[k] == 2 && branches[k].discharge_ohm < bank::Branch::kBlocked && above_V > 0.0) agrees = false;
      if (way[k] == 2 && branches[k].charge_ohm < bank::Branch::kBlocked && above_V < 0.0) agrees = false;
    }
    if (!agrees) continue;
    answer.found = true;
    answer.current_A = s.current_A;
  }
  return answer;
}

}  // namespace voltwright::published
