#pragma once
// Catalogue records that a row names.
#include <string>

#include "tests/published/catalogue/curve_at.h"
#include "tests/published/cells/row.h"

namespace voltwright::published {

/// The chemistry that the input `record` names; an empty one, and a mistake noted, if there is none.
inline const cell::Chemistry& record_of(Inputs& in) {
  static const cell::Chemistry kNone;
  const std::string id = in.text("record");
  const cell::Chemistry* found = catalogue().chemistry(id);
  if (found == nullptr) in.refuse("there is no record '" + id + "'");
  return found == nullptr ? kNone : *found;
}

/// The battery that the input `battery` names, likewise.
inline const bank::Battery& battery_of(Inputs& in) {
  static const bank::Battery kNone;
  const std::string id = in.text("battery");
  const bank::Battery* found = catalogue().battery(id);
  if (found == nullptr) in.refuse("there is no battery '" + id + "'");
  return found == nullptr ? kNone : *found;
}

}  // namespace voltwright::published
