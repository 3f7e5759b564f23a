// Fuses: how much they must break and what they guard.
#include <fmt/format.h>

#include "app/myths/bench.h"
#include "engine/bank/sharing.h"
#include "engine/demand/inverter.h"
#include "engine/season/setup.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Fuses";
constexpr double kWarm_C = 25.0;
constexpr const char* kLocalCode =
    "A fuse that cannot break the current bursts into an arc. Place, rating and breaking capacity are "
    "matters of the "
    "local code and of a licensed person.";

Myth any_fuse(const MythBench& bench) {
  const auto p = bench.bank({.battery = "lfp-12v-100ah", .in_parallel = 2});
  const auto t = bank::terminal<double>(p, at_rest(0.98, 0.0, kWarm_C));
  const double one_ohm = 2.0 * t.instant_ohm;
  const double fault_A = bank::short_circuit_A(t.ocv_V, t.instant_ohm, 0.0);
  constexpr double kLeads_ohm = 1e-3;
  Myth m;
  m.number = 17;
  m.id = "any-fuse-of-the-right-amperes";
  m.family = kFamily;
  m.title = "Any fuse with the right number on it";
  m.claim = "Fuse is fuse, as long as the amperes are right.";
  m.verdict = MythVerdict::kWrong;
  m.value = fault_A * 1e-3;
  m.unit = "kA";
  m.decimals = 1;
  m.answer = fmt::format(
      "Two iron-phosphate batteries of 100 Ah side by side can drive {:.1f} kA into a short circuit, and the "
      "fuse "
      "must break it.",
      fault_A * 1e-3);
  m.working = {
      fmt::format("One battery with its protection, fuse and terminals: {:.2f} mΩ in the first instant; "
                  "two side by "
                  "side {:.2f} mΩ.",
                  1e3 * one_ohm, 1e3 * t.instant_ohm),
      fmt::format("{:.1f} V / {:.2f} mΩ = {:.0f} A at the poles. Behind 1 mΩ of cable it is still {:.0f} A.",
                  t.ocv_V, 1e3 * t.instant_ohm, fault_A,
                  bank::short_circuit_A(t.ocv_V, t.instant_ohm, kLeads_ohm)),
      "Blade fuses break about 1 kA, bolt-down types 1 to 6 kA, fast cartridge fuses for direct current 20 "
      "kA: read "
      "it on the part, at the voltage of your system.",
      "Electronic protection must not be counted on to break it. Tables that go by cold-cranking amperes are "
      "for "
      "lead-acid starter batteries."};
  m.nearly_true =
      "Far out on a thin cable, whose resistance keeps the current of a fault within what a blade fuse "
      "breaks.";
  m.caution = kLocalCode;
  m.sources = {
      {"lfpCircuit", "resistance of the cells"},
      {"", "1 to 3 mΩ of protection, fuse and terminals, breaking capacities of fuses (from memory)"}};
  return m;
}

Myth fuse_for_the_load() {
  demand::Inverter inverter;
  inverter.rated = units::watts(2000.0);
  inverter.idle = units::watts(20.0);
  const double input_W = demand::inverter_input_W(inverter, 2000.0);
  const double full_A = input_W / 12.0;
  const double low_A = input_W / 10.5;
  constexpr double kMargin = 1.25;
  constexpr double kRun_m = 3.0;
  constexpr double kArea_mm2 = 13.3;
  const double loss_V = full_A * season::loop_resistance_ohm(kRun_m, kArea_mm2);
  Myth m;
  m.number = 18;
  m.id = "fuse-sized-to-the-load";
  m.family = kFamily;
  m.title = "The fuse goes by the load";
  m.claim = "A 2000 W inverter gets a 100 A fuse and AWG 6 cable; the table on the web says so.";
  m.verdict = MythVerdict::kWrong;
  m.value = full_A;
  m.unit = "A";
  m.decimals = 0;
  m.answer = fmt::format(
      "2000 W takes {:.0f} A at 12 V; cable and fuse must bear at least {:.0f} A for good, and the fuse "
      "guards the cable.",
      full_A, kMargin * full_A);
  m.working = {
      fmt::format("Input of the inverter at full load: {:.0f} W. At 12 V {:.0f} A, at its cut-off of 10.5 V "
                  "{:.0f} A.",
                  input_W, full_A, low_A),
      fmt::format("First the cable: one that bears 1.25 × {:.0f} A = {:.0f} A and loses little enough. Then "
                  "the fuse: at "
                  "least that, at most what the cable bears.",
                  full_A, kMargin * full_A),
      fmt::format(
          "A fuse of 100 A would open in seconds to minutes. 13.3 mm² (AWG 6), 3 m each way, loses {:.1f} V.",
          loss_V),
      "Thermal circuit breakers hold about 80 % of their number for good, less in a hot box."};
  m.nearly_true =
      "For a small load alone on a cable that bears far more, a smaller fuse beside it guards the device "
      "too.";
  m.caution = kLocalCode;
  m.sources = {{"iec60028", "resistance of copper"},
               {"", "factor 1.25 and 80 % of thermal breakers: common practice, no source"},
               {"", "loss curve of the inverter: see docs/method/demand.md"}};
  return m;
}

}  // namespace

void add_fuse_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(any_fuse(bench));
  list.push_back(fuse_for_the_load());
}

}  // namespace voltwright::app
