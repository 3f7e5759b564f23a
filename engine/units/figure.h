#pragma once
// Numbers as text for sentences: enough digits, thousands separated, the unit after a narrow no-break space.
#include <string>

namespace voltwright::units {

/// "1,485", "52", "4.7", "0.35": three significant digits, whole from 100 on, thousands with commas.
std::string figure(double value);

/// figure(value), narrow no-break space, unit.
std::string figure(double value, const std::string& unit);

/// A percentage with two significant digits: "0.35 %", "4.2 %", "37 %".
std::string percent(double share);

/// "1,485" of a count, every digit kept.
std::string with_thousands(long long count);

}  // namespace voltwright::units
