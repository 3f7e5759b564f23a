#pragma once
// How long a chemistry lasts at a made-up duty, and what its user can do to make it last.
#include <string>
#include <vector>

#include "engine/ageing/opinion.h"
#include "engine/ageing/year_of_use.h"
#include "engine/units/ranged.h"

namespace voltwright::ageing {

/// One swing a day from `top_soc` down by `depth`; the rest of the day lies evenly between the two ends.
struct Duty {
  double temperature_C = 25.0;
  double depth = 0.8;  // 0 = a bank at rest at top_soc
  double top_soc = 1.0;
  double rate_per_h = 0.2;  // of charging and discharging
};

/// A year of such days.
YearOfUse year_of(const Duty& duty);

/// Longest time that is looked for [years].
inline constexpr double kLongestLookedFor_years = 60.0;

/// What the laws say of a use. Laws that know nothing of rest or of swings are asked only if the use has none
/// of what they miss, or if no other is there.
struct SaidLife {
  std::string law;      // id of the opinion that leads
  units::Ranged years;  // least, leading, most of the laws asked; kLongestLookedFor_years = that or longer
  Reach reach = Reach::kInside;  // of the leading law at the end of the life
};

/// Years until the capacity is down to `share`. @pre opinions not empty
SaidLife said_life(const std::vector<Opinion>& opinions, const YearOfUse& year, double share);

/// One duty of the map.
struct Mapped {
  Duty duty;
  SaidLife life;
};

/// Columns of a life map: years to 80 % of a mean cell.
struct LifeMap {
  std::vector<Mapped> by_depth;    // depth and temperature, one cycle a day from full
  std::vector<Mapped> by_ceiling;  // half of the capacity a day, from a lower and lower full
  std::vector<Mapped> by_storage;  // at rest at a charge, at two temperatures
};

/// @param must_be_filled  lead-acid: there is no choice of ceiling or storage charge, and no map of them
LifeMap life_map(const std::vector<Opinion>& opinions, bool must_be_filled);

/// One habit and what it brings.
struct Gain {
  std::string habit;                             // "cooler by 10 K"
  double times = 1.0;                            // life after it over life before it
  double before_years = 0.0, after_years = 0.0;  // to 80 %, of a mean cell, by one law, no feedback
  std::string note;                              // what to mind; may be empty
};

/// Which habits are worth asking of a use.
struct Habits {
  double plates_doubling_K = 0.0;  // lead-acid: rise that doubles its corrosion; 0 = lithium
};

/// "What makes it last": the same use cooler by 10 K, from twice the bank, stopping at 90 % (not of
/// lead-acid, which must be filled), and time at rest at half charge (likewise), ordered by gain. `rest` are
/// the places of the exposures in `year` that are rest.
std::vector<Gain> what_helps(const Law& law, const YearOfUse& year, const std::vector<std::size_t>& rest,
                             const Habits& habits);

}  // namespace voltwright::ageing
