#include "engine/units/quantity.h"

namespace voltwright::units {

#ifdef VW_WRONG
constexpr auto kSum = ampere_hours(1) + watt_hours(1);
#else
constexpr auto kSum = ampere_hours(1) + ampere_hours(1);
#endif

}  // namespace voltwright::units
