#pragma once
// Small made-up kinds; no figure here is one of a real battery.
#include <string>
#include <utility>

#include "engine/chart/kind.h"

namespace voltwright::chart {

inline Fact fact(Quantity quantity, int year, double typical, Level level = Level::kCell) {
  Fact made;
  made.quantity = quantity;
  made.level = level;
  made.year = year;
  made.value = {0.5 * typical, typical, 2.0 * typical};
  made.from = "made up";
  return made;
}

inline Fact cycles(int year, double depth, double typical) {
  Fact made = fact(Quantity::kCycles, year, typical);
  made.depth = depth;
  return made;
}

inline Kind kind(std::string id, std::vector<Fact> facts) {
  Kind made;
  made.id = std::move(id);
  made.short_name = made.id;
  made.facts = std::move(facts);
  return made;
}

}  // namespace voltwright::chart
