#include "engine/bank/sharing.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace voltwright::bank {

namespace {

/// A linear network: battery k is `source_V[k]` behind `ohm[k]`, leads included; kBlocked = open.
struct Linear {
  std::vector<double> source_V;
  std::vector<double> ohm;
};

bool closed(const Linear& network, std::size_t k) { return network.ohm[k] < Branch::kBlocked; }

/// Current in a chain from battery k to k + 1: what the batteries up to k give, less what is taken off there.
double chain_A(double given_A, double total_A, std::size_t taken_at, std::size_t k) {
  return taken_at <= k ? given_A - total_A : given_A;
}

/// Mesh equations between neighbouring closed batteries a < b, in S, the sum of the currents up to a:
///   -R_a S_prev + (R_a + R_b + sum of links) S - R_b S_next = E_a - E_b + I * (links beyond a take-off).
/// The matrix is tridiagonal and diagonally dominant, links of no resistance are allowed.
std::vector<double> currents_of(const Linear& network, const Wiring& wiring, double total_A) {
  const std::size_t count = network.ohm.size();
  std::vector<std::size_t> on;
  for (std::size_t k = 0; k < count; ++k) {
    if (closed(network, k)) on.push_back(k);
  }
  std::vector<double> current_A(count, 0.0);
  if (on.empty()) return current_A;
  const std::size_t meshes = on.size() - 1;
  std::vector<double> upper(meshes, 0.0);  // forward sweep: S_j = known_j + upper_j S_(j+1)
  std::vector<double> known(meshes, 0.0);
  for (std::size_t j = 0; j < meshes; ++j) {
    const std::size_t a = on[j];
    const std::size_t b = on[j + 1];
    double diagonal = network.ohm[a] + network.ohm[b];
    double right = network.source_V[a] - network.source_V[b];
    for (std::size_t k = a; k < b; ++k) {
      diagonal += wiring.positive_link_ohm[k] + wiring.negative_link_ohm[k];
      if (wiring.positive_at <= k) right += total_A * wiring.positive_link_ohm[k];
      if (wiring.negative_at <= k) right += total_A * wiring.negative_link_ohm[k];
    }
    if (j > 0) {
      diagonal -= network.ohm[a] * upper[j - 1];
      right += network.ohm[a] * known[j - 1];
    }
    upper[j] = network.ohm[b] / diagonal;
    known[j] = right / diagonal;
  }
  double sum_A = total_A;
  for (std::size_t j = meshes; j-- > 0;) {
    const double before_A = known[j] + upper[j] * sum_A;
    current_A[on[j + 1]] = sum_A - before_A;
    sum_A = before_A;
  }
  current_A[on[0]] = sum_A;
  return current_A;
}

/// Voltage between the poles of every place in the row, leads included, and of the take-off.
struct Voltages {
  std::vector<double> across_V;
  double takeoff_V = 0.0;
};

Voltages voltages_of(const Linear& network, const Wiring& wiring, const std::vector<double>& current_A,
                     double total_A) {
  const std::size_t count = network.ohm.size();
  // Potentials along the chains against their own first pole; the two chains are then tied by one battery.
  std::vector<double> positive_V(count, 0.0);
  std::vector<double> negative_V(count, 0.0);
  double given_A = 0.0;
  for (std::size_t k = 0; k + 1 < count; ++k) {
    given_A += current_A[k];
    positive_V[k + 1] =
        positive_V[k] - wiring.positive_link_ohm[k] * chain_A(given_A, total_A, wiring.positive_at, k);
    negative_V[k + 1] =
        negative_V[k] + wiring.negative_link_ohm[k] * chain_A(given_A, total_A, wiring.negative_at, k);
  }
  Voltages voltages;
  voltages.across_V.assign(count, 0.0);
  std::size_t tied = 0;
  while (tied < count && !closed(network, tied)) ++tied;
  if (tied == count) return voltages;
  const double tie_V =
      network.source_V[tied] - network.ohm[tied] * current_A[tied] - positive_V[tied] + negative_V[tied];
  for (std::size_t k = 0; k < count; ++k) voltages.across_V[k] = tie_V + positive_V[k] - negative_V[k];
  voltages.takeoff_V = tie_V + positive_V[wiring.positive_at] - negative_V[wiring.negative_at];
  return voltages;
}

double link_loss_W(const Wiring& wiring, const std::vector<double>& current_A, double total_A) {
  double loss_W = 0.0;
  double given_A = 0.0;
  for (std::size_t k = 0; k < current_A.size(); ++k) {
    loss_W += wiring.lead_ohm[k] * current_A[k] * current_A[k];
    if (k + 1 == current_A.size()) break;
    given_A += current_A[k];
    const double positive_A = chain_A(given_A, total_A, wiring.positive_at, k);
    const double negative_A = chain_A(given_A, total_A, wiring.negative_at, k);
    loss_W += wiring.positive_link_ohm[k] * positive_A * positive_A +
              wiring.negative_link_ohm[k] * negative_A * negative_A;
  }
  return loss_W;
}

/// Resistance seen from the take-off: the fall of its voltage at one ampere with all sources at nought.
double ohm_of(const Linear& network, const Wiring& wiring) {
  Linear passive = network;
  std::fill(passive.source_V.begin(), passive.source_V.end(), 0.0);
  return -voltages_of(passive, wiring, currents_of(passive, wiring, 1.0), 1.0).takeoff_V;
}

/// The network with a direction assumed for every battery.
Linear directed(const std::vector<Branch>& branches, const Wiring& wiring,
                const std::vector<bool>& discharging) {
  Linear network;
  network.source_V.reserve(branches.size());
  network.ohm.reserve(branches.size());
  for (std::size_t k = 0; k < branches.size(); ++k) {
    network.source_V.push_back(branches[k].source_V);
    const double ohm = discharging[k] ? branches[k].discharge_ohm : branches[k].charge_ohm;
    network.ohm.push_back(ohm + wiring.lead_ohm[k]);
  }
  return network;
}

bool any_closed(const Linear& network) {
  for (std::size_t k = 0; k < network.ohm.size(); ++k) {
    if (closed(network, k)) return true;
  }
  return false;
}

/// With every battery open on the side assumed, turns the one that the total would reach first to the side on
/// which it conducts: of those that may discharge the highest, else of those that may charge the lowest.
void close_one(const std::vector<Branch>& branches, double total_A, std::vector<bool>& discharging) {
  const std::size_t none = branches.size();
  std::size_t highest = none;
  std::size_t lowest = none;
  for (std::size_t k = 0; k < branches.size(); ++k) {
    const double here_V = branches[k].source_V;
    if (branches[k].discharge_ohm < Branch::kBlocked &&
        (highest == none || here_V > branches[highest].source_V)) {
      highest = k;
    }
    if (branches[k].charge_ohm < Branch::kBlocked && (lowest == none || here_V < branches[lowest].source_V)) {
      lowest = k;
    }
  }
  if (highest != none && total_A >= 0.0) {
    discharging[highest] = true;
  } else if (lowest != none) {
    discharging[lowest] = false;
  }
}

/// True if the direction assumed for battery k contradicts the current, or for an open one the voltage.
bool contradicts(const Linear& network, const std::vector<bool>& discharging,
                 const std::vector<double>& current_A, const Voltages& voltages, std::size_t k) {
  // Rounding must not turn a battery back and forth.
  constexpr double kSlack_V = 1e-13;
  const double above_V = network.source_V[k] - voltages.across_V[k];
  const double slack_V = kSlack_V * std::fabs(network.source_V[k]);
  if (closed(network, k)) {
    const double fall_V = network.ohm[k] * current_A[k];
    return discharging[k] ? fall_V < -slack_V : fall_V > slack_V;
  }
  return discharging[k] ? above_V < -slack_V : above_V > slack_V;
}

}  // namespace

Wiring same_end(std::size_t count, double link_ohm) {
  Wiring wiring;
  const std::size_t links = count > 0 ? count - 1 : 0;
  wiring.positive_link_ohm.assign(links, link_ohm);
  wiring.negative_link_ohm.assign(links, link_ohm);
  wiring.lead_ohm.assign(count, 0.0);
  return wiring;
}

Wiring diagonal(std::size_t count, double link_ohm) {
  Wiring wiring = same_end(count, link_ohm);
  wiring.negative_at = count > 0 ? count - 1 : 0;
  return wiring;
}

Wiring bus_bars(std::vector<double> lead_ohm) {
  Wiring wiring = same_end(lead_ohm.size(), 0.0);
  wiring.lead_ohm = std::move(lead_ohm);
  return wiring;
}

Flow flow(const std::vector<Branch>& branches, const Wiring& wiring, double total_A) {
  const std::size_t count = branches.size();
  Flow result;
  result.current_A.assign(count, 0.0);
  bool possible = false;
  for (const Branch& b : branches) {
    const bool discharges = b.discharge_ohm < Branch::kBlocked;
    const bool charges = b.charge_ohm < Branch::kBlocked;
    possible = possible || (total_A > 0.0 ? discharges : total_A < 0.0 ? charges : discharges || charges);
  }
  if (!possible) {
    result.carried = total_A == 0.0;
    return result;
  }
  std::vector<bool> discharging(count, total_A >= 0.0);
  // All contradictions at once settle in a few rounds; should they go round in a circle, the first one alone
  // does not (least-index pivoting of a linear complementarity problem, Murty 1974, from memory).
  const std::size_t together = 2 * count + 4;
  const std::size_t last = together + (std::size_t{1} << std::min<std::size_t>(count + 2, 16));
  for (std::size_t round = 0; round < last; ++round) {
    Linear network = directed(branches, wiring, discharging);
    if (!any_closed(network)) {
      close_one(branches, total_A, discharging);
      network = directed(branches, wiring, discharging);
    }
    result.current_A = currents_of(network, wiring, total_A);
    const Voltages voltages = voltages_of(network, wiring, result.current_A, total_A);
    result.voltage_V = voltages.takeoff_V;
    bool settled = true;
    for (std::size_t k = 0; k < count; ++k) {
      const bool open_both_ways =
          branches[k].discharge_ohm == Branch::kBlocked && branches[k].charge_ohm == Branch::kBlocked;
      if (open_both_ways || !contradicts(network, discharging, result.current_A, voltages, k)) continue;
      discharging[k] = !discharging[k];
      settled = false;
      if (round >= together) break;
    }
    if (settled) break;
  }
  result.slope_ohm = ohm_of(directed(branches, wiring, discharging), wiring);
  result.link_loss_W = link_loss_W(wiring, result.current_A, total_A);
  return result;
}

Sharing share_out(const std::vector<Branch>& branches, const Wiring& wiring) {
  const Linear network = directed(branches, wiring, std::vector<bool>(branches.size(), true));
  Linear passive = network;
  std::fill(passive.source_V.begin(), passive.source_V.end(), 0.0);
  Sharing sharing;
  sharing.share = currents_of(passive, wiring, 1.0);
  sharing.circulating_A = currents_of(network, wiring, 0.0);
  sharing.source_V = voltages_of(network, wiring, sharing.circulating_A, 0.0).takeoff_V;
  sharing.ohm = -voltages_of(passive, wiring, sharing.share, 1.0).takeoff_V;
  return sharing;
}

double largest_share(const Sharing& sharing) {
  return *std::max_element(sharing.share.begin(), sharing.share.end());
}

double derated_A(const Sharing& sharing, const std::vector<double>& limit_A) {
  double total_A = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < limit_A.size(); ++k) {
    const double share = std::fabs(sharing.share[k]);
    if (share > 0.0) total_A = std::min(total_A, limit_A[k] / share);
  }
  return total_A;
}

double equalising_A(const Branch& first, const Branch& second, double link_ohm) {
  const bool from_first = first.source_V >= second.source_V;
  const double loop_ohm = from_first ? first.discharge_ohm + second.charge_ohm + link_ohm
                                     : first.charge_ohm + second.discharge_ohm + link_ohm;
  return (first.source_V - second.source_V) / loop_ohm;
}

GroupTerminal group_terminal(const std::vector<Branch>& branches, const Wiring& wiring, double reference_A) {
  GroupTerminal terminal;
  terminal.source_V = flow(branches, wiring, 0.0).voltage_V;
  const Flow out = flow(branches, wiring, reference_A);
  const Flow in = flow(branches, wiring, -reference_A);
  terminal.discharge_ohm = out.carried ? (terminal.source_V - out.voltage_V) / reference_A : Branch::kBlocked;
  terminal.charge_ohm = in.carried ? (in.voltage_V - terminal.source_V) / reference_A : Branch::kBlocked;
  return terminal;
}

double short_circuit_A(double full_V, double bank_ohm, double path_ohm) {
  return full_V / (bank_ohm + path_ohm);
}

TwoPoint two_point(double low_A, double low_V, double high_A, double high_V) {
  TwoPoint source;
  source.ohm = (low_V - high_V) / (high_A - low_A);
  source.source_V = low_V + source.ohm * low_A;
  source.short_circuit_A = source.source_V / source.ohm;
  return source;
}

}  // namespace voltwright::bank
