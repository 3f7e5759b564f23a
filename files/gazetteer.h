#pragma once
// Place names: some 23,000 towns of the world with position, height and time zone (GeoNames, CC BY 4.0).
#include <optional>
#include <string>
#include <string_view>
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

 private:
  std::vector<Entry> entries_;
  std::vector<std::pair<std::string, std::size_t>> by_name_;  // folded name or other name -> entry, sorted
};

}  // namespace voltwright::files
