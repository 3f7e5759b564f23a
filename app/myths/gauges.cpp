// What a voltmeter or a battery monitor says of the charge.
#include <fmt/format.h>

#include "app/myths/bench.h"
#include "engine/bank/laboratory.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Voltage and state of charge";
constexpr double kWarm_C = 25.0;
constexpr double kHour_s = 3600.0;
constexpr double kDay_s = 86400.0;
constexpr double kLongStep_s = 600.0;

double rest_V(const bank::Parameters<double>& p, double charge, double side) {
  return bank::terminal<double>(p, at_rest(charge, side, kWarm_C)).source_V;
}

Myth surface_voltage(const MythBench& bench) {
  const auto lead = bench.bank({.battery = "flooded-12v-100ah"});
  const auto glass = bench.bank({.battery = "agm-12v-98ah"});
  const auto iron = bench.bank({.battery = "lfp-12v-100ah"});
  const double full_V = rest_V(lead, 1.0, 0.0);
  const double half_V = rest_V(lead, 0.5, 0.0);
  Myth m;
  m.number = 8;
  m.id = "high-voltage-means-full";
  m.family = kFamily;
  m.title = "13.5 V, so it is full";
  m.claim = "The meter shows 13.5 V, so the battery is full.";
  m.verdict = MythVerdict::kWrong;
  m.value = half_V;
  m.unit = "V";
  m.decimals = 1;
  m.answer = fmt::format("At rest an open lead-acid battery shows {:.1f} V full and {:.1f} V half full.",
                         full_V, half_V);
  m.working = {
      "While a charger or the sun is on, the meter shows what the charger holds, not what the battery has. "
      "For hours "
      "after, the surface of the plates still keeps it up.",
      fmt::format("At rest for a night: open lead-acid {:.2f} V full and {:.2f} V at half, glass mat {:.2f} "
                  "and {:.2f} V.",
                  full_V, half_V, rest_V(glass, 1.0, 0.0), rest_V(glass, 0.5, 0.0)),
      fmt::format("Iron-phosphate after a charge: {:.2f} V at 60 % and {:.2f} V at 95 %. No voltmeter of a "
                  "boat or van "
                  "can tell them apart for sure.",
                  rest_V(iron, 0.6, -1.0), rest_V(iron, 0.95, -1.0))};
  m.nearly_true =
      "Lead-acid that shows 12.7 V after a night without charger or load is near full, if its acid is right.";
  m.sources = {{"leadOcvTable", "rest voltage of lead-acid against charge"},
               {"bpx", "rest voltage of iron-phosphate"},
               {"lfpLoggedBank", "gap between the rest voltages after charge and discharge"}};
  return m;
}

Myth held_at_13V3(const MythBench& bench) {
  constexpr double kHold_V = 13.3;
  constexpr double kDays = 7.0;
  constexpr double kCharger_A = 20.0;
  const auto p = bench.bank({.battery = "lfp-12v-100ah", .step_s = kLongStep_s});
  const auto from_low =
      bank::charge_to(p, at_rest(0.2, 1.0, kWarm_C), kCharger_A, kHold_V, 0.0, kWarm_C, kDays * kDay_s);
  const double reached = 100.0 * from_low.state.charge;
  const auto higher =
      bank::charge_to(p, at_rest(0.2, 1.0, kWarm_C), kCharger_A, 14.2, 3.0, kWarm_C, kDays * kDay_s);
  Myth m;
  m.number = 9;
  m.id = "held-at-13V3-is-full";
  m.family = kFamily;
  m.title = "Held at 13.3 V it fills up in the end";
  m.claim =
      "Iron-phosphate rests at 13.3 V when full, so hold it at 13.3 V and it becomes full, only slower.";
  m.verdict = MythVerdict::kWrong;
  m.value = reached;
  m.unit = "%";
  m.decimals = 0;
  m.answer = fmt::format("Held at 13.3 V for a week from 20 % it comes to {:.0f} %.", reached);
  m.working = {
      "After a charge the cells stand higher than after a discharge by tens of millivolts; to go on filling, "
      "the "
      "charger must hold more than the upper of the two.",
      fmt::format(
          "20 A at most and 13.3 V, 25 °C, from 20 %: {:.0f} % after {:.0f} days, and the current has died "
          "away.",
          reached, kDays),
      fmt::format("14.2 V to a tail of 3 A: {:.0f} % after {:.1f} h.", 100.0 * higher.state.charge,
                  higher.time_s() / kHour_s)};
  m.nearly_true = "As a float, to carry loads beside a battery that was filled before, 13.3 V is kind to it.";
  m.sources = {{"lfpLoggedBank", "gap between the two rest voltages"},
               {"bpx", "rest voltage against charge"}};
  return m;
}

Myth meter_is_right(const MythBench& bench) {
  constexpr double kUnseen_A = 0.29;
  constexpr double kDays = 10.0;
  constexpr double kBank_Ah = 300.0;
  const auto p = bench.bank({.battery = "lfp-12v-300ah", .step_s = kLongStep_s});
  const auto run =
      bank::discharge_at_current(p, at_rest(0.9, -1.0, kWarm_C), kUnseen_A, 0.0, kWarm_C, kDays * kDay_s);
  const double left = 100.0 * run.state.charge;
  Myth m;
  m.number = 10;
  m.id = "monitor-percent-is-true";
  m.family = kFamily;
  m.title = "The monitor says 90 %, so it is 90 %";
  m.claim = "The battery monitor shows 90 %, so 90 % is in there.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = left;
  m.unit = "%";
  m.decimals = 0;
  m.answer = fmt::format(
      "A monitor that does not see {:.2f} A still shows 90 % after ten days, when a bank of 300 Ah has "
      "{:.0f} %.",
      kUnseen_A, left);
  m.working = {
      "A monitor counts ampere-hours from the last time it was told \"full\". What it does not see, it does "
      "not count; "
      "simple shunts and protection boards show no current below 0.3 to 3 A.",
      fmt::format("{:.2f} A × 24 h = {:.1f} Ah a day, {:.1f} % of 300 Ah; self-discharge comes on top.",
                  kUnseen_A, kUnseen_A * 24.0, kUnseen_A * 24.0 / kBank_Ah * 100.0),
      fmt::format("After {:.0f} days the record has {:.0f} % left, and the monitor still shows 90 %.", kDays,
                  left)};
  m.nearly_true =
      "Within a few days of a true full charge, with the capacity as it is now and not as it was new, and "
      "every cable "
      "through the shunt.";
  m.sources = {
      {"", "0.29 A not seen, currents below which boards show none: practitioners' reports, restated"},
      {"lithiumReference", "self-discharge"}};
  return m;
}

Myth slope_gives_drain(const MythBench& bench) {
  constexpr double kBank_Ah = 500.0;
  constexpr double kStep_V = 0.01;
  constexpr double kDays = 30.0;
  constexpr double kDrain_A = 0.008;
  const auto p = bench.bank({.battery = "lfp-12v-100ah", .in_parallel = 5});
  const double high_V = rest_V(p, 0.9, 0.0);
  const double low_V = rest_V(p, 0.6, 0.0);
  const double mV_per_percent = 1e3 * (high_V - low_V) / 30.0;
  const double day_percent = kDrain_A * 24.0 / kBank_Ah * 100.0;
  const double misled_mA = kStep_V * 1e3 / mV_per_percent * 0.01 * kBank_Ah / (kDays * 24.0) * 1e3;
  Myth m;
  m.number = 28;
  m.id = "voltage-slope-gives-the-drain";
  m.family = kFamily;
  m.title = "The fall of the voltage tells the standing drain";
  m.claim = "I read the voltage every day; from its slope I know how many milliamperes something draws.";
  m.verdict = MythVerdict::kWrong;
  m.value = misled_mA;
  m.unit = "mA";
  m.decimals = 0;
  m.answer = fmt::format(
      "On an iron-phosphate bank of 500 Ah a voltmeter that steps by 10 mV may be off by {:.0f} mA even over "
      "a "
      "month.",
      misled_mA);
  m.working = {
      fmt::format("From 90 to 60 % the rest voltage falls by {:.0f} mV: {:.1f} mV for each per cent.",
                  1e3 * (high_V - low_V), mV_per_percent),
      fmt::format("A drain of 8 mA takes {:.3f} % of 500 Ah a day: {:.2f} mV a day.", day_percent,
                  day_percent * mV_per_percent),
      fmt::format("One step of 10 mV is {:.1f} % or {:.0f} Ah; over 30 days that is {:.0f} mA, more than the "
                  "drain. What "
                  "is left of the last charge sinks as well and looks like a drain.",
                  kStep_V * 1e3 / mV_per_percent, kStep_V * 1e3 / mV_per_percent * 0.01 * kBank_Ah,
                  misled_mA)};
  m.nearly_true = "With lead-acid over months, or below 10 % of iron-phosphate, where the curve is steep.";
  m.sources = {
      {"lfpLoggedBank", "a bank of 500 Ah whose shunt showed 6 to 9 mA where the slope had given 13"},
      {"bpx", "rest voltage against charge"}};
  return m;
}

Myth voltage_proves_good(const MythBench& bench) {
  constexpr double kLost = 0.72;
  constexpr double kCharge = 0.95;
  const auto worn = bench.bank({.battery = "lfp-12v-100ah", .lost_capacity = kLost});
  const auto fresh = bench.bank({.battery = "lfp-12v-100ah"});
  const double worn_V = rest_V(worn, kCharge, 0.0);
  const double fresh_V = rest_V(fresh, kCharge, 0.0);
  constexpr double kLoad_A = 20.0;
  const auto run =
      bank::discharge_at_current(worn, at_rest(1.0, -1.0, kWarm_C), kLoad_A, 10.0, kWarm_C, kDay_s);
  Myth m;
  m.number = 29;
  m.id = "rest-voltage-proves-it-good";
  m.family = kFamily;
  m.title = "A good voltage proves a good battery";
  m.claim = "It rests at 13.3 V, so the used battery is as good as new.";
  m.verdict = MythVerdict::kWrong;
  m.value = worn_V;
  m.unit = "V";
  m.decimals = 2;
  m.answer = fmt::format(
      "A worn battery with 28 % of its capacity rests at {:.2f} V, and so does a new one, {:.2f} V.", worn_V,
      fresh_V);
  m.working = {
      "The rest voltage belongs to the share of charge, not to its amount: a small full glass is as full as "
      "a large "
      "one.",
      fmt::format("Both at 95 % of what they hold, 25 °C: {:.2f} and {:.2f} V.", worn_V, fresh_V),
      fmt::format("At 20 A the worn one is empty after {:.1f} h with {:.0f} Ah. Only a timed discharge shows "
                  "it: state "
                  "temperature, current and end voltage with the result.",
                  run.time_s() / kHour_s, run.drawn_Ah())};
  m.nearly_true =
      "The other way round it holds: a voltage far too low after a full charge proves a bad battery.";
  m.caution = "Watch a used lithium battery while it charges for the first time, away from what burns.";
  m.sources = {{"", "45 Ah label, 13.35 V after 20 h of rest, 28 % left: a practitioner's report, restated"},
               {"bpx", "rest voltage against charge"}};
  return m;
}

}  // namespace

void add_gauge_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(surface_voltage(bench));
  list.push_back(held_at_13V3(bench));
  list.push_back(meter_is_right(bench));
  list.push_back(slope_gives_drain(bench));
  list.push_back(voltage_proves_good(bench));
}

}  // namespace voltwright::app
