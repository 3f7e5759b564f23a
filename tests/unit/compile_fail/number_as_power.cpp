#include "engine/units/quantity.h"

namespace voltwright::units {

#ifdef VW_WRONG
constexpr Power kPower = 45.0;
#else
constexpr Power kPower = watts(45.0);
#endif

}  // namespace voltwright::units
