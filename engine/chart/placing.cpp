#include "engine/chart/placing.h"

#include <algorithm>

namespace voltwright::chart {

namespace {

void place_all(const Chart& chart, Matter matter, std::size_t column, std::vector<Score>& scores) {
  std::vector<std::optional<Standing>> standings;
  for (const Row& row : chart.rows) standings.push_back(standing_of(row, matter));
  const auto known = std::count_if(standings.begin(), standings.end(), [](const auto& s) { return bool(s); });
  for (std::size_t i = 0; i < standings.size(); ++i) {
    const std::optional<Standing>& own = standings[i];
    if (!own) continue;
    int better = 0;
    int equal = 0;  // itself among them
    for (const auto& other : standings) {
      if (!other) continue;
      if (other->key > own->key) ++better;
      if (other->key == own->key) ++equal;
    }
    Place place;
    place.standing = *own;
    place.among = static_cast<int>(known);
    place.place = better + 0.5 * (equal + 1);
    place.points = known > 1 ? (place.among - place.place) / (place.among - 1) : 1.0;
    scores[i].places[column] = std::move(place);
  }
}

void weigh(const Weighting& weighting, Score& score) {
  double sum = 0.0;
  for (const Weight& weight : weighting.weights) {
    if (weight.weight <= 0.0) continue;
    sum += weight.weight;
    if (const auto& place = score.place(weight.matter)) {
      score.least += weight.weight * place->points;
      score.most += weight.weight * place->points;
    } else {
      score.most += weight.weight;
      score.missing.push_back(weight.matter);
    }
  }
  if (sum <= 0.0) return;
  score.least /= sum;
  score.most /= sum;
}

}  // namespace

const std::optional<Place>& Score::place(Matter matter) const {
  const auto found = std::find(kMatters.begin(), kMatters.end(), matter);
  return places[static_cast<std::size_t>(found - kMatters.begin())];
}

std::vector<Score> score(const Chart& chart, const Weighting& weighting) {
  std::vector<Score> scores(chart.rows.size());
  for (std::size_t i = 0; i < chart.rows.size(); ++i) scores[i].row = &chart.rows[i];
  for (std::size_t column = 0; column < kMatters.size(); ++column) {
    place_all(chart, kMatters[column], column, scores);
  }
  for (Score& one : scores) weigh(weighting, one);
  const auto better = [](const Score& a, const Score& b) {
    return a.least != b.least ? a.least > b.least : a.most > b.most;
  };
  std::stable_sort(scores.begin(), scores.end(), better);
  for (std::size_t i = 0; i < scores.size(); ++i) {
    const bool as_before = i > 0 && !better(scores[i - 1], scores[i]);
    scores[i].rank = as_before ? scores[i - 1].rank : static_cast<int>(i) + 1;
  }
  return scores;
}

}  // namespace voltwright::chart
