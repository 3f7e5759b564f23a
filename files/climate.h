#pragma once
// Climate of any point from station normals and sea cells, and the matrices of daily clearness.
#include <array>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/sky/clearness.h"
#include "engine/sky/weather.h"

namespace voltwright::files {

/// A station or sea cell that a climate rests on. The weights of the same use sum to 1.
struct ClimateSource {
  std::string use;   // "temperature", "daily range", "sunshine", "turbidity"; "sea" for a cell of the atlas
  std::string id;    // WMO number of a station, else empty
  std::string name;  // of a cell: position of its centre
  double distance_km = 0.0;
  double height_m = 0.0;  // source above the place; 0 at sea
  double weight = 0.0;
};

class ClimateTable {
 public:
  /// The tables packed into the program.
  static base::Result<ClimateTable> built_in();

  /// Monthly normals for a point: nearest good stations weighted by distance, temperatures moved to the
  /// height of the point (-6.5 K/km); sea cells where no station is near, coast stations on
  /// enclosed seas. `origin` says which and how far.
  /// The sources are added to `sources` unless it is null.
  base::Result<sky::MonthlyClimate> at(const sky::Site& site,
                                       std::vector<ClimateSource>* sources = nullptr) const;

  const sky::ClearnessMatrices& matrices() const { return matrices_; }

 private:
  struct Station;
  struct SeaCell;
  struct EnclosedSea;
  struct TurbiditySite;
  struct TurbidityGroup;
  struct Near;
  std::vector<Near> near_stations(const sky::Site& site) const;
  struct Draft;
  void land_climate(const sky::Site& site, const std::vector<Near>& near, Draft& draft) const;
  static void add_temperature(const sky::Site& site, const std::vector<Near>& near, Draft& draft);
  static void add_daily_range(const sky::Site& site, const std::vector<Near>& near, Draft& draft);
  void add_clearness(const sky::Site& site, const std::vector<Near>& near, Draft& draft) const;
  std::array<double, 12> station_clearness(const Station& station, std::string& method) const;
  void sea_climate(const sky::Site& site, Draft& draft) const;
  const EnclosedSea* enclosed_sea_at(const sky::Site& site, double station_km) const;
  std::vector<Near> coast_stations(const EnclosedSea& sea, const std::vector<Near>& near) const;
  void enclosed_climate(const sky::Site& site, const EnclosedSea& sea, const std::vector<Near>& coast,
                        Draft& draft) const;
  void add_turbidity(const sky::Site& site, bool at_sea, Draft& draft) const;
  std::vector<Station> stations_;
  std::vector<SeaCell> sea_;
  std::vector<EnclosedSea> enclosed_;
  std::vector<TurbiditySite> turbidity_;
  std::vector<TurbidityGroup> groups_;
  sky::ClearnessMatrices matrices_;

 public:
  ClimateTable();
  ~ClimateTable();
  ClimateTable(ClimateTable&&) noexcept;
  ClimateTable& operator=(ClimateTable&&) noexcept;
};

}  // namespace voltwright::files
