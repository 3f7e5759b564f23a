// From batteries and wiring to a group that can be stepped, and what is wrong or risky about putting them
// side by side.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>
#include <utility>

#include "engine/bank/group.h"

namespace voltwright::bank {

namespace {

/// Shares of alike batteries further above the mean than this are worth a word; common practice, no source.
constexpr double kUneven = 1.1;

/// Three significant digits at most, none after the point from 10 on.
std::string text_of(double value) {
  std::array<char, 32> buffer{};
  const int decimals = std::fabs(value) >= 10.0 ? 0 : std::fabs(value) >= 1.0 ? 1 : 2;
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
  return {buffer.data(), end.ptr};
}

/// "38, 26, 19 and 16 A".
std::string list_of(const std::vector<double>& values, const std::string& unit) {
  std::string text;
  for (std::size_t k = 0; k < values.size(); ++k) {
    if (k > 0) text += k + 1 == values.size() ? " and " : ", ";
    text += text_of(values[k]);
  }
  return text + " " + unit;
}

base::Problem error(std::string what, std::string field, std::string given, std::string limit,
                    std::string remedy) {
  base::Problem problem;
  problem.what = std::move(what);
  problem.field = std::move(field);
  problem.given = std::move(given);
  problem.limit = std::move(limit);
  problem.remedy = std::move(remedy);
  return problem;
}

base::Problem warning(std::string what, std::string field, std::string remedy) {
  base::Problem problem = error(std::move(what), std::move(field), {}, {}, std::move(remedy));
  problem.severity = base::Severity::kWarning;
  return problem;
}

void check_ranges(const GroupSetup& setup, base::Problems& problems) {
  const std::size_t count = setup.members.size();
  const Wiring& w = setup.wiring;
  const auto negative = [](double ohm) { return !(ohm >= 0.0); };
  if (count == 0) {
    problems.push_back(error("A group needs batteries.", "members", "none", "one or more", "Give one."));
    return;
  }
  if (w.lead_ohm.size() != count || w.positive_link_ohm.size() + 1 != count ||
      w.negative_link_ohm.size() + 1 != count || w.positive_at >= count || w.negative_at >= count) {
    problems.push_back(error("The wiring is not that of this number of batteries.", "wiring",
                             std::to_string(w.lead_ohm.size()) + " leads",
                             std::to_string(count) + " leads, a link fewer in each chain",
                             "Describe a lead for every battery and a link between neighbours."));
  }
  if (std::any_of(w.lead_ohm.begin(), w.lead_ohm.end(), negative) ||
      std::any_of(w.positive_link_ohm.begin(), w.positive_link_ohm.end(), negative) ||
      std::any_of(w.negative_link_ohm.begin(), w.negative_link_ohm.end(), negative)) {
    problems.push_back(error("A link or lead has a resistance below nought.", "wiring", {}, "0 ohm or more",
                             "Give length and cross-section again."));
  }
  if (!(setup.step_s > 0.0)) {
    problems.push_back(error("A step must take time.", "step", text_of(setup.step_s), "above 0 s", {}));
  }
  for (const Member& m : setup.members) {
    if (!(m.charge >= 0.0 && m.charge <= 1.0)) {
      problems.push_back(error("The charge of " + m.battery.name + " is out of range.", "charge",
                               text_of(m.charge), "0 to 1", {}));
    }
    if (!(m.lost_capacity >= 0.0 && m.lost_capacity < 1.0)) {
      problems.push_back(error("The lost capacity of " + m.battery.name + " is out of range.",
                               "lost capacity", text_of(m.lost_capacity), "0 to under 1", {}));
    }
    if (!(m.ahead >= 0.0 && m.ahead <= 1.0 && m.weakest_below >= 0.0 && m.weakest_below < 1.0)) {
      problems.push_back(error("The cells of " + m.battery.name + " differ by what cannot be.", "cells", {},
                               "0 to under 1", {}));
    }
    if (!(m.guard.peak_A > m.guard.continuous_A && m.guard.peak_s > 0.0)) {
      problems.push_back(error("The peak current of " + m.battery.name +
                                   " must be above its continuous current and last for a time.",
                               "peak current", text_of(m.guard.peak_A) + " A",
                               "above " + text_of(m.guard.continuous_A) + " A", {}));
    }
    if (!(m.resistance_factor > 0.0 && m.heat_loss_W_K > 0.0 && m.in_series >= 1)) {
      problems.push_back(
          error("Resistance, heat loss and number in series of " + m.battery.name + " must be above nought.",
                "members", {}, "above 0", {}));
    }
  }
}

void check_kinds(const GroupSetup& setup, const cell::Chemistry& chemistry, base::Problems& problems) {
  const Member& first = setup.members.front();
  for (const Member& m : setup.members) {
    if (m.battery.chemistry != chemistry.id) {
      problems.push_back(
          error("Batteries of different chemistries must not stand in parallel: their voltages differ over "
                "the whole "
                "charge, so that one overcharges or empties the other.",
                "chemistry", m.battery.chemistry, chemistry.id,
                "Keep each chemistry as a bank of its own and charge one from the other through a DC-DC "
                "converter."));
    }
    if (m.battery.nominal_V * m.in_series != first.battery.nominal_V * first.in_series ||
        m.battery.cells_in_series * m.in_series != first.battery.cells_in_series * first.in_series) {
      problems.push_back(error("Batteries in parallel must have the same nominal voltage.", "nominal voltage",
                               text_of(m.battery.nominal_V * m.in_series) + " V",
                               text_of(first.battery.nominal_V * first.in_series) + " V",
                               "Put as many in series as give the same voltage, or convert between banks."));
    }
  }
}

Group assembled(const GroupSetup& setup, const cell::Chemistry& chemistry, const cell::Tables& tables) {
  Group group;
  group.wiring = setup.wiring;
  group.step_s = setup.step_s;
  for (const Member& m : setup.members) {
    GroupBattery b;
    const Layout layout{m.in_series, 1, m.lost_capacity, m.weakest_below};
    b.parameters = assemble(m.battery, chemistry, tables, layout, 0.0, m.heat_loss_W_K, setup.step_s);
    b.parameters.ohmic_ohm *= m.resistance_factor;
    b.parameters.fast_ohm *= m.resistance_factor;
    b.parameters.slow_ohm *= m.resistance_factor;
    b.parameters.charge_rho_ohm *= m.resistance_factor;
    b.state.charge = m.charge;
    b.state.ahead = m.ahead;
    b.state.side = m.side;
    b.state.temperature_C = b.state.enclosure_C = m.temperature_C;
    b.guard = m.guard;
    b.continuous_A = m.battery.continuous_A;
    group.batteries.push_back(b);
  }
  return group;
}

void warn_of_difference(const GroupSetup& setup, const Sharing& sharing, base::Problems& problems) {
  const Member& first = setup.members.front();
  std::string kinds;
  const auto differ = [&](const char* word, auto value) {
    if (std::all_of(setup.members.begin(), setup.members.end(),
                    [&](const Member& m) { return value(m) == value(first); })) {
      return;
    }
    kinds += (kinds.empty() ? "" : " and ") + std::string(word);
  };
  differ("size", [](const Member& m) { return m.battery.capacity_Ah; });
  differ("age", [](const Member& m) { return std::pair(m.lost_capacity, m.resistance_factor); });
  if (kinds.empty()) return;
  std::vector<double> of_100_A;
  std::vector<double> limit_A;
  double sum_A = 0.0;
  for (std::size_t k = 0; k < setup.members.size(); ++k) {
    of_100_A.push_back(100.0 * sharing.share[k]);
    limit_A.push_back(setup.members[k].battery.continuous_A);
    sum_A += limit_A.back();
  }
  problems.push_back(warning("The batteries differ in " + kinds + ": of 100 A they carry " +
                                 list_of(of_100_A, "A") + ", so that the first reaches its limit at " +
                                 text_of(derated_A(sharing, limit_A)) + " A of the bank and not at " +
                                 text_of(sum_A) + " A.",
                             "members", "Plan with the smaller current, or use batteries that are alike."));
}

void warn_of_wiring(const GroupSetup& setup, const std::vector<Branch>& branches, base::Problems& problems) {
  double mean_ohm = 0.0;
  for (const Branch& b : branches) mean_ohm += b.discharge_ohm / static_cast<double>(branches.size());
  const std::vector<Branch> alike(branches.size(), Branch{0.0, mean_ohm, mean_ohm});
  const Sharing sharing = share_out(alike, setup.wiring);
  if (largest_share(sharing) * static_cast<double>(branches.size()) <= kUneven) return;
  std::vector<double> of_100_A = sharing.share;
  for (double& a : of_100_A) a *= 100.0;
  problems.push_back(
      warning("Links and the place of the main cables alone make alike batteries carry " +
                  list_of(of_100_A, "A") + " of 100 A.",
              "wiring",
              "Take the main cables off at opposite ends of the row, or lead every battery to bus bars with "
              "cables of the same length."));
}

void warn_of_joining(const GroupSetup& setup, const Group& group, base::Problems& problems) {
  const std::vector<double> current_A = joining_A(group);
  for (std::size_t k = 0; k < current_A.size(); ++k) {
    const Member& m = setup.members[k];
    const double limit_A = current_A[k] < 0.0 ? m.guard.charge_limit_A : m.battery.continuous_A;
    if (std::fabs(current_A[k]) <= limit_A) continue;
    problems.push_back(
        warning("Joined as they are, " + text_of(std::fabs(current_A[k])) + " A flow " +
                    (current_A[k] < 0.0 ? "into " : "out of ") + m.battery.name +
                    " at once, which is good for " + text_of(limit_A) + " A.",
                "charge",
                "Charge every battery full by itself before they are joined; on a flat voltage curve an "
                "equal voltage does not show an equal charge."));
  }
}

}  // namespace

base::Problems check_group(const GroupSetup& setup, const cell::Chemistry& chemistry) {
  base::Problems problems;
  check_ranges(setup, problems);
  if (!setup.members.empty()) check_kinds(setup, chemistry, problems);
  if (base::has_error(problems)) return problems;
  const cell::Tables tables = cell::make_tables(chemistry);
  const Group group = assembled(setup, chemistry, tables);
  std::vector<Branch> branches;
  for (const GroupBattery& b : group.batteries) {
    const auto t = terminal<double>(b.parameters, b.state);
    branches.push_back({t.source_V, t.discharge_ohm, t.charge_ohm});
  }
  warn_of_difference(setup, share_out(branches, setup.wiring), problems);
  warn_of_wiring(setup, branches, problems);
  warn_of_joining(setup, group, problems);
  return problems;
}

base::Result<Group> make_group(const GroupSetup& setup, const cell::Chemistry& chemistry,
                               const cell::Tables& tables) {
  base::Problems problems = check_group(setup, chemistry);
  if (base::has_error(problems)) return problems;
  return assembled(setup, chemistry, tables);
}

}  // namespace voltwright::bank
