// Cables, and what they leave of a voltage.
#include <fmt/format.h>

#include "app/myths/bench.h"
#include "engine/season/setup.h"
#include "engine/supply/dc_dc.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Cables";
constexpr double kWarm_C = 25.0;

Myth table_says_fine() {
  constexpr double kStart_A = 8.0;
  constexpr double kRun_m = 5.0;
  const double thin_V = kStart_A * season::loop_resistance_ohm(kRun_m, 1.0);
  const double thick_V = kStart_A * season::loop_resistance_ohm(kRun_m, 4.0);
  constexpr double kBattery_V = 12.2;
  Myth m;
  m.number = 6;
  m.id = "cable-carries-the-current";
  m.family = kFamily;
  m.title = "The cable carries the current, so it will do";
  m.claim = "The table allows the current on this cable, so the cable is thick enough.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = thin_V;
  m.unit = "V";
  m.decimals = 2;
  m.answer = fmt::format("1 mm² bears the 8 A of a starting heater, but over 5 m it loses {:.2f} V.", thin_V);
  m.working = {
      fmt::format("Copper, 0.017241 Ω mm²/m at 20 °C, 5 m there and 5 m back, 1 mm²: {:.3f} Ω.",
                  season::loop_resistance_ohm(kRun_m, 1.0)),
      fmt::format("× 8 A = {:.2f} V. A battery at 12.2 V leaves {:.1f} V at the heater, close to a cut-off "
                  "of 10.5 V.",
                  thin_V, kBattery_V - thin_V),
      fmt::format(
          "With 4 mm² it is {:.2f} V. A cable must pass both: what it may carry, and what it may lose.",
          thick_V)};
  m.nearly_true = "On runs of less than a metre, and on 230 V, where a volt does not matter.";
  m.caution =
      "What a cable may carry depends on insulation, bundling and heat: the local code's table counts.";
  m.sources = {{"iec60028", "resistance of copper"},
               {"", "start current of 8 A and cut-off of 10.5 V: a practitioner's report, restated"}};
  return m;
}

Myth one_way_or_loop() {
  constexpr double kFoot_m = 0.3048;
  constexpr double kRun_m = 30.0 * kFoot_m;
  constexpr double kArea_mm2 = 5.26;
  constexpr double kLoad_A = 3.5;
  const double loss_V = kLoad_A * season::loop_resistance_ohm(kRun_m, kArea_mm2);
  Myth m;
  m.number = 7;
  m.id = "one-way-or-loop";
  m.family = kFamily;
  m.title = "One way, there and back, or twice of it";
  m.claim = "The run is 9 m, so I work with 9 m. Or with 18 m in a chart that already doubles.";
  m.verdict = MythVerdict::kMuddled;
  m.value = loss_V;
  m.unit = "V";
  m.decimals = 2;
  m.answer = fmt::format(
      "A run of 9.1 m one way in 5.26 mm² (AWG 10) loses {:.2f} V at 3.5 A; half of it or twice is wrong.",
      loss_V);
  m.working = {
      fmt::format("Current goes there and comes back: the loop is {:.1f} m long and has {:.4f} Ω.",
                  2.0 * kRun_m, season::loop_resistance_ohm(kRun_m, kArea_mm2)),
      fmt::format(
          "× 3.5 A = {:.2f} V, {:.2f} % of 12 V. Length taken one way only gives {:.2f} V, doubled once more "
          "{:.2f} V.",
          loss_V, 100.0 * loss_V / 12.0, 0.5 * loss_V, 2.0 * loss_V),
      "Say which: \"one-way run 9.1 m\", and show the loop. Many charts take the one-way length and double "
      "it "
      "themselves."};
  m.nearly_true =
      "With a chassis of thick steel as the return, the way back adds little. Its joints may add a lot.";
  m.sources = {{"iec60028", "resistance of copper"},
               {"", "area of AWG 10, 5.26 mm²: definition of the gauge"}};
  return m;
}

Myth trailer_plug(const MythBench& bench) {
  constexpr double kRun_m = 7.6;
  constexpr double kArea_mm2 = 3.31;
  constexpr double kAlternator_V = 13.6;
  constexpr double kMinute_s = 60.0;
  const double loop_ohm = season::loop_resistance_ohm(kRun_m, kArea_mm2);
  const auto p = bench.bank({.battery = "lfp-12v-100ah", .cable_ohm = loop_ohm, .step_s = 10.0 * kMinute_s});
  const auto t = bank::terminal<double>(p, at_rest(0.5, 1.0, kWarm_C));
  const double direct_A = (kAlternator_V - t.source_V) / t.charge_ohm;
  constexpr double kOutput_W = 20.0 * 13.8;
  constexpr double kEfficiency = 0.9;
  const auto thin = supply::dc_dc_input(kAlternator_V, loop_ohm, kOutput_W, kEfficiency);
  const double thick_ohm = season::loop_resistance_ohm(kRun_m, 13.3);
  const auto thick = supply::dc_dc_input(kAlternator_V, thick_ohm, kOutput_W, kEfficiency);
  Myth m;
  m.number = 13;
  m.id = "trailer-plug-charges-as-fused";
  m.family = kFamily;
  m.title = "The plug is fused 30 A, so it charges with 30 A";
  m.claim = "The charge pin of the trailer plug has a fuse of 20 to 30 A, so that is what the battery gets.";
  m.verdict = MythVerdict::kWrong;
  m.value = direct_A;
  m.unit = "A";
  m.decimals = 1;
  m.answer = fmt::format("Through 7.6 m of 3.31 mm² (AWG 12) a half-full battery gets {:.1f} A.", direct_A);
  m.working = {
      fmt::format("There and back the cable has {:.0f} mΩ, connectors not counted.", 1e3 * loop_ohm),
      fmt::format("The towing vehicle holds 13.6 V, an iron-phosphate battery at half charge stands at "
                  "{:.2f} V; what "
                  "is left drives {:.1f} A, mean of the first ten minutes, and less as it fills.",
                  t.source_V, direct_A),
      fmt::format("A DC-DC charger of 20 A behind the same cable asks for {:.1f} A and sees {:.1f} V: it "
                  "locks out, or "
                  "the fuse goes.",
                  thin.current_A, thin.input_V),
      fmt::format("With 13.3 mm² (AWG 6) it asks for {:.1f} A and sees {:.1f} V.", thick.current_A,
                  thick.input_V)};
  m.nearly_true = "Only if cable, connectors and the vehicle's voltage were made for it.";
  m.caution =
      "Do not put in a larger fuse: it protects the cable, and vehicle plugs melt at currents that their "
      "pins do "
      "not bear.";
  m.sources = {{"iec60028", "resistance of copper"},
               {"lfpCircuit", "resistance of the iron-phosphate record"},
               {"", "13.6 V of a controlled alternator: a practitioner's report, restated"}};
  return m;
}

}  // namespace

void add_wiring_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(table_says_fine());
  list.push_back(one_way_or_loop());
  list.push_back(trailer_plug(bench));
}

}  // namespace voltwright::app
