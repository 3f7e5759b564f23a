// Batteries side by side.
#include <fmt/format.h>

#include "app/myths/bench.h"
#include "engine/bank/sharing.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Side by side";
constexpr double kWarm_C = 25.0;
constexpr const char* kJoining =
    "Join batteries only when both are full and their voltages agree within a tenth of a volt: otherwise "
    "hundreds of "
    "amperes may flow. Each needs a fuse of its own.";

bank::Branch branch_of(const MythBench& bench, std::string_view battery) {
  const auto t = bank::terminal<double>(bench.bank({.battery = battery}), at_rest(0.9, 0.0, kWarm_C));
  return {t.source_V, t.discharge_ohm, t.charge_ohm};
}

Myth never_mix_sizes(const MythBench& bench) {
  const bank::Branch small = branch_of(bench, "lfp-12v-100ah");
  // The same cells and protection twice: resistance goes by size.
  const bank::Branch large{small.source_V, 0.5 * small.discharge_ohm, 0.5 * small.charge_ohm};
  constexpr double kLimit_A = 100.0;
  const auto sharing = bank::share_out({small, large}, bank::bus_bars({0.0, 0.0}));
  const double total_A = bank::derated_A(sharing, {kLimit_A, kLimit_A});
  const auto as_bought =
      bank::share_out({small, branch_of(bench, "lfp-12v-200ah")}, bank::bus_bars({0.0, 0.0}));
  Myth m;
  m.number = 23;
  m.id = "never-mix-sizes";
  m.family = kFamily;
  m.title = "Never join different sizes";
  m.claim = "Batteries of different capacity must never stand side by side; the small one is ruined.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = total_A;
  m.unit = "A";
  m.decimals = 0;
  m.answer = fmt::format(
      "100 and 200 Ah of one chemistry, each limited to 100 A, give {:.0f} A together: not 200 A, and no "
      "harm done.",
      total_A);
  m.working = {fmt::format("Currents divide by resistance, and the larger battery has the lower one: of 100 "
                           "A the small one carries "
                           "{:.0f} A, the large one {:.0f} A, each in proportion to its size.",
                           100.0 * sharing.share[0], 100.0 * sharing.share[1]),
               fmt::format("The large one is at its limit of 100 A when the two give {:.0f} A; then its "
                           "protection opens and the small "
                           "one is left with it all.",
                           total_A),
               fmt::format("Protection and terminals do not shrink with size: with 2 mΩ of them in each, the "
                           "large one carries "
                           "{:.0f} % over a minute, and the limit comes at {:.0f} A.",
                           100.0 * as_bought.share[1], bank::derated_A(as_bought, {kLimit_A, kLimit_A})),
               "This holds for one chemistry, leads of equal resistance and a joining at equal voltage."};
  m.nearly_true =
      "In series it is true: the smallest sets the capacity. And a maker's warranty may say never.";
  m.caution = kJoining;
  m.sources = {{"", "Ohm's and Kirchhoff's laws; see docs/method/parallel.md"},
               {"", "100 A limits on 100 and 200 Ah: a practitioner's report, restated"}};
  return m;
}

Myth diagonal_cures_all(const MythBench& bench) {
  constexpr std::size_t kCount = 4;
  const bank::Branch branch = branch_of(bench, "lfp-12v-100ah");
  const std::vector<bank::Branch> row(kCount, branch);
  const auto ratio = [&](const bank::Wiring& wiring) {
    const auto share = bank::share_out(row, wiring).share;
    return share.front() / share[1];
  };
  const double alike = ratio(bank::diagonal(kCount, branch.discharge_ohm));
  const double tenth = ratio(bank::diagonal(kCount, 0.1 * branch.discharge_ohm));
  const auto same_end = bank::share_out(row, bank::same_end(kCount, 0.1 * branch.discharge_ohm)).share;
  Myth m;
  m.number = 24;
  m.id = "diagonal-cures-all";
  m.family = kFamily;
  m.title = "Diagonal wiring makes them share alike";
  m.claim = "Take plus from one end and minus from the other, and all batteries carry the same.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = alike;
  m.unit = "times";
  m.decimals = 1;
  m.answer = fmt::format(
      "With four batteries and links as resistive as they are, the outer ones carry {:.1f} times as much as "
      "the inner ones.",
      alike);
  m.working = {"For four alike on the diagonal, outer / inner = 1 + 2 × link / battery.",
               fmt::format("An iron-phosphate battery of 100 Ah has {:.1f} mΩ over a minute. Links of as "
                           "much: {:.1f} times. Links "
                           "of a tenth, {:.2f} mΩ: {:.1f} times.",
                           1e3 * branch.discharge_ohm, alike, 100.0 * branch.discharge_ohm, tenth),
               fmt::format("Both cables at the same end, links of a tenth: {:.1f} times between the first "
                           "and the last. So the "
                           "diagonal is better, and bars with leads of equal length are better still.",
                           same_end.front() / same_end.back())};
  m.nearly_true =
      "For two batteries it is exact. For four, links of a twentieth of the battery keep them within a "
      "tenth.";
  m.caution = kJoining;
  m.sources = {{"", "Ohm's and Kirchhoff's laws; see docs/method/parallel.md"},
               {"lfpCircuit", "resistance of the iron-phosphate record"}};
  return m;
}

}  // namespace

void add_parallel_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(never_mix_sizes(bench));
  list.push_back(diagonal_cures_all(bench));
}

}  // namespace voltwright::app
