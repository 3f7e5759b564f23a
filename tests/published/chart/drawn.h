#pragma once
// The chart of the catalogue packed into the program.
#include <optional>
#include <stdexcept>
#include <string_view>

#include "engine/chart/chart.h"
#include "engine/chart/placing.h"
#include "files/chart_catalogue.h"

namespace voltwright::published {

inline const files::ChartCatalogue& chart_catalogue() {
  static const files::ChartCatalogue kCatalogue = files::read_chart_catalogue().value();
  return kCatalogue;
}

inline const chart::Kind& kind(std::string_view id) {
  for (const chart::Kind& one : chart_catalogue().kinds) {
    if (one.id == id) return one;
  }
  throw std::out_of_range(std::string(id));
}

/// The figure as of a year; throws if there is none.
inline const chart::Fact& figure(std::string_view id, chart::Quantity quantity, chart::Level level,
                                 int year) {
  const chart::Fact* found = chart::as_of(kind(id), quantity, level, year);
  if (found == nullptr) throw std::out_of_range(std::string(id));
  return *found;
}

/// Places of every kind as of a year, every matter once.
class Places {
 public:
  explicit Places(int year)
      : chart_(chart::draw(chart_catalogue().kinds, year, std::nullopt)),
        scores_(chart::score(chart_, chart::even_weighting())) {}
  Places(const Places&) = delete;
  Places& operator=(const Places&) = delete;

  /// Throws if the kind has no figure in this matter.
  double of(std::string_view id, chart::Matter matter) const {
    for (const chart::Score& score : scores_) {
      if (score.row->kind->id == id) return score.place(matter).value().place;
    }
    throw std::out_of_range(std::string(id));
  }

 private:
  chart::Chart chart_;
  std::vector<chart::Score> scores_;
};

}  // namespace voltwright::published
