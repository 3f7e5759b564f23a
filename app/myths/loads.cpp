// Loads that are forgotten or taken from the label.
#include <fmt/format.h>

#include "app/myths/bench.h"
#include "engine/bank/assembly.h"
#include "engine/demand/cooling.h"
#include "engine/demand/inverter.h"

namespace voltwright::app {

namespace {

constexpr const char* kFamily = "Loads";
constexpr double kDay_h = 24.0;
constexpr double kLithium_V = 12.8;

Myth fridge_label(const MythBench& bench) {
  const demand::Appliance& fridge = bench.appliance("fridge-50l");
  demand::Cooling cooling;
  cooling.inside = units::celsius(fridge.inside_C);
  cooling.heat_leak = units::watts_per_kelvin(fridge.heat_leak_W_per_K);
  cooling.cop_at_25C = fridge.cop_at_25C;
  const double running_W = fridge.power_W.typical;
  const double cool_W = demand::cooling_power_W(cooling, 20.0);
  const double warm_W = demand::cooling_power_W(cooling, 30.0);
  const double duty = 100.0 * cool_W / running_W;
  Myth m;
  m.number = 4;
  m.id = "fridge-label-around-the-clock";
  m.family = kFamily;
  m.title = "The fridge's label around the clock";
  m.claim = "The label says 40 W, so the fridge needs 40 W times 24 h.";
  m.verdict = MythVerdict::kWrong;
  m.value = duty;
  m.unit = "% of the time";
  m.decimals = 0;
  m.answer =
      fmt::format("At 20 °C around it a compressor fridge of 40 to 60 L runs {:.0f} % of the time.", duty);
  m.working = {
      fmt::format("Label around the clock: {:.0f} W × 24 h = {:.0f} Wh.", running_W, running_W * kDay_h),
      fmt::format(
          "Heat that leaks in at 20 °C: {:.2f} W/K × {:.0f} K = {:.1f} W. The compressor moves it with "
          "{:.1f} W on average, {:.0f} Wh a day.",
          fridge.heat_leak_W_per_K, 20.0 - fridge.inside_C,
          fridge.heat_leak_W_per_K * (20.0 - fridge.inside_C), cool_W, cool_W * kDay_h),
      fmt::format("At 30 °C it is {:.1f} W, {:.0f} Wh a day, {:.0f} % more: the difference in temperature "
                  "grows from "
                  "{:.0f} to {:.0f} K, and the compressor works against a warmer room.",
                  warm_W, warm_W * kDay_h, 100.0 * (warm_W / cool_W - 1.0), 20.0 - fridge.inside_C,
                  30.0 - fridge.inside_C)};
  m.nearly_true =
      "On the first day, when warm food has to be cooled, and in a hot car with the lid opened often.";
  m.sources = {{"applianceSurvey", "power while running and energy of a typical day"},
               {"", "coefficient of performance 1.5 at 25 °C: an assumption; see docs/method/demand.md"}};
  return m;
}

Myth inverter_off(const MythBench& /*bench*/) {
  const auto idle_Ah = [](double idle_W) {
    demand::Inverter inverter;
    inverter.rated = units::watts(1000.0);
    inverter.idle = units::watts(idle_W);
    return demand::inverter_input_W(inverter, 0.0) * kDay_h / kLithium_V;
  };
  const double least_Ah = idle_Ah(6.0);
  const double most_Ah = idle_Ah(40.0);
  Myth m;
  m.number = 5;
  m.id = "inverter-off-when-unplugged";
  m.family = kFamily;
  m.title = "An inverter with nothing plugged in takes nothing";
  m.claim = "The inverter is off as long as nothing is plugged in.";
  m.verdict = MythVerdict::kWrong;
  m.value = most_Ah;
  m.unit = "Ah a day";
  m.decimals = 0;
  m.answer = fmt::format("Switched on and idle it takes {:.0f} to {:.0f} Ah a day.", least_Ah, most_Ah);
  m.working = {
      fmt::format("A small one idles at 6 W: 6 W × 24 h / 12.8 V = {:.0f} Ah.", least_Ah),
      fmt::format("A large one idles at 40 W: {:.0f} Ah a day, three quarters of a battery of 100 Ah.",
                  most_Ah),
      "Measure it: a clamp meter on the battery cable with everything off shows what stands."};
  m.nearly_true =
      "If it has a standby that looks for a load every few seconds, or if you switch it off by its own "
      "switch.";
  m.sources = {{"applianceSurvey", "idle power of inverters, 0.7 to 1.2 % of the rating"},
               {"", "6 and 40 W: practitioners' reports, restated"}};
  return m;
}

Myth heater_is_free(const MythBench& bench) {
  constexpr double kHeater_W = 80.0;
  const double day_Ah = kHeater_W * kDay_h / kLithium_V;
  const double free_W_K = bank::free_standing_loss_W_K(bench.battery("lfp-12v-100ah").volume_L.typical);
  // 50 mm of foam of 0.035 W/mK in series with the same still air.
  constexpr double kAir_W_m2K = 8.0;
  constexpr double kFoam_m2K_W = 0.05 / 0.035;
  const double foam_W_K = free_W_K / (1.0 + kAir_W_m2K * kFoam_m2K_W);
  constexpr double kLift_K = 20.0;
  Myth m;
  m.number = 21;
  m.id = "heater-is-free";
  m.family = kFamily;
  m.title = "A battery heater costs next to nothing";
  m.claim = "I just heat the battery from the battery itself.";
  m.verdict = MythVerdict::kWrong;
  m.value = day_Ah;
  m.unit = "Ah a day";
  m.decimals = 0;
  m.answer = fmt::format("Heating pads of 80 W in all take {:.0f} Ah a day.", day_Ah);
  m.working = {
      fmt::format(
          "80 W × 24 h = {:.2f} kWh; over 12.8 V that is {:.0f} Ah, more than the battery they keep warm.",
          kHeater_W * kDay_h * 1e-3, day_Ah),
      fmt::format("Insulate first. A battery of 100 Ah standing free loses {:.1f} W/K, so {:.0f} W hold it "
                  "20 K above "
                  "the air; behind 50 mm of foam {:.1f} W do.",
                  free_W_K, free_W_K * kLift_K, foam_W_K * kLift_K),
      "Heat only before and while charging, and only as long as there is a charger that can give it back."};
  m.nearly_true =
      "Behind good insulation, with a thermostat that asks for heat only when there is sun or shore power.";
  m.caution =
      "A heater without a thermostat and a fuse of its own can set the insulation on fire. Leave room for "
      "the gas "
      "of lead-acid.";
  m.sources = {{"", "still air 8 W/m²K: an assumption of the bank model; foam 0.035 W/mK (from memory)"},
               {"", "four pads of 20 W on one bank: a practitioner's report, restated"}};
  return m;
}

}  // namespace

void add_load_myths(const MythBench& bench, std::vector<Myth>& list) {
  list.push_back(fridge_label(bench));
  list.push_back(inverter_off(bench));
  list.push_back(heater_is_free(bench));
}

}  // namespace voltwright::app
