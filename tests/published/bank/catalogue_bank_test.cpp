// Catalogue batteries driven by the engine against published behaviour of their kinds.
#include <gtest/gtest.h>

#include <tuple>

#include "engine/bank/protection.h"
#include "engine/season/setup.h"
#include "tests/published/catalogue/curve_at.h"

namespace voltwright::published {
namespace {

struct Driven {
  const cell::Chemistry& kind;
  const bank::Battery& battery;
  cell::Tables tables;

  Driven(const char* chemistry_id, const char* battery_id)
      : kind(chemistry(chemistry_id)),
        battery(*catalogue().battery(battery_id)),
        tables(cell::make_tables(kind)) {}
};

/// Hours until a voltage per cell or the end of the available level is reached at a constant current and 25
/// degC, held by a large heat loss.
double hours_of(const Driven& d, double current_A, double end_V) {
  const auto p = bank::assemble(d.battery, d.kind, d.tables, {1, 1, 0.0}, 0.0, 1e6, 60.0);
  bank::State<double> s;
  s.temperature_C = 25.0;
  for (int minute = 0; minute < 6000; ++minute) {
    const auto t = bank::terminal<double>(p, s);
    const double bank_V = t.source_V - t.discharge_ohm * current_A;
    if (t.available <= t.usable_floor || bank_V <= end_V * p.cells) return minute / 60.0;
    bank::advance<double>(p, t, s, current_A, 25.0, 0.0);
  }
  return 1e9;
}

// The meaning of a 20 h rating: at a twentieth of its ampere-hours a battery lasts 20 h, whatever exponent is
// put into Peukert's law, to the end voltage that its record is fitted to. Tolerance 1 %: the fit's residual
// of 0.1 % and what side reaction and self-discharge take (0.1 to 0.4 %).
TEST(CatalogueBank, TwentyHoursAtTheTwentyHourCurrent) {
  for (const auto& [kind, id, end_V] : {std::tuple{"agm", "agm-12v-200ah", 1.80},
                                        {"gel", "gel-12v-100ah", 1.75},
                                        {"flooded", "flooded-6v-225ah", 1.75}}) {
    const Driven d(kind, id);
    EXPECT_NEAR(hours_of(d, d.battery.capacity_Ah / 20.0, end_V), 20.0, 0.2) << id;
  }
}

// Median of 26 glass-mat data sheets, about 2020: 0.614 of the 20 h capacity in one hour, 0.839 in five,
// 0.939 in ten (bib:genericBatteries), to 1.80 V. Tolerance 1 %: residual of the fit and one step of a
// minute.
TEST(CatalogueBank, GlassMatAtHigherRates) {
  const Driven d("agm", "agm-12v-200ah");
  EXPECT_NEAR(hours_of(d, 0.614 * d.battery.capacity_Ah, 1.80), 1.0, 0.02);
  EXPECT_NEAR(hours_of(d, 0.839 * d.battery.capacity_Ah / 5.0, 1.80), 5.0, 0.05);
  EXPECT_NEAR(hours_of(d, 0.939 * d.battery.capacity_Ah / 10.0, 1.80), 10.0, 0.1);
}

// Battery University BU-410, table 1: graphite lithium cells take no charge below freezing, lead-acid at most
// 0.3 of its capacity per hour. The block is released 3 K above (common practice, no source).
TEST(CatalogueBank, ChargingInTheCold) {
  const Driven lithium("lfp", "lfp-12v-100ah");
  const season::Installation plain;
  const auto lfp = season::make_system(lithium.battery, lithium.kind, lithium.tables, {1, 1, 0.0}, plain);
  bank::GuardState<double> latch;
  const auto allowed = [](const season::System<double>& system, bank::GuardState<double>& latches, double t) {
    bank::State<double> state;
    state.temperature_C = t;
    return bank::permit<double>(system.guard, latches, system.bank, state);
  };
  EXPECT_GT(allowed(lfp, latch, 10.0).charge_limit_A, 0.0);
  EXPECT_EQ(allowed(lfp, latch, -0.1).charge_limit_A, 0.0);
  EXPECT_TRUE(allowed(lfp, latch, -0.1).discharge_allowed);
  EXPECT_EQ(allowed(lfp, latch, 2.9).charge_limit_A, 0.0);
  EXPECT_GT(allowed(lfp, latch, 3.1).charge_limit_A, 0.0);

  const Driven lead("agm", "agm-12v-200ah");
  const auto agm = season::make_system(lead.battery, lead.kind, lead.tables, {1, 2, 0.0}, plain);
  bank::GuardState<double> other;
  EXPECT_LE(allowed(agm, other, -1.0).charge_limit_A, 0.3 * 400.0 + 1e-9);
  EXPECT_GT(allowed(agm, other, -1.0).charge_limit_A, 0.0);
}

}  // namespace
}  // namespace voltwright::published
