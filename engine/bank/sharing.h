#pragma once
// Batteries in parallel as a network of sources, resistances and links: who carries how much.
// Equations: docs/method/parallel.md.
#include <cstddef>
#include <limits>
#include <vector>

namespace voltwright::bank {

/// One battery as the network sees it: V = source_V - ohm I, discharge positive, with a resistance for each
/// direction. kBlocked as a resistance: no current flows that way.
struct Branch {
  static constexpr double kBlocked = std::numeric_limits<double>::infinity();
  double source_V = 0.0;
  double discharge_ohm = 0.0;  // > 0
  double charge_ohm = 0.0;     // > 0
};

/// How n batteries standing in a row are joined. Chain positions count from 0.
struct Wiring {
  std::vector<double> positive_link_ohm;  // n - 1, between the positive poles of neighbours, >= 0
  std::vector<double> negative_link_ohm;  // n - 1
  std::vector<double> lead_ohm;           // n, of a battery's own leads, both poles together, >= 0
  std::size_t positive_at = 0;            // battery at whose positive pole the main cable is taken off
  std::size_t negative_at = 0;
};

/// Both main cables at the first battery of a row with equal links in both chains [ohm a link].
Wiring same_end(std::size_t count, double link_ohm);

/// Main cables at opposite ends of the row.
Wiring diagonal(std::size_t count, double link_ohm);

/// Every battery with its own leads to a common pair of bars or posts.
/// @param lead_ohm  of both leads of each battery together, one value a battery
Wiring bus_bars(std::vector<double> lead_ohm);

/// Currents for one total current.
struct Flow {
  bool carried = true;  // false: nothing is closed that could carry the total; then all is 0
  std::vector<double> current_A;
  double voltage_V = 0.0;    // at the take-off
  double slope_ohm = 0.0;    // fall of voltage_V per ampere of total, as long as no battery changes direction
  double link_loss_W = 0.0;  // in links and leads
};

/// Currents of all batteries for a total current (discharge positive). The resistance of a battery depends on
/// the direction of its own current, so directions are tried until they agree with the currents.
/// @pre  one branch or more, sizes of `wiring` as stated there
Flow flow(const std::vector<Branch>& branches, const Wiring& wiring, double total_A);

/// What flows for any total: current of battery k = circulating_A[k] + share[k] * total.
struct Sharing {
  std::vector<double> share;          // of the total current, sum 1
  std::vector<double> circulating_A;  // between the batteries at no total current, sum 0
  double source_V = 0.0;              // voltage at the take-off at no current
  double ohm = 0.0;                   // seen from the take-off
};

/// The linear network of batteries with one resistance each (`discharge_ohm`; `charge_ohm` is not looked at).
/// @pre  no battery blocked
Sharing share_out(const std::vector<Branch>& branches, const Wiring& wiring);

/// Largest of the shares.
double largest_share(const Sharing& sharing);

/// Total current [A] at which the first battery reaches its limit, circulating currents left out:
/// least of limit / share. For equal limits: the limit of one over the largest share.
/// @param limit_A  one a battery, > 0
double derated_A(const Sharing& sharing, const std::vector<double>& limit_A);

/// Current [A] between two batteries at the moment they are joined: (E1 - E2) / (R1 + R2 + Rl), positive from
/// the first to the second.
double equalising_A(const Branch& first, const Branch& second, double link_ohm);

/// Parallel batteries seen as one bank: V = source_V - ohm I.
struct GroupTerminal {
  double source_V = 0.0;
  double discharge_ohm = 0.0;  // Branch::kBlocked if none may discharge
  double charge_ohm = 0.0;
};

/// The group between its poles. Exact at no current and at `reference_A` in both directions, and at every
/// current if the batteries are alike; otherwise pass the current found as the next reference until it stays.
/// @param reference_A  > 0
GroupTerminal group_terminal(const std::vector<Branch>& branches, const Wiring& wiring, double reference_A);

/// Prospective short-circuit current [A]: E_full / (R_bank + R_path), an upper bound if R_bank is the
/// resistance without relaxation of a warm, full bank. Electronic protection must not be credited with
/// breaking it.
double short_circuit_A(double full_V, double bank_ohm, double path_ohm);

/// Source behind a lead-acid battery's terminals from two points of its curve.
struct TwoPoint {
  double ohm = 0.0;
  double source_V = 0.0;
  double short_circuit_A = 0.0;
};

/// Two-point method: U_a after 20 s at four times and U_b after 5 s at twenty times the ten-hour current.
/// @pre  high_A > low_A, low_V > high_V (voltages at these currents)
TwoPoint two_point(double low_A, double low_V, double high_A, double high_V);

}  // namespace voltwright::bank
