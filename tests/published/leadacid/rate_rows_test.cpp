// Constant-current discharge of lead-acid batteries, simulated by the engine, against published rows: how
// long the voltage stays above 1.80, 1.75 or 1.60 V per cell. The residuals are printed.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <iterator>
#include <tuple>
#include <utility>

#include "tests/published/leadacid/driven_bank.h"

namespace voltwright::published {
namespace {

struct Row {
  double hours;
  double current_A;
};

// Constant-current table of a 100 Ah glass-mat block at 25 degC (bib:vrlaSheet).
constexpr Row kTo180[] = {{10.0 / 60.0, 170.4}, {15.0 / 60.0, 146.3}, {20.0 / 60.0, 127.7}, {0.5, 101.7},
                          {0.75, 77.9},         {1.0, 62.3},          {2.0, 36.3},          {3.0, 26.1},
                          {4.0, 20.6},          {5.0, 17.1},          {6.0, 14.9},          {8.0, 11.8},
                          {10.0, 9.71},         {20.0, 5.14}};
constexpr Row kTo160[] = {{10.0 / 60.0, 221.2}, {1.0, 68.6}, {5.0, 18.4}, {10.0, 10.1}, {20.0, 5.30}};
// What that block gives in 20 h to 1.80 V; its currents are taken over this and not over its label.
constexpr double kBlock_Ah = 20.0 * 5.14;
constexpr double kShortStep_s = 10.0;

/// Capacity simulated less capacity published, over the 20 h capacity.
double residual(const DrivenBank& bank, double end_V, double rate_per_h, double hours) {
  return rate_per_h * (bank.hours_to(end_V, rate_per_h) - hours);
}

void expect_rows(const DrivenBank& bank, double end_V, const Row* first, const Row* last) {
  for (const Row* row = first; row != last; ++row) {
    const double off = residual(bank, end_V, row->current_A / kBlock_Ah, row->hours);
    std::printf("  to %.2f V in %6.3f h: published %.3f of C20, simulated %+.3f\n", end_V, row->hours,
                row->current_A * row->hours / kBlock_Ah, off);
    // 2 % is the aim from 1 to 20 h. Below an hour the resistance and the fall of acid in the pores depend on
    // the current in a way that one resistance against charge does not follow: 6 %.
    EXPECT_NEAR(off, 0.0, row->hours >= 1.0 ? 0.02 : 0.06) << end_V << " V in " << row->hours << " h";
  }
}

TEST(LeadAcidRate, GlassMatTableTo180V) {
  const DrivenBank bank("agm", "agm-12v-98ah", 25.0, kShortStep_s);
  expect_rows(bank, 1.80, std::begin(kTo180), std::end(kTo180));
}

TEST(LeadAcidRate, GlassMatTableTo160V) {
  const DrivenBank bank("agm", "agm-12v-98ah", 25.0, kShortStep_s);
  expect_rows(bank, 1.60, std::begin(kTo160), std::end(kTo160));
}

// Medians of 26 glass-mat data sheets: capacity in 10, 5 and 1 h over that in 20 h, 0.939, 0.839 and 0.614
// (bib:genericBatteries). The sheets' end voltages differ; 1.80 V taken. Tolerance 1.5 %.
TEST(LeadAcidRate, GlassMatMedians) {
  const DrivenBank bank("agm", "agm-12v-200ah");
  for (const auto& [hours, share] : {std::pair{10.0, 0.939}, {5.0, 0.839}, {1.0, 0.614}}) {
    const double off = residual(bank, 1.80, share / hours, hours);
    std::printf("  median of %2.0f h: %.3f of C20, simulated %+.3f\n", hours, share, off);
    EXPECT_NEAR(off, 0.0, 0.015 * share) << hours;
  }
}

// The rating: 20 h at a twentieth of the ampere-hours. Glass mat to 1.80 V per cell as in the table above,
// gel and flooded to 1.75 V (common practice, no source); 0.5 %: what the side reaction and the
// self-discharge take in 20 h.
TEST(LeadAcidRate, TwentyHours) {
  for (const auto& [kind, id, end_V] : {std::tuple{"agm", "agm-12v-98ah", 1.80},
                                        {"gel", "gel-12v-100ah", 1.75},
                                        {"flooded", "flooded-12v-100ah", 1.75}}) {
    const DrivenBank bank(kind, id);
    EXPECT_NEAR(bank.hours_to(end_V, 1.0 / 20.0), 20.0, 0.1) << kind;
  }
}

// At the end of a slow discharge the voltage falls away: from 1.95 V per cell, 11.7 V per block, it comes to
// 1.80 V within half an hour to five hours of twenty. A curve without a knee never falls below 1.95 V.
TEST(LeadAcidRate, SlowDischargeEndsInAKnee) {
  for (const auto& [kind, id] :
       {std::pair{"agm", "agm-12v-98ah"}, {"gel", "gel-12v-100ah"}, {"flooded", "flooded-12v-100ah"}}) {
    const DrivenBank bank(kind, id);
    const double to_195_h = bank.hours_to(1.95, 1.0 / 20.0);
    const double to_180_h = bank.hours_to(1.80, 1.0 / 20.0);
    EXPECT_LT(to_195_h, 19.0) << kind;
    EXPECT_GT(to_195_h, 15.0) << kind;
    EXPECT_GT(to_180_h, to_195_h + 0.5) << kind;
    EXPECT_LT(to_180_h, 20.2) << kind;
  }
}

/// Ampere-hours and minutes that a battery carries a current.
struct Reserve {
  double capacity_Ah;
  double minutes;
};

double reserve_residual(const DrivenBank& bank, double capacity_Ah, double current_A, double hours) {
  return residual(bank, 1.75, current_A / capacity_Ah, hours);
}

// Reserve minutes at 25 A of eight flooded batteries (bib:reservePairs) and one sheet of a 330 Ah battery:
// 271, 304 and 367 Ah in 5, 10 and 100 h, 711 min at 25 A, 195 min at 75 A (bib:floodedSheet); 100 h
// capacity of a 225 Ah battery 250 Ah (bib:genericBatteries). End voltage 1.75 V (common practice, no
// source). Batteries of several makes: 7 % each, 4 % root mean square.
TEST(LeadAcidRate, FloodedReserveMinutesAndHours) {
  constexpr Reserve kReserve[] = {{85.0, 135.0},  {130.0, 225.0}, {225.0, 447.0}, {235.0, 488.0},
                                  {244.0, 530.0}, {216.0, 450.0}, {350.0, 760.0}, {105.0, 160.0}};
  constexpr double kSheet_Ah = 330.0;
  constexpr Row kSheet[] = {{5.0, 271.0 / 5.0},
                            {10.0, 304.0 / 10.0},
                            {100.0, 367.0 / 100.0},
                            {711.0 / 60.0, 25.0},
                            {195.0 / 60.0, 75.0}};
  const DrivenBank bank("flooded", "flooded-12v-100ah");
  double squares = 0.0;
  int count = 0;
  const auto check = [&](double capacity_Ah, double current_A, double hours) {
    const double off = reserve_residual(bank, capacity_Ah, current_A, hours);
    std::printf("  flooded %3.0f Ah, %5.2f A for %6.2f h: published %.3f, simulated %+.3f\n", capacity_Ah,
                current_A, hours, current_A * hours / capacity_Ah, off);
    EXPECT_NEAR(off, 0.0, 0.07) << capacity_Ah << " Ah at " << current_A << " A";
    squares += off * off;
    ++count;
  };
  for (const Reserve& row : kReserve) check(row.capacity_Ah, 25.0, row.minutes / 60.0);
  for (const Row& row : kSheet) check(kSheet_Ah, row.current_A, row.hours);
  check(225.0, 2.5, 100.0);
  EXPECT_LT(std::sqrt(squares / count), 0.04);
}

// Two gel sources that disagree by up to 0.14 of the capacity: reserve minutes at 25 A of five batteries
// (bib:reservePairs) and an undated code table of a 200 Ah block, 100 to 168 Ah in 1 to 5 h
// (bib:genericBatteries). The record lies between: above the table, below or near the minutes.
TEST(LeadAcidRate, GelLiesBetweenItsSources) {
  constexpr Reserve kReserve[] = {
      {180.0, 375.0}, {70.0, 130.0}, {95.0, 188.0}, {180.0, 388.0}, {225.0, 500.0}};
  constexpr Row kTable[] = {{1.0, 100.0}, {2.0, 65.0}, {3.0, 148.0 / 3.0}, {4.0, 40.0}, {5.0, 33.6}};
  const DrivenBank bank("gel", "gel-12v-100ah");
  for (const Reserve& row : kReserve) {
    const double off = reserve_residual(bank, row.capacity_Ah, 25.0, row.minutes / 60.0);
    std::printf("  gel %3.0f Ah, 25 A for %5.2f h: %+.3f\n", row.capacity_Ah, row.minutes / 60.0, off);
    EXPECT_GT(off, -0.12);
    EXPECT_LT(off, 0.04);
  }
  for (const Row& row : kTable) {
    const double off = reserve_residual(bank, 200.0, row.current_A, row.hours);
    std::printf("  gel 200 Ah in %1.0f h: %+.3f\n", row.hours, off);
    EXPECT_GT(off, 0.0);
    EXPECT_LT(off, 0.09);
  }
}

// Internal resistance of full glass-mat blocks, 25 rows: 97.5 C20^-0.659 mohm, one sigma 19 %; from 80 Ah
// 390 to 543 mohm Ah (bib:genericBatteries). The record scales with the capacity, which holds from 80 Ah.
TEST(LeadAcidRate, GlassMatInternalResistance) {
  for (const char* id : {"agm-12v-98ah", "agm-12v-150ah", "agm-12v-200ah"}) {
    const DrivenBank bank("agm", id);
    const double block_mohm = 1e3 * bank.terminal(bank.rested(1.0)).ohmic_ohm;
    const double published_mohm = 97.5 * std::pow(bank.capacity_Ah(), -0.659);
    std::printf("  %s: %.2f mohm, published fit %.2f\n", id, block_mohm, published_mohm);
    EXPECT_NEAR(block_mohm, published_mohm, 0.19 * published_mohm) << id;
    EXPECT_GE(block_mohm * bank.capacity_Ah(), 390.0) << id;
    EXPECT_LE(block_mohm * bank.capacity_Ah(), 543.0) << id;
  }
}

}  // namespace
}  // namespace voltwright::published
