#include "engine/units/quantity.h"

namespace voltwright::units {

#ifdef VW_WRONG
constexpr auto kSum = celsius(20) + celsius(5);
#else
constexpr auto kSum = celsius(20) + kelvins(5);
#endif

}  // namespace voltwright::units
