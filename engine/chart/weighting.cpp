#include "engine/chart/weighting.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "engine/base/edit_distance.h"
#include "engine/base/trimmed.h"

namespace voltwright::chart {

namespace {

base::Problem problem_of(std::string what, std::string_view given, std::string remedy) {
  base::Problem problem;
  problem.field = "--weigh";
  problem.what = std::move(what);
  problem.given = given;
  problem.remedy = std::move(remedy);
  return problem;
}

std::string all_matters() {
  std::string names;
  for (const Matter matter : kMatters) {
    if (!names.empty()) names += ", ";
    names += name_of(matter);
  }
  return names;
}

base::Problem unknown_matter(std::string_view name) {
  constexpr int kNear = 2;
  for (const Matter matter : kMatters) {
    if (base::edit_distance(name, name_of(matter)) <= kNear) {
      return problem_of("This matter is not weighed.", name,
                        "Did you mean \"" + std::string(name_of(matter)) + "\"?");
    }
  }
  return problem_of("This matter is not weighed.", name, "Use one of " + all_matters() + ".");
}

void take(std::string_view part, Weighting& weighting, base::Problems& problems) {
  const std::size_t equals = part.find('=');
  if (equals == std::string_view::npos) {
    problems.push_back(problem_of("A weight has no number.", part, "Write matter=number, such as energy=3."));
    return;
  }
  const std::string_view name = base::trimmed(part.substr(0, equals));
  const std::string_view number = base::trimmed(part.substr(equals + 1));
  double weight = 0.0;
  const auto end = std::from_chars(number.data(), number.data() + number.size(), weight);
  if (number.empty() || end.ec != std::errc() || end.ptr != number.data() + number.size() ||
      !std::isfinite(weight) || weight < 0.0 || weight > kGreatestWeight) {
    problems.push_back(
        problem_of("This is no weight.", number, "Give a number from 0 to 100, with a point for decimals."));
    return;
  }
  const auto matter = matter_named(name);
  if (!matter) {
    problems.push_back(unknown_matter(name));
    return;
  }
  const auto twice = std::find_if(weighting.weights.begin(), weighting.weights.end(),
                                  [&](const Weight& w) { return w.matter == *matter; });
  if (twice != weighting.weights.end()) {
    problems.push_back(problem_of("This matter is weighed twice.", name, "Keep one of the two."));
    return;
  }
  weighting.weights.push_back({*matter, weight});
}

std::string plain_number(double value) {
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  return {buffer.data(), end.ptr};
}

}  // namespace

Weighting even_weighting() {
  Weighting weighting;
  weighting.id = "even";
  weighting.name = "Every matter once";
  for (const Matter matter : kMatters) weighting.weights.push_back({matter, 1.0});
  return weighting;
}

base::Result<Weighting> parse_weighting(std::string_view text) {
  Weighting weighting;
  weighting.name = "Your own weights";
  base::Problems problems;
  std::string_view rest = text;
  while (true) {
    const std::size_t comma = rest.find(',');
    take(base::trimmed(rest.substr(0, comma)), weighting, problems);
    if (comma == std::string_view::npos) break;
    rest.remove_prefix(comma + 1);
  }
  if (!problems.empty()) return problems;
  const bool counts = std::any_of(weighting.weights.begin(), weighting.weights.end(),
                                  [](const Weight& w) { return w.weight > 0.0; });
  if (!counts) return problem_of("Nothing counts.", text, "Give one matter a weight above 0.");
  return weighting;
}

std::string to_text(const Weighting& weighting) {
  std::string text;
  for (const Weight& weight : weighting.weights) {
    if (weight.weight <= 0.0) continue;
    if (!text.empty()) text += ", ";
    text += name_of(weight.matter);
    text += ' ';
    text += plain_number(weight.weight);
  }
  return text;
}

}  // namespace voltwright::chart
