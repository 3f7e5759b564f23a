#pragma once
// Climate of any point from station normals and sea cells, and the matrices of daily clearness.
#include <array>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/sky/clearness.h"
#include "engine/sky/weather.h"

namespace voltwright::files {

class ClimateTable {
 public:
  /// The tables packed into the program.
  static base::Result<ClimateTable> built_in();

  /// Monthly normals for a point: nearest good stations weighted by distance, temperatures moved to the
  /// height of the point (-6.5 K/km); sea cells where no station is near. `origin` says which and how far.
  base::Result<sky::MonthlyClimate> at(const sky::Site& site) const;

  const sky::ClearnessMatrices& matrices() const { return matrices_; }

 private:
  struct Station;
  struct SeaCell;
  struct TurbiditySite;
  struct TurbidityGroup;
  struct Near;
  std::vector<Near> near_stations(const sky::Site& site) const;
  sky::MonthlyClimate land_climate(const sky::Site& site, const std::vector<Near>& near) const;
  void add_temperature(const sky::Site& site, const std::vector<Near>& near,
                       sky::MonthlyClimate& climate) const;
  void add_daily_range(const std::vector<Near>& near, sky::MonthlyClimate& climate) const;
  void add_clearness(const std::vector<Near>& near, sky::MonthlyClimate& climate) const;
  std::array<double, 12> station_clearness(const Station& station, std::string& method) const;
  sky::MonthlyClimate sea_climate(const sky::Site& site) const;
  void add_turbidity(const sky::Site& site, bool at_sea, sky::MonthlyClimate& climate) const;
  std::vector<Station> stations_;
  std::vector<SeaCell> sea_;
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
