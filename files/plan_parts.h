#pragma once
// The parts of the plan file, each read by a function of its own. All note problems in the section's reading.
#include <optional>
#include <vector>

#include "engine/advise/plan.h"
#include "files/plan_section.h"

namespace voltwright::files {

advise::Limits read_limits(Section section, const std::string& currency);
bank::Surroundings read_surroundings(Section section);
advise::Cable read_cable(Section section);
demand::Inverter read_inverter(Section section, units::Voltage system);
demand::Load read_load(Section section);
supply::SolarArray read_solar(Section section);
supply::EngineCharging read_engine(Section section);
supply::MainsCharger read_mains(Section section);
std::vector<journey::Leg> read_legs(std::vector<Section> sections);
std::optional<advise::NamedBank> read_incumbent(Section section, units::Voltage system);
advise::CandidateRule read_candidates(Section section, units::Voltage system);

}  // namespace voltwright::files
