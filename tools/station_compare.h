#pragma once
// Which station stands out from its neighbours.
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tools/station_check.h"

namespace voltwright::tools {

/// What stands out most, as a multiple of what is allowed.
struct Doubt {
  std::size_t index = 0;
  double share = 1.0;
  std::string part, reason;
  bool beyond = false;  // so far off that it must be left out
};

/// Compares stations with those around them; limits in docs/method/climate.md. Stations and their has_ flags
/// may change between calls.
class Comparison {
 public:
  explicit Comparison(const std::vector<Station>& stations);

  /// The station that is furthest beyond a limit; a share of 1 if none is.
  Doubt worst() const;

  /// Why a station that is kept is doubtful: near a limit, isolated, or unlike what lies within 600 km. An
  /// empty reason if it is not.
  Doubt doubt(std::size_t index) const;

 private:
  struct Neighbour {
    std::size_t index;
    double height_m;  // of this station above the neighbour
  };
  using Clearness = std::array<std::optional<double>, 13>;  // months, then the year
  static Clearness clearness_of(const Station& station);
  void compare(std::size_t i, const std::vector<Neighbour>& near, double looser, Doubt& doubt) const;
  void compare_temperature(std::size_t i, const std::vector<Neighbour>& near, double looser,
                           Doubt& doubt) const;
  void compare_range(std::size_t i, const std::vector<Neighbour>& near, double looser, Doubt& doubt) const;
  void compare_clearness(std::size_t i, const std::vector<Neighbour>& near, double looser,
                         Doubt& doubt) const;
  std::size_t comparable(const std::vector<Neighbour>& near) const;

  const std::vector<Station>& stations_;
  std::vector<std::vector<Neighbour>> near_;
  std::vector<std::vector<Neighbour>> far_;
  std::vector<Clearness> clearness_;
};

}  // namespace voltwright::tools
