#pragma once
// What draws power, when and how hard; and the inverter between the bank and the alternating-current loads.
#include <optional>
#include <string>

#include "engine/units/day_window.h"
#include "engine/units/quantity.h"

namespace voltwright::demand {

enum class Feed { kDirect, kInverter };
enum class Need { kEssential, kComfort };

/// When the load may run at all.
enum class Presence { kOccupied, kAlways, kDriving, kParked };

enum class Pattern {
  kAlwaysOn,     // runs whenever `presence` allows
  kHours,        // a number of hours a day, starting at `window.from_s`
  kWindow,       // from window.from_s to window.to_s each day
  kEvents,       // `events_per_day` runs of `event_length`, placed at random inside `window`
  kTemperature,  // compressor: runs as often as the heat leak asks
};

/// Compressor duty: mean electrical power = conductance * (room - inside) / COP, limited by running power.
struct Cooling {
  units::Temperature inside = units::celsius(4.0);
  units::HeatConductance heat_leak;
  double cop_at_25C = 1.5;  // at a room temperature of 25 degC
};

/// A direct load behind a cable of its own, with the voltage at which it gives up.
struct FarFeed {
  units::Resistance loop;  // cable and contacts there and back
  units::Voltage cut_off;  // at the load; 0 = none
  units::Voltage restart;  // at the bus
};

struct Load {
  std::string name;
  std::string appliance;  // catalogue id, empty if described in the plan
  double count = 1.0;
  units::Power power;         // while running, at the load
  units::Power standby;       // while not running
  double surge_factor = 1.0;  // starting power / running power
  units::Duration surge_time;
  Feed feed = Feed::kDirect;
  std::optional<FarFeed> far;  // direct loads only
  Need need = Need::kEssential;
  Presence presence = Presence::kOccupied;
  Pattern pattern = Pattern::kAlwaysOn;
  units::Duration hours_per_day;
  units::DayWindow window;
  double events_per_day = 0.0;
  units::Duration event_length;
  Cooling cooling;
};

/// Loss curve: P_in = P_out + rated * (idle + linear u + quadratic u^2), u = P_out / rated.
struct Inverter {
  units::Power rated;
  units::Power surge;
  units::Power idle;
  double linear_loss = 0.03;
  double quadratic_loss = 0.06;
  units::Voltage cut_off;  // at the inverter's own terminals
  units::Voltage restart;
  bool off_when_unused = false;  // switched off when no alternating-current load runs
};

}  // namespace voltwright::demand
