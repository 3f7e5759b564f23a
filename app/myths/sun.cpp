// Solar modules and their labels.
#include <fmt/format.h>

#include "app/myths/bench.h"
#include "engine/bank/laboratory.h"
#include "engine/sky/module_model.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Solar";
constexpr double kWarm_C = 25.0;
constexpr double kFullSun_W_m2 = 1000.0;

Myth small_panel() {
  sky::Module module;
  module.peak = units::watts(5.0);
  module.at_peak_voltage = units::volts(18.0);
  module.at_peak_current = units::amperes(5.0 / 18.0);
  module.open_circuit = units::volts(21.6);
  module.short_circuit = units::amperes(5.0 / 18.0 * 1.07);
  const sky::CurrentVoltageCurve bright(module, kFullSun_W_m2, kWarm_C);
  const double peak_A = bright.current_A(18.0);
  constexpr double kSunHours_h = 4.0;
  constexpr double kDull_W_m2 = 100.0;
  constexpr double kCool_C = 15.0;
  const double dull_W = sky::module_power(100.0, -0.004, kDull_W_m2, kCool_C, sky::kLowLightLoss);
  constexpr double kTwoBatteries_Ah = 200.0;
  Myth m;
  m.number = 14;
  m.id = "panel-gives-its-label";
  m.family = kFamily;
  m.title = "100 W of panel give 100 W";
  m.claim = "A 100 W panel gives 100 W, and a 5 W panel gives 0.4 A into a 12 V battery.";
  m.verdict = MythVerdict::kWrong;
  m.value = peak_A;
  m.unit = "A";
  m.decimals = 2;
  m.answer = fmt::format("A 5 W panel gives {:.2f} A in full sun, {:.1f} Ah on a day of four full-sun hours.",
                         peak_A, peak_A * kSunHours_h);
  m.working = {fmt::format("5 W is reached near 18 V: {:.2f} A. At the 13 V of a battery it is {:.2f} A, not "
                           "5 W / 12 V = 0.42 A.",
                           peak_A, bright.current_A(13.0)),
               fmt::format("Four full-sun hours: {:.1f} Ah a day. Two batteries of 100 Ah lose {:.2f} Ah a "
                           "day by themselves at 5 % "
                           "a month: it keeps up, it does not fill.",
                           peak_A * kSunHours_h, kTwoBatteries_Ah * 0.05 / 30.0),
               fmt::format("100 W under a dull sky of 100 W/m²: {:.1f} W.", dull_W)};
  m.nearly_true = "Around a cool, clear noon, clean and square to the sun, a panel comes close to its label.";
  m.sources = {
      {"rauschenbach1980", "curve of current against voltage"},
      {"dobos2014", "power against light and temperature"},
      {"", "18 V at the best point of a 12 V panel, 5 % self-discharge a month: common practice, no source"}};
  return m;
}

Myth one_watt_per_Ah(const MythBench& bench) {
  constexpr double kPanel_W = 200.0;
  constexpr double kYield = 0.8;
  constexpr double kMean_V = 13.5;
  constexpr double kHalf_Ah = 100.0;
  const double simple_h = kHalf_Ah * kMean_V / (kPanel_W * kYield);
  // The same with what the battery does not store: charged by the panel's mean current up to its full
  // content.
  const auto p = bench.bank({.battery = "flooded-12v-100ah", .in_parallel = 2});
  const double current_A = kPanel_W * kYield / kMean_V;
  const auto run = bank::run_current(
      p, at_rest(0.5, 0.0, kWarm_C), [&](const bank::Terminal<double>&, double) { return -current_A; }, 0.0,
      14.7, kWarm_C, 24.0 * 3600.0);
  Myth m;
  m.number = 15;
  m.id = "one-watt-per-ampere-hour";
  m.family = kFamily;
  m.title = "One watt of panel for each ampere-hour";
  m.claim = "200 W of panel are right for 200 Ah: one watt for each ampere-hour.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = simple_h;
  m.unit = "full-sun hours";
  m.decimals = 1;
  m.answer = fmt::format(
      "To refill half of 200 Ah, 200 W need {:.1f} full-sun hours, more than a day brings.", simple_h);
  m.working = {
      fmt::format(
          "Half of 200 Ah at 13.5 V: {:.0f} Wh. 200 W that yield 80 % of their label: {:.0f} Wh for each "
          "full-sun hour. {:.0f} / {:.0f} = {:.1f} h.",
          kHalf_Ah * kMean_V, kPanel_W * kYield, kHalf_Ah * kMean_V, kPanel_W * kYield, simple_h),
      fmt::format("Open lead-acid, charged with the {:.1f} A that this gives, comes to 14.7 V after {:.1f} "
                  "h, then at "
                  "{:.0f} %: what it does not store and the slow end come on top.",
                  current_A, run.time_s() / 3600.0, 100.0 * run.state.charge),
      fmt::format("Two watts for each ampere-hour need {:.1f} h, three {:.1f} h. A clear summer day brings 5 "
                  "to 7, a winter "
                  "day in the north 1 to 2.",
                  simple_h / 2.0, simple_h / 3.0)};
  m.nearly_true =
      "If you use only a tenth of the bank on most days, one watt for each ampere-hour keeps it up in "
      "summer.";
  m.sources = {{"", "yield of 80 % of the label and 13.5 V: common practice, no source"},
               {"schiffer2007", "charge resistance and gassing of lead-acid"}};
  return m;
}

Myth label_voltage() {
  sky::Module module;
  module.peak = units::watts(100.0);
  module.at_peak_voltage = units::volts(18.0);
  module.at_peak_current = units::amperes(100.0 / 18.0);
  module.open_circuit = units::volts(22.0);
  module.short_circuit = units::amperes(100.0 / 18.0 * 1.07);
  const auto above = [&](double cell_C) {
    const double at_V = sky::CurrentVoltageCurve(module, kFullSun_W_m2, cell_C).open_circuit_V();
    const double label_V = sky::CurrentVoltageCurve(module, kFullSun_W_m2, kWarm_C).open_circuit_V();
    return 100.0 * (at_V / label_V - 1.0);
  };
  constexpr double kCold_C = -20.0;
  constexpr int kString = 4;
  const double cold_V = kString * sky::CurrentVoltageCurve(module, kFullSun_W_m2, kCold_C).open_circuit_V();
  Myth m;
  m.number = 16;
  m.id = "panel-voltage-is-the-label";
  m.family = kFamily;
  m.title = "The panel's voltage is what the label says";
  m.claim = "Four panels of 22 V make 88 V, which is below the controller's 100 V, so it fits.";
  m.verdict = MythVerdict::kHalfTrue;
  m.value = above(kCold_C);
  m.unit = "% above the label";
  m.decimals = 1;
  m.answer = fmt::format(
      "With cells at -20 °C the open-circuit voltage is {:.1f} % above the label, at 0 °C {:.1f} %.",
      above(kCold_C), above(0.0));
  m.working = {
      fmt::format("The label holds at 25 °C. -0.30 %/K × (0 - 25) K = +{:.1f} %, × (-20 - 25) K = +{:.1f} %.",
                  above(0.0), above(kCold_C)),
      fmt::format(
          "Four of 22 V: 88 V by the label, {:.1f} V on a bright morning at -20 °C, {}.", cold_V,
          cold_V < 100.0 ? "just below a limit of 100 V; five would be far above" : "above a limit of 100 V"),
      fmt::format(
          "A blanket factor of 1.25 is on the safe side: at -18 °C it takes {:.0f} % more than needed.",
          100.0 * (1.25 / (1.0 + above(-18.0) / 100.0) - 1.0))};
  m.nearly_true =
      "Where it never freezes, the label with a tenth on top is enough. Take the coldest day on record.";
  m.caution =
      "Too much voltage destroys the controller at once, and direct current of this voltage can kill: local "
      "code.";
  m.sources = {
      {"rauschenbach1980", "the curve; open-circuit voltage moves in proportion to temperature"},
      {"", "-0.30 %/K, usual for silicon: common practice, no source; the sheet of the panel goes first"}};
  return m;
}

}  // namespace

void add_sun_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(small_panel());
  list.push_back(one_watt_per_Ah(bench));
  list.push_back(label_voltage());
}

}  // namespace voltwright::app
