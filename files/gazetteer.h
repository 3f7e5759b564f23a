#pragma once
// Place names: some 23,000 towns of the world with position, height and time zone (GeoNames, CC BY 4.0).
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/result.h"
#include "engine/journey/leg.h"

namespace voltwright::files {

class Gazetteer {
 public:
  struct Entry {
    std::string name;
    std::string folded;  // lower case, without accents
    std::string country;
    std::string zone;
    sky::Site site;
    long population = 0;
  };

  /// Reads the tab-separated place list.
  static base::Result<Gazetteer> parse(std::string_view text);
  /// The place list packed into the program.
  static base::Result<Gazetteer> built_in();

  /// Largest place whose name or other name equals `name` regardless of case and accents; "Name, CC" picks a
  /// country.
  std::optional<journey::Place> find(std::string_view name) const;
  /// Up to three names that look most like `name`.
  std::vector<std::string> near_names(std::string_view name) const;
  /// Time zone of the nearest place within 100 km, else the nautical zone of the longitude ("Etc/GMT+3").
  std::string zone_at(double latitude_deg, double longitude_deg) const;
  /// Name of the nearest place within 25 km ("Oslo"), else the point in degrees ("69.65, 18.96").
  std::string label_at(double latitude_deg, double longitude_deg) const;

 private:
  const Entry* nearest_within(double latitude_deg, double longitude_deg, double reach_km) const;

  std::vector<Entry> entries_;
  // Hash of a folded name or other name -> entry, sorted. Half a million names as 64-bit hashes: a false
  // match has a chance of about 1 in 10^13 a search, and reading the list stays fast.
  std::vector<std::pair<std::uint64_t, std::uint32_t>> by_name_;
};

}  // namespace voltwright::files
