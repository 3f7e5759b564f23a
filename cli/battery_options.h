#pragma once
// Options that tell of a battery and a load, the same for every command that asks for them.
#include "app/runtime.h"

namespace CLI {
class App;
}

namespace voltwright::cli {

void add_battery_options(CLI::App& command, app::BatteryRequest& battery);
/// Without the load itself and the depth, which the commands name in their own way.
void add_load_options(CLI::App& command, app::LoadRequest& load);

/// "2 h 5 min", "3.2 days" from 72 h on, "50 s" below two minutes.
std::string hours_text(double hours);

}  // namespace voltwright::cli
