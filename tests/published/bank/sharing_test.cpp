// Batteries in parallel: the shares of a ladder of batteries and links, closed forms, a second solution by
// node voltages, and worked cases of practice.
#include "engine/bank/sharing.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <utility>

#include "engine/base/random.h"
#include "tests/published/bank/node_voltages.h"

namespace voltwright::published {
namespace {

using bank::Branch;
using bank::Wiring;

std::vector<Branch> alike(std::size_t count, double ohm) {
  return std::vector<Branch>(count, Branch{13.3, ohm, ohm});
}

std::vector<double> per_100_A(const std::vector<Branch>& branches, const Wiring& wiring) {
  std::vector<double> current_A = bank::share_out(branches, wiring).share;
  for (double& a : current_A) a *= 100.0;
  return current_A;
}

void expect_near(const std::vector<double>& got, const std::vector<double>& wanted, double tolerance) {
  ASSERT_EQ(got.size(), wanted.size());
  for (std::size_t k = 0; k < got.size(); ++k) EXPECT_NEAR(got[k], wanted[k], tolerance) << k;
}

struct Row {
  double battery_mohm, link_mohm;
  std::vector<double> same_end, diagonal;
};

// Shares of 100 A for equal batteries and links. Source: a sheet of worked ladder networks, solved there by
// node voltages; checked here to its two decimals.
TEST(Sharing, WorkedLadders) {
  const std::vector<Row> rows = {
      {3.0, 0.3, {54.55, 45.45}, {50.0, 50.0}},
      {3.0, 0.3, {42.71, 31.25, 26.04}, {34.38, 31.25, 34.38}},
      {3.0, 0.3, {38.54, 26.25, 19.21, 16.01}, {27.27, 22.73, 22.73, 27.27}},
      {20.0, 1.5, {35.75, 26.12, 20.40, 17.74}, {26.74, 23.26, 23.26, 26.74}},
      {3.0, 1.5, {61.90, 23.81, 9.52, 4.76}, {33.33, 16.67, 16.67, 33.33}},
      {1.0, 0.3, {53.46, 25.53, 12.93, 8.08}, {30.77, 19.23, 19.23, 30.77}},
  };
  for (const Row& row : rows) {
    const std::size_t count = row.same_end.size();
    const auto batteries = alike(count, row.battery_mohm * 1e-3);
    expect_near(per_100_A(batteries, bank::same_end(count, row.link_mohm * 1e-3)), row.same_end, 0.0051);
    expect_near(per_100_A(batteries, bank::diagonal(count, row.link_mohm * 1e-3)), row.diagonal, 0.0051);
  }
}

// Same sheet: star of 3 mohm with leads of 0.5, 0.5, 0.5, 1.0 mohm; unequal age 3, 3, 3, 4 mohm on bars.
TEST(Sharing, WorkedStars) {
  expect_near(per_100_A(alike(4, 3e-3), bank::bus_bars({0.5e-3, 0.5e-3, 0.5e-3, 1e-3})),
              {25.81, 25.81, 25.81, 22.58}, 0.0051);
  auto aged = alike(4, 3e-3);
  aged[3].discharge_ohm = 4e-3;
  expect_near(per_100_A(aged, bank::bus_bars({0.0, 0.0, 0.0, 0.0})), {26.67, 26.67, 26.67, 20.0}, 0.0051);
}

// Closed forms with a = 2 Rl / Ri, derived from Ohm's law along the row. Both leads at the first battery,
// from the far end: I_n = 1, I_k = I_(k+1) + a (sum of I_j beyond k).
TEST(Sharing, ClosedFormOfTheSameEnd) {
  for (const double link_ohm : {1e-5, 1e-4, 5e-4, 2e-3}) {
    for (std::size_t count = 2; count <= 8; ++count) {
      const double a = 2.0 * link_ohm / 3e-3;
      std::vector<double> wanted(count, 1.0);
      double beyond = 0.0;
      for (std::size_t k = count - 1; k-- > 0;) {
        beyond += wanted[k + 1];
        wanted[k] = wanted[k + 1] + a * beyond;
      }
      const double total = std::accumulate(wanted.begin(), wanted.end(), 0.0);
      for (double& share : wanted) share /= total;
      expect_near(bank::share_out(alike(count, 3e-3), bank::same_end(count, link_ohm)).share, wanted, 1e-13);
    }
  }
}

// Diagonal: three batteries, I_end / I_mid = 1 + Rl / Ri; four, 1 + 2 Rl / Ri. With Rl = 0.1 Ri of
// three 1.100.
TEST(Sharing, ClosedFormOfTheDiagonal) {
  for (const double ratio : {0.01, 0.05, 0.1, 0.5}) {
    const auto three = bank::share_out(alike(3, 3e-3), bank::diagonal(3, ratio * 3e-3)).share;
    EXPECT_NEAR(three[0] / three[1], 1.0 + ratio, 1e-12);
    const auto four = bank::share_out(alike(4, 3e-3), bank::diagonal(4, ratio * 3e-3)).share;
    EXPECT_NEAR(four[0] / four[1], 1.0 + 2.0 * ratio, 1e-12);
  }
}

struct Random {
  std::vector<Branch> branches;
  Wiring wiring;
};

Random random_row(base::RandomStream& random, std::size_t count) {
  Random r;
  r.wiring = bank::same_end(count, 0.0);
  const auto index = [&] { return static_cast<std::size_t>(random.uniform() * static_cast<double>(count)); };
  r.wiring.positive_at = index();
  r.wiring.negative_at = index();
  for (double& ohm : r.wiring.positive_link_ohm) ohm = 1e-5 + 2e-3 * random.uniform();
  for (double& ohm : r.wiring.negative_link_ohm) ohm = 1e-5 + 2e-3 * random.uniform();
  for (double& ohm : r.wiring.lead_ohm) ohm = 1e-3 * random.uniform();
  for (std::size_t k = 0; k < count; ++k) {
    const double ohm = 1e-3 + 9e-3 * random.uniform();
    r.branches.push_back({12.8 + random.uniform(), ohm, ohm});
  }
  return r;
}

// Second method: potentials of all poles from conductances (Kirchhoff), by elimination. Unequal everything,
// take-off anywhere.
TEST(Sharing, AgreesWithNodeVoltages) {
  base::RandomStream random(11);
  for (int trial = 0; trial < 500; ++trial) {
    const Random r = random_row(random, 1 + static_cast<std::size_t>(trial % 8));
    const double total_A = 400.0 * random.uniform() - 200.0;
    const NodeSolution nodes = solve_by_nodes(r.branches, r.wiring, total_A);
    const bank::Flow flow = bank::flow(r.branches, r.wiring, total_A);
    EXPECT_NEAR(flow.voltage_V, nodes.takeoff_V, 1e-9);
    const bank::Sharing sharing = bank::share_out(r.branches, r.wiring);
    EXPECT_NEAR(sharing.source_V - sharing.ohm * total_A, nodes.takeoff_V, 1e-9);
    EXPECT_NEAR(flow.slope_ohm, sharing.ohm, 1e-12);
    for (std::size_t k = 0; k < r.branches.size(); ++k) {
      EXPECT_NEAR(flow.current_A[k], nodes.current_A[k], 1e-7);
      // Superposition: what flows at no current plus the shares of the total.
      EXPECT_NEAR(sharing.circulating_A[k] + sharing.share[k] * total_A, nodes.current_A[k], 1e-7);
    }
    // What the sources give is delivered, lost in the batteries or lost in links and leads (energy).
    double given_W = 0.0;
    for (std::size_t k = 0; k < r.branches.size(); ++k) {
      const double a = flow.current_A[k];
      given_W += a * (r.branches[k].source_V - r.branches[k].discharge_ohm * a);
    }
    EXPECT_NEAR(given_W, flow.voltage_V * total_A + flow.link_loss_W, 1e-9 * (1.0 + std::fabs(given_W)));
  }
}

// Kirchhoff: shares add up to 1 and no battery of a passive row is charged by its neighbours; a row that
// looks alike from both ends shares alike; more resistance in the links shares less evenly.
TEST(Sharing, Laws) {
  base::RandomStream random(12);
  for (int trial = 0; trial < 500; ++trial) {
    const Random r = random_row(random, 2 + static_cast<std::size_t>(trial % 7));
    const auto sharing = bank::share_out(r.branches, r.wiring);
    EXPECT_NEAR(std::accumulate(sharing.share.begin(), sharing.share.end(), 0.0), 1.0, 1e-12);
    EXPECT_NEAR(std::accumulate(sharing.circulating_A.begin(), sharing.circulating_A.end(), 0.0), 0.0, 1e-9);
    if (r.wiring.positive_at == r.wiring.negative_at) {
      for (const double share : sharing.share) EXPECT_GT(share, 0.0);
    }
    EXPECT_GT(sharing.ohm, 0.0);
  }
  for (std::size_t count = 2; count <= 9; ++count) {
    const auto share = bank::share_out(alike(count, 3e-3), bank::diagonal(count, 4e-4)).share;
    for (std::size_t k = 0; k < count; ++k) EXPECT_NEAR(share[k], share[count - 1 - k], 1e-13);
    double last_same = 1.0 / static_cast<double>(count);
    double last_diagonal = last_same;
    for (const double link_ohm : {1e-4, 2e-4, 4e-4, 8e-4}) {
      const auto same = bank::share_out(alike(count, 3e-3), bank::same_end(count, link_ohm));
      const auto across = bank::share_out(alike(count, 3e-3), bank::diagonal(count, link_ohm));
      EXPECT_GT(bank::largest_share(same), last_same);
      EXPECT_GE(bank::largest_share(across), last_diagonal - 1e-12);
      EXPECT_LT(bank::largest_share(across), bank::largest_share(same));
      last_same = bank::largest_share(same);
      last_diagonal = bank::largest_share(across);
    }
  }
}

// Rule of the same sheet: links of at most 5 % of a battery's resistance keep four on the diagonal within 10
// %.
TEST(Sharing, RuleForFourOnTheDiagonal) {
  const auto share = bank::share_out(alike(4, 3e-3), bank::diagonal(4, 0.05 * 3e-3)).share;
  EXPECT_NEAR(share[0] / share[1], 1.10, 1e-12);
}

// 13.4 and 12.9 V, 5 mohm each, 1 mohm between them: 45.45 A (Ohm's law).
TEST(Sharing, EqualisingCurrent) {
  const Branch full{13.4, 5e-3, 5e-3};
  const Branch low{12.9, 5e-3, 5e-3};
  EXPECT_NEAR(bank::equalising_A(full, low, 1e-3), 45.45, 0.005);
  EXPECT_NEAR(bank::equalising_A(low, full, 1e-3), -45.45, 0.005);
  const bank::Flow joined = bank::flow({full, low}, bank::bus_bars({0.5e-3, 0.5e-3}), 0.0);
  EXPECT_NEAR(joined.current_A[0], 45.45, 0.005);
}

// A case of practice: 100 and 200 Ah side by side, resistance in inverse proportion to size, no leads. 100 A
// split 33 and 67 A; with 100 A allowed of each the bank gives 150 A and not 200. 60 and 100 Ah split 37.5
// to 62.5.
TEST(Sharing, DifferentSizes) {
  const auto of_size = [](double capacity_Ah) { return Branch{13.3, 0.4 / capacity_Ah, 0.4 / capacity_Ah}; };
  const auto sharing = bank::share_out({of_size(100.0), of_size(200.0)}, bank::bus_bars({0.0, 0.0}));
  EXPECT_NEAR(100.0 * sharing.share[0], 33.33, 0.005);
  EXPECT_NEAR(100.0 * sharing.share[1], 66.67, 0.005);
  EXPECT_NEAR(bank::derated_A(sharing, {100.0, 100.0}), 150.0, 1e-9);
  EXPECT_NEAR(100.0 / bank::largest_share(sharing), 150.0, 1e-9);
  const auto smaller = bank::share_out({of_size(60.0), of_size(100.0)}, bank::bus_bars({0.0, 0.0}));
  EXPECT_NEAR(100.0 * smaller.share[0], 37.5, 1e-9);
  EXPECT_NEAR(bank::derated_A(smaller, {100.0, 100.0}), 160.0, 1e-9);
}

// Four batteries of 100 A in a row on the same end: the limit of one over the largest share (38.54 %) is 259
// A.
TEST(Sharing, DeratedBank) {
  const auto sharing = bank::share_out(alike(4, 3e-3), bank::same_end(4, 3e-4));
  EXPECT_NEAR(bank::derated_A(sharing, {100.0, 100.0, 100.0, 100.0}), 100.0 / 0.3854, 0.05);
}

// The resistance depends on the direction and a battery may be blocked one way or both. Every assignment of
// directions is tried by node voltages; the one that agrees with its own currents is the answer.
TEST(Flow, FindsTheOnlyConsistentDirections) {
  base::RandomStream random(13);
  int circulating = 0;
  int blocked = 0;
  for (int trial = 0; trial < 3000; ++trial) {
    Random r = random_row(random, 1 + static_cast<std::size_t>(trial % 6));
    for (Branch& b : r.branches) {
      b.charge_ohm *= 1.0 + 4.0 * random.uniform();
      if (random.uniform() < 0.15) b.charge_ohm = Branch::kBlocked;
      if (random.uniform() < 0.15) b.discharge_ohm = Branch::kBlocked;
      if (b.charge_ohm == Branch::kBlocked || b.discharge_ohm == Branch::kBlocked) ++blocked;
    }
    const double total_A = trial % 5 == 0 ? 0.0 : 300.0 * random.uniform() - 150.0;
    const bank::Flow flow = bank::flow(r.branches, r.wiring, total_A);
    const Consistent wanted = only_consistent(r.branches, r.wiring, total_A);
    ASSERT_EQ(flow.carried, wanted.found) << trial;
    if (!flow.carried) continue;
    bool both_ways[2] = {false, false};
    for (std::size_t k = 0; k < r.branches.size(); ++k) {
      ASSERT_NEAR(flow.current_A[k], wanted.current_A[k], 1e-7) << trial;
      if (std::fabs(flow.current_A[k]) > 1e-3) both_ways[flow.current_A[k] > 0.0 ? 0 : 1] = true;
    }
    if (both_ways[0] && both_ways[1]) ++circulating;
  }
  EXPECT_GT(circulating, 300) << "the sample is meant to hold batteries that charge each other";
  EXPECT_GT(blocked, 300);
}

// Rows too long for that, with equal voltages among them: with the directions found, node voltages give every
// battery the current that its own voltage and resistance ask for.
TEST(Flow, LongRowsAgreeWithTheirOwnVoltages) {
  base::RandomStream random(15);
  int checked = 0;
  for (int trial = 0; trial < 2000; ++trial) {
    Random r = random_row(random, 7 + static_cast<std::size_t>(trial % 6));
    for (Branch& b : r.branches) {
      if (trial % 3 == 0) b.source_V = 12.8 + 0.2 * std::floor(3.0 * random.uniform());
      b.charge_ohm *= std::pow(10.0, 2.0 * random.uniform());
      if (random.uniform() < 0.3) b.charge_ohm = Branch::kBlocked;
      if (random.uniform() < 0.3) b.discharge_ohm = Branch::kBlocked;
    }
    const double total_A = 400.0 * random.uniform() - 200.0;
    const bank::Flow flow = bank::flow(r.branches, r.wiring, total_A);
    if (!flow.carried) continue;
    ++checked;
    std::vector<double> ohm;
    for (std::size_t k = 0; k < r.branches.size(); ++k) {
      const double a = flow.current_A[k];
      ohm.push_back(a > 0.0   ? r.branches[k].discharge_ohm
                    : a < 0.0 ? r.branches[k].charge_ohm
                              : Branch::kBlocked);
    }
    const NodeSolution nodes = solve_by_nodes(r.branches, ohm, r.wiring, total_A);
    for (std::size_t k = 0; k < r.branches.size(); ++k) {
      const Branch& b = r.branches[k];
      const double above_V = b.source_V - nodes.across_V[k];
      const double way_ohm = above_V > 0.0 ? b.discharge_ohm : b.charge_ohm;
      const double wanted_A = above_V / (way_ohm + r.wiring.lead_ohm[k]);
      ASSERT_NEAR(flow.current_A[k], wanted_A, 1e-6) << trial;
    }
  }
  EXPECT_GT(checked, 1900);
}

// A bank of parallel batteries as one source: exact at rest and at the current it was asked for.
TEST(GroupTerminal, ExactAtRestAndAtTheReference) {
  base::RandomStream random(14);
  for (int trial = 0; trial < 200; ++trial) {
    Random r = random_row(random, 2 + static_cast<std::size_t>(trial % 5));
    for (Branch& b : r.branches) b.charge_ohm *= 1.0 + 2.0 * random.uniform();
    const auto t = bank::group_terminal(r.branches, r.wiring, 80.0);
    EXPECT_NEAR(t.source_V, bank::flow(r.branches, r.wiring, 0.0).voltage_V, 1e-12);
    EXPECT_NEAR(t.source_V - 80.0 * t.discharge_ohm, bank::flow(r.branches, r.wiring, 80.0).voltage_V, 1e-10);
    EXPECT_NEAR(t.source_V + 80.0 * t.charge_ohm, bank::flow(r.branches, r.wiring, -80.0).voltage_V, 1e-10);
  }
  const auto alike_batteries = bank::group_terminal(alike(4, 3e-3), bank::bus_bars({0, 0, 0, 0}), 10.0);
  EXPECT_NEAR(alike_batteries.discharge_ohm, 0.75e-3, 1e-12);
  Branch shut{13.3, Branch::kBlocked, 3e-3};
  const auto one_way = bank::group_terminal({shut, shut}, bank::bus_bars({0.0, 0.0}), 10.0);
  EXPECT_EQ(one_way.discharge_ohm, Branch::kBlocked);
  EXPECT_NEAR(one_way.charge_ohm, 1.5e-3, 1e-12);
}

}  // namespace
}  // namespace voltwright::published
