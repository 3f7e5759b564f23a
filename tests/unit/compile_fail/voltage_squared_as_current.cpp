#include "engine/units/quantity.h"

namespace voltwright::units {

#ifdef VW_WRONG
constexpr Current kCurrent = volts(2) * volts(3);
#else
constexpr Current kCurrent = volts(6) / ohms(3);
#endif

}  // namespace voltwright::units
