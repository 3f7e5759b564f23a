#pragma once
// Straight lines between the points of a catalogue curve, for the published cases here.
#include "engine/cell/chemistry.h"
#include "files/catalogue.h"

namespace voltwright::published {

inline double curve_at(const cell::Curve& curve, double x) {
  if (x <= curve.front().x) return curve.front().y;
  for (std::size_t i = 1; i < curve.size(); ++i) {
    const auto& a = curve[i - 1];
    const auto& b = curve[i];
    if (x <= b.x) return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
  }
  return curve.back().y;
}

/// The catalogue packed into the program; read once.
inline const files::Catalogue& catalogue() {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return kCatalogue;
}

inline const cell::Chemistry& chemistry(const char* id) { return *catalogue().chemistry(id); }

}  // namespace voltwright::published
