#pragma once
// The parts of the plan file, each read by a function of its own. All note problems in the section's reading.
#include <optional>
#include <vector>

#include "engine/advise/plan.h"
#include "files/plan_section.h"

namespace voltwright::files {

/// Which model makes the days of made weather.
void read_weather_model(Section& top, advise::Plan& plan);
/// `currency` is empty if the plan names none that can be used; then the price is not read.
advise::Limits read_limits(Section section, const std::string& currency);
bank::Surroundings read_surroundings(Section section);
advise::Cable read_cable(Section section);
demand::Inverter read_inverter(Section section, units::Voltage system);
demand::Load read_load(Section section, units::Voltage system);
/// The cable and cut-off of a load, if it has any.
void read_far_feed(Section& section, units::Voltage system, demand::Load& load);
supply::SolarArray read_solar(Section section);
/// The horizon and the shade of an array, and which model of the sky its light is computed with.
void read_shade(Section& section, supply::SolarArray& array);
supply::EngineCharging read_engine(Section section);
/// How a source's charger is set; what the section does not name stays.
void read_regulation(Section section, units::Voltage system, supply::Regulation& regulation);
supply::MainsCharger read_mains(Section section);
supply::Generator read_generator(Section section);
supply::WindCharging read_wind(Section section);
supply::WaterCharging read_water(Section section);
/// Where a leg is, or where its driving begins.
std::optional<journey::Place> read_place(Section& section);
/// Where the leg's driving leads, if the section says so; leg.drive_per_day must have been read.
void read_end_place(Section& section, journey::Leg& leg);
/// `[leg.climate]` of a leg whose place and weather file are read.
void read_leg_climate(Section& section, journey::Leg& leg);
std::vector<journey::Leg> read_legs(std::vector<Section> sections);
std::optional<advise::NamedBank> read_incumbent(Section section, units::Voltage system);
advise::CandidateRule read_candidates(Section section, units::Voltage system);

}  // namespace voltwright::files
