// Two-tank availability of Manwell and McGowan 1993: the bank's step against the closed forms of
// engine/cell/two_tank.h, whose published numbers are in tests/published/cells/checks.json.
#include "engine/cell/two_tank.h"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

#include "tests/published/bank/plain_bank.h"

namespace voltwright::published {
namespace {

PlainBank tanks(double share, double exchange_per_h, double full_Ah) {
  cell::Chemistry c = plain_chemistry(2.0);
  c.availability = {share, exchange_per_h, 1.0};
  return {c, full_Ah};
}

double available_Ah(const PlainBank& plain, const bank::State<double>& s) {
  const double c = plain.chemistry.availability.fraction;
  return c * plain.battery.capacity_Ah * (s.charge - (1.0 - c) * s.imbalance);
}
bank::State<double> filled(const PlainBank& plain, double first_Ah, double second_Ah) {
  const double c = plain.chemistry.availability.fraction;
  const double full = plain.battery.capacity_Ah;
  bank::State<double> s;
  s.charge = (first_Ah + second_Ah) / full;
  s.imbalance = second_Ah / ((1.0 - c) * full) - first_Ah / (c * full);
  return s;
}

// At the current of the closed form for a duration the bank's available tank is empty at its end. Tolerance
// 1e-9 of the content.
TEST(TwoTanks, CapacityAgainstTime) {
  const PlainBank plain = tanks(0.35, 0.6, 120.0);
  for (const double hours : {1e-4, 1.0, 5.0, 20.0, 1e5}) {
    const double current_A = 120.0 * cell::capacity_in_hours(plain.chemistry.availability, hours) / hours;
    const auto p = plain.parameters(hours * 3600.0);
    bank::State<double> s;
    run(p, s, current_A);
    EXPECT_NEAR(available_Ah(plain, s), 0.0, 1e-7) << hours << " h";
    EXPECT_NEAR(cell::hours_at(plain.chemistry.availability, current_A / 120.0), hours, 1e-9 * hours);
  }
}

// The largest current of a step empties the available tank of the bank in that step, or fills it, from any
// content. Tolerance 1e-9 of the content.
TEST(TwoTanks, LargestCurrents) {
  const PlainBank plain = tanks(0.35, 0.6, 120.0);
  const auto& kind = plain.chemistry.availability;
  for (const double hours : {1.0 / 60.0, 1.0, 8.0}) {
    const auto p = plain.parameters(hours * 3600.0);
    for (const auto& [first_Ah, second_Ah] : {std::pair{42.0, 78.0}, {29.634956, 70.365044}, {5.0, 60.0}}) {
      const cell::TankContent content{first_Ah / 120.0, second_Ah / 120.0};
      bank::State<double> emptied = filled(plain, first_Ah, second_Ah);
      run(p, emptied, 120.0 * cell::largest_discharge(kind, content, hours));
      EXPECT_NEAR(available_Ah(plain, emptied), 0.0, 1e-7) << hours << " h";
      bank::State<double> full = filled(plain, first_Ah, second_Ah);
      const double charge_A = 120.0 * cell::largest_charge(kind, content, hours);
      EXPECT_LE(charge_A, 0.0);
      // The engine lets no more in than the whole holds, which the closed form does not ask.
      if (first_Ah + second_Ah - charge_A * hours > 120.0) continue;
      run(p, full, charge_A);
      EXPECT_NEAR(available_Ah(plain, full), 42.0, 1e-7) << hours << " h";
    }
  }
}

// With an open-circuit voltage that rises in a straight line the mean voltage of a step is the mean over the
// closed form of the available level: Simpson's rule over 600 parts, steps of a minute and of an hour,
// discharge, rest and charge. Tolerance 1e-9 V.
TEST(TwoTanks, MeanVoltageOfAStep) {
  cell::Chemistry c = plain_chemistry(2.0);
  c.ocv_V = {{0.0, 1.9}, {1.0, 2.2}};
  const double share = 0.35;
  const double per_h = 0.6;
  c.availability = {share, per_h, 1.0};
  const PlainBank plain(c, 120.0);
  for (const double hours : {1.0 / 60.0, 1.0}) {
    for (const double current_A : {20.0, 0.0, -10.0}) {
      bank::State<double> s;
      s.charge = 0.6;
      s.imbalance = 0.1;
      const auto level = [&](double at_h) {
        const double settled = current_A / (share * per_h * 120.0);
        const double apart = settled + (0.1 - settled) * std::exp(-per_h * at_h);
        return 0.6 - current_A * at_h / 120.0 - (1.0 - share) * apart;
      };
      constexpr int kParts = 600;
      double sum = level(0.0) + level(hours);
      for (int i = 1; i < kParts; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * level(hours * i / kParts);
      const auto t = bank::terminal<double>(plain.parameters(3600.0 * hours), s);
      EXPECT_NEAR(t.source_V - t.discharge_ohm * current_A, 1.9 + 0.3 * sum / (3.0 * kParts), 1e-9);
    }
  }
}

// Jongerden and Haverkort 2009 (constants from memory): c 0.625, conductance 4.5e-5 /s, 7200 A s. Driven
// second by second the bank lasts as long as the closed form says. Tolerance: one second.
TEST(TwoTanks, PublishedLifetimes) {
  const double share = 0.625;
  const PlainBank plain = tanks(share, cell::exchange_from_conductance(share, 4.5e-5 * 3600.0), 2.0);
  constexpr double kStep_s = 1.0;
  const auto p = plain.parameters(kStep_s);
  for (const double current_A : {0.96, 0.48}) {
    bank::State<double> s;
    double t_s = 0.0;
    for (; available_Ah(plain, s) > 0.0 && t_s < 1e5; t_s += kStep_s) run(p, s, current_A);
    EXPECT_NEAR(t_s, 3600.0 * cell::hours_at(plain.chemistry.availability, current_A / 2.0), kStep_s);
  }
}

}  // namespace
}  // namespace voltwright::published
