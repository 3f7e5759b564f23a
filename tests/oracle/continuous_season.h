#pragma once
// The whole system in continuous time: the right-hand side with its bus, and everything that switches -
// charge stages, temperature blocks, loads off - at the instant it does. Rules:
// docs/method/{charging,protection}.md.
#include <array>
#include <functional>
#include <string>
#include <vector>

#include "engine/season/system.h"
#include "tests/oracle/bus.h"
#include "tests/oracle/integrator.h"

namespace voltwright::oracle {

/// A stretch of time in which nothing jumps from outside.
struct Piece {
  double start_s = 0.0;
  double load_W = 0.0;
  bool sun = false;  // then the solar power is positive
  bool mains = false;
};

/// What comes from outside, in continuous time.
struct Outside {
  std::vector<Piece> pieces;  // the first starts at 0
  std::function<double(double t_s)> solar_W;
  std::function<double(double t_s)> air_C;
};

/// Something that switched.
struct Change {
  double t_s = 0.0;
  std::string what;
};

/// "solar absorption": a charger and its stage (0 bulk, 1 absorption, 2 float or rest).
std::string stage_name(std::size_t kind, double stage);

/// Blocks of the protection that this season knows; that the bank never runs empty is for the caller to see
/// to.
struct Blocks {
  bool charge_cold = false, charge_hot = false, discharge_cold = false, discharge_hot = false;
  bool over_voltage = false;
  bool charge() const { return charge_cold || charge_hot || over_voltage; }
  bool discharge() const { return discharge_cold || discharge_hot; }
};

class ContinuousSeason {
 public:
  /// `system` gives thresholds, stages and limits; bank, system and outside outlive the season.
  ContinuousSeason(const Bank& bank, const season::System<double>& system, const Outside& outside,
                   std::vector<double> start);

  /// @throws std::runtime_error if the bank runs empty or the integrator fails
  void run_to(double end_s);

  std::span<const double> state() const { return integrator_.state(); }
  const std::vector<Change>& changes() const { return changes_; }
  long steps() const { return integrator_.steps(); }

 private:
  static constexpr std::size_t kKinds = season::kSourceKinds;
  static constexpr std::size_t kTemperatureEvents = 8;
  static constexpr std::size_t kEvents = 3 * kKinds + kTemperatureEvents + 5;

  struct Instant {
    Poles poles;
    std::array<Source, kKinds> sources;
    BusPoint point;
    bool loads_on = true;
  };
  struct Charging {
    double stage = 0.0;
    double held_s = 0.0;     // holding the voltage of absorption
    double without_s = 0.0;  // since there was a source
  };

  Instant instant(double t_s, std::span<const double> y) const;
  bool sources_suffice(const Instant& now) const;
  void events(double t_s, std::span<const double> y, std::span<double> g) const;
  void read_signs();
  void settle();
  bool switch_blocks();
  bool switch_stages();
  bool move(std::size_t kind, double stage);
  bool set(bool& block, bool sets, bool clears, const char* name);
  void begin_piece(std::size_t index);
  double next_stop_s(double end_s) const;
  void count_time(double step_s);

  const Bank* bank_;
  const season::System<double>* system_;
  const Outside* outside_;
  std::size_t piece_ = 0;
  Blocks blocks_;
  std::array<Charging, kKinds> charging_;
  std::array<double, kEvents> signs_{};
  std::vector<Change> changes_;
  Integrator integrator_;
};

}  // namespace voltwright::oracle
