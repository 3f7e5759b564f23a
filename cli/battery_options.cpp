#include "cli/battery_options.h"

#include <CLI/CLI.hpp>
#include <cmath>

#include "engine/advise/wording.h"

namespace voltwright::cli {

void add_battery_options(CLI::App& command, app::BatteryRequest& battery) {
  command
      .add_option(
          "BATTERY", battery.battery,
          "Battery of the catalogue (voltwright catalogue batteries), or a kind such as agm or lfp with "
          "--capacity")
      ->required();
  command.add_option("--capacity", battery.capacity, "Of one battery: \"110 Ah\"");
  command.add_option("--voltage", battery.voltage, "Nominal, of one battery: \"12 V\"");
  command.add_option("--series", battery.in_series, "Batteries in series (default 1)");
  command.add_option("--parallel", battery.in_parallel, "Batteries side by side (default 1)");
  command.add_option("--age", battery.age, "Since new: \"4 years\"; the capacity lost is then estimated");
  command.add_option("--lost", battery.lost, "Capacity lost, from a test: \"20 %\"");
}

void add_load_options(CLI::App& command, app::LoadRequest& load) {
  command.add_option("--efficiency", load.efficiency,
                     "Of an inverter between them, beside its idle power: \"90 %\" (default: no inverter)");
  command.add_option("--idle", load.idle, "Power that the inverter takes by itself: \"15 W\"");
  command.add_option("--cut-off", load.cut_off, "Voltage at which the inverter or load gives up: \"11 V\"");
  command.add_option("--temperature", load.temperature, "Of the place (default \"25 °C\")");
}

std::string hours_text(double hours) {
  constexpr double kMinutes = 60.0;
  constexpr double kSeconds = 3600.0;
  constexpr double kInSeconds_h = 2.0 / kMinutes;
  constexpr double kInDays_h = 72.0;
  constexpr double kDay_h = 24.0;
  if (hours < kInSeconds_h) return advise::figure(hours * kSeconds, "s");
  if (hours >= kInDays_h) return advise::figure(hours / kDay_h, "days");
  const auto minutes = static_cast<int>(std::lround(hours * kMinutes));
  const int whole = minutes / 60;
  const int rest = minutes % 60;
  if (whole == 0) return std::to_string(rest) + " min";
  return std::to_string(whole) + " h" + (rest > 0 ? " " + std::to_string(rest) + " min" : "");
}

}  // namespace voltwright::cli
