#include "files/gazetteer.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>

#include "engine/base/trimmed.h"
#include "files/embedded.h"
#include "files/fingerprint.h"
#include "files/fold.h"
#include "files/great_circle.h"
#include "files/number_table.h"
#include "files/text_problem.h"

namespace voltwright::files {

namespace {

constexpr double kZoneReach_km = 100.0;
constexpr double kLabelReach_km = 25.0;
constexpr double kKmPerDegree = 111.0;
constexpr std::size_t kMostProblems = 20;
constexpr std::size_t kFields = 19;
constexpr std::size_t kLongestName = 100;

/// Takes the text up to the next separator off the front.
std::string_view take(std::string_view& text, char separator) {
  const std::size_t end = text.find(separator);
  const std::string_view part = text.substr(0, end);
  text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
  return part;
}

/// Levenshtein distance of two texts, or more than `most` as soon as that is certain.
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t most) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > most || a.size() > kLongestName) return most + 1;
  std::array<std::size_t, kLongestName + 1> row{};
  for (std::size_t i = 0; i <= a.size(); ++i) row[i] = i;
  for (std::size_t j = 1; j <= b.size(); ++j) {
    std::size_t diagonal = row[0];
    row[0] = j;
    std::size_t least = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
      const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U);
      diagonal = row[i];
      row[i] = std::min({changed, row[i] + 1, row[i - 1] + 1});
      least = std::min(least, row[i]);
    }
    if (least > most) return most + 1;
  }
  return row[a.size()];
}

/// Height from the elevation model, else the stated elevation, else sea level.
double height_of(std::string_view model, std::string_view stated) {
  const auto modelled = to_number(model);
  if (modelled && *modelled > -500.0) return *modelled;
  return std::clamp(to_number(stated).value_or(0.0), -500.0, 9000.0);
}

}  // namespace

base::Result<Gazetteer> Gazetteer::parse(std::string_view text) {
  Gazetteer gazetteer;
  base::Problems problems;
  const auto problem = [&](int line, const char* what, std::string_view given, const char* limit) {
    if (problems.size() >= kMostProblems) return;
    problems.push_back(text_problem("places/cities15000.txt", line, 1,
                                    {.what = what,
                                     .field = "",
                                     .given = std::string(given.substr(0, 60)),
                                     .limit = limit,
                                     .remedy = "Use the place list as GeoNames publishes it."}));
  };
  gazetteer.entries_.reserve(text.size() / 200);
  gazetteer.by_name_.reserve(text.size() / 12);
  std::string folded;
  int line_number = 0;
  while (!text.empty()) {
    std::string_view line = take(text, '\n');
    ++line_number;
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (line.empty()) continue;
    std::array<std::string_view, kFields> field;
    std::size_t count = 0;
    for (std::string_view rest = line; count < kFields && !rest.empty(); ++count)
      field[count] = take(rest, '\t');
    const auto latitude = to_number(field[4]);
    const auto longitude = to_number(field[5]);
    if (count < kFields - 1) {
      problem(line_number, "The row of the place list is too short.", std::to_string(count) + " fields",
              "19 fields");
      continue;
    }
    if (!latitude || !longitude || std::abs(*latitude) > 90.0 || std::abs(*longitude) > 180.0) {
      problem(line_number, "The position is not on Earth.", field[4],
              "latitude -90..90, longitude -180..180");
      continue;
    }
    const auto index = static_cast<std::uint32_t>(gazetteer.entries_.size());
    Entry entry{.name = std::string(field[1]),
                .folded = fold(field[1]),
                .country = std::string(field[8]),
                .zone = std::string(field[17]),
                .site = {*latitude, *longitude, height_of(field[16], field[15])},
                .population = std::lround(std::clamp(to_number(field[14]).value_or(0.0), 0.0, 1e9))};
    gazetteer.by_name_.emplace_back(Fingerprint().add(entry.folded).value(), index);
    gazetteer.entries_.push_back(std::move(entry));
    fold_into(field[2], folded);
    gazetteer.by_name_.emplace_back(Fingerprint().add(folded).value(), index);
    for (std::string_view others = field[3]; !others.empty();) {
      fold_into(take(others, ','), folded);
      if (!folded.empty()) gazetteer.by_name_.emplace_back(Fingerprint().add(folded).value(), index);
    }
  }
  if (!problems.empty()) return problems;
  std::sort(gazetteer.by_name_.begin(), gazetteer.by_name_.end());
  return gazetteer;
}

base::Result<Gazetteer> Gazetteer::built_in() {
  for (const EmbeddedFile& file : embedded_catalogue()) {
    if (file.name == "places/cities15000.txt") return parse(file.bytes);
  }
  base::Problem problem;
  problem.what = "The place list is missing from the program.";
  problem.remedy = "Build the program with the place list installed.";
  return problem;
}

std::optional<journey::Place> Gazetteer::find(std::string_view name) const {
  const auto largest = [this](std::string_view wanted, std::string_view country) {
    const std::string folded = fold(base::trimmed(wanted));
    const Entry* best = nullptr;
    if (folded.empty()) return best;
    const std::uint64_t hash = Fingerprint().add(folded).value();
    for (auto it = std::lower_bound(by_name_.begin(), by_name_.end(), std::pair(hash, std::uint32_t{0}));
         it != by_name_.end() && it->first == hash; ++it) {
      const Entry& entry = entries_[it->second];
      if (!country.empty() && fold(entry.country) != country) continue;
      if (best == nullptr || entry.population > best->population) best = &entry;
    }
    return best;
  };
  const Entry* found = largest(name, {});
  const std::size_t comma = name.rfind(',');
  if (found == nullptr && comma != std::string_view::npos) {
    const std::string country = fold(base::trimmed(name.substr(comma + 1)));
    if (country.size() == 2) found = largest(name.substr(0, comma), country);
  }
  if (found == nullptr) return std::nullopt;
  return journey::Place{.name = found->name, .zone = found->zone, .site = found->site};
}

std::vector<std::string> Gazetteer::near_names(std::string_view name) const {
  const std::size_t comma = name.rfind(',');
  if (comma != std::string_view::npos && base::trimmed(name.substr(comma + 1)).size() == 2)
    name = name.substr(0, comma);
  const std::string wanted = fold(base::trimmed(name));
  std::vector<std::string> names;
  if (wanted.empty() || wanted.size() > kLongestName) return names;
  struct Candidate {
    std::size_t distance;
    const Entry* entry;
  };
  std::vector<Candidate> candidates;
  const std::size_t most = std::max<std::size_t>(2, wanted.size() / 3);
  for (const Entry& entry : entries_) {
    const std::size_t distance = edit_distance(wanted, entry.folded, most);
    if (distance <= most) candidates.push_back({distance, &entry});
  }
  std::stable_sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
    return a.distance != b.distance ? a.distance < b.distance : a.entry->population > b.entry->population;
  });
  for (const Candidate& c : candidates) {
    if (std::find(names.begin(), names.end(), c.entry->name) == names.end()) names.push_back(c.entry->name);
    if (names.size() == 3) break;
  }
  return names;
}

const Gazetteer::Entry* Gazetteer::nearest_within(double latitude_deg, double longitude_deg,
                                                  double reach_km) const {
  const sky::Site site{std::clamp(latitude_deg, -90.0, 90.0), longitude_deg, 0.0};
  const Entry* nearest = nullptr;
  double nearest_km = reach_km;
  for (const Entry& entry : entries_) {
    if (std::abs(entry.site.latitude_deg - site.latitude_deg) * kKmPerDegree > nearest_km) continue;
    const double distance_km = great_circle_km(site, entry.site);
    if (distance_km <= nearest_km) {
      nearest = &entry;
      nearest_km = distance_km;
    }
  }
  return nearest;
}

std::string Gazetteer::zone_at(double latitude_deg, double longitude_deg) const {
  if (!std::isfinite(latitude_deg) || !std::isfinite(longitude_deg)) return "Etc/GMT";
  const double east_deg = std::remainder(longitude_deg, 360.0);
  const Entry* nearest = nearest_within(latitude_deg, east_deg, kZoneReach_km);
  if (nearest != nullptr) return nearest->zone;
  // The sign of these zone names is that of POSIX: west of Greenwich is "+".
  const long hours = std::lround(east_deg / 15.0);
  if (hours == 0) return "Etc/GMT";
  return "Etc/GMT" + std::string(hours > 0 ? "-" : "+") + std::to_string(std::abs(hours));
}

std::string Gazetteer::label_at(double latitude_deg, double longitude_deg) const {
  const Entry* nearest = nearest_within(latitude_deg, longitude_deg, kLabelReach_km);
  return nearest != nullptr ? nearest->name : fmt::format("{:.2f}, {:.2f}", latitude_deg, longitude_deg);
}

}  // namespace voltwright::files
