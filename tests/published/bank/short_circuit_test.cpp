// Prospective short-circuit currents: worked examples, a published note, a case of practice.
#include <gtest/gtest.h>

#include <utility>
#include <vector>

#include "engine/bank/sharing.h"

namespace voltwright::published {
namespace {

using bank::Branch;

std::vector<Branch> alike(std::size_t count, double ohm) {
  return std::vector<Branch>(count, Branch{13.3, ohm, ohm});
}

// Packs of four cells of 0.25 mohm with 0.5 mohm of links and electronics, 13.3 V: 8867, 17733 and 35467 A
// for one, two and four (worked example of the same sheet).
TEST(ShortCircuit, PacksAdd) {
  for (const auto& [count, wanted_A] :
       {std::pair<std::size_t, double>{1, 8867.0}, {2, 17733.0}, {4, 35467.0}}) {
    const auto sharing = bank::share_out(alike(count, 4.0 * 0.25e-3 + 0.5e-3),
                                         bank::bus_bars(std::vector<double>(count, 0.0)));
    EXPECT_NEAR(bank::short_circuit_A(sharing.source_V, sharing.ohm, 0.0), wanted_A, 0.5);
  }
  // After 3 m there and back of 16 mm2 at 1.21 mohm/m: 3037 A at the panel.
  EXPECT_NEAR(bank::short_circuit_A(13.3, 0.75e-3, 3.0 * 1.21e-3), 3037.0, 2.0);
}

// Six 6 V units of 2400 A as two in series, three side by side: 7200 A (published note on interrupting
// ratings: parallel adds, series does not).
TEST(ShortCircuit, SeriesDoesNotAdd) {
  const double unit_ohm = 6.3 / 2400.0;
  const Branch string{2.0 * 6.3, 2.0 * unit_ohm, 2.0 * unit_ohm};
  const auto sharing = bank::share_out({string, string, string}, bank::bus_bars({0.0, 0.0, 0.0}));
  EXPECT_NEAR(bank::short_circuit_A(sharing.source_V, sharing.ohm, 0.0), 7200.0, 1e-6);
}

// A small camper with two iron-phosphate batteries of about 5 mohm each with their protection: 13.3 V over
// 2.5 mohm, about 5 kA, more than a fuse for lead-acid of this size need break (a case of practice).
TEST(ShortCircuit, TwoIronPhosphateBatteries) {
  const auto sharing = bank::share_out(alike(2, 5e-3), bank::bus_bars({0.0, 0.0}));
  EXPECT_NEAR(bank::short_circuit_A(sharing.source_V, sharing.ohm, 0.0), 5320.0, 1e-6);
}

// Two-point method of a stationary lead-acid standard (from memory): 12.2 V at 40 A and 11.4 V at 200 A give
// 5.00 mohm and 2480 A.
TEST(ShortCircuit, TwoPoints) {
  const bank::TwoPoint source = bank::two_point(40.0, 12.2, 200.0, 11.4);
  EXPECT_NEAR(source.ohm, 5.00e-3, 1e-9);
  EXPECT_NEAR(source.short_circuit_A, 2480.0, 1e-6);
  EXPECT_NEAR(source.short_circuit_A, (12.2 * 200.0 - 11.4 * 40.0) / (12.2 - 11.4), 1e-6);
}

}  // namespace
}  // namespace voltwright::published
