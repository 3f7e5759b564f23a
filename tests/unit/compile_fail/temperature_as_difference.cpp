#include "engine/units/quantity.h"

namespace voltwright::units {

#ifdef VW_WRONG
constexpr TemperatureDifference kPoint = celsius(20) - kelvins(5);
#else
constexpr Temperature kPoint = celsius(20) - kelvins(5);
#endif

}  // namespace voltwright::units
