#pragma once
// An ordinary differential equation library behind a small class: variable order, variable step, stiff, with
// root-finding. Everything it allocates is freed again; whatever it refuses becomes an exception, which fails
// the test that asked.
#include <functional>
#include <memory>
#include <span>
#include <vector>

namespace voltwright::oracle {

/// Writes dy/dt [per second] at time t [s] into the last argument.
using Slope = std::function<void(double t_s, std::span<const double> y, std::span<double> dydt)>;
/// Writes functions of time and state whose zeros are events into the last argument.
using Events = std::function<void(double t_s, std::span<const double> y, std::span<double> g)>;

/// Where an integration stopped: at the time asked for, or at the first event before it.
struct Stop {
  double t_s = 0.0;
  std::vector<int>
      crossed;  // of each event: +1 rising, -1 falling through zero, 0 not met; empty if none was

  bool met(std::size_t event) const { return event < crossed.size() && crossed[event] != 0; }
};

/// Backward differentiation formulas with a dense Jacobian by differences.
class Integrator {
 public:
  /// @param start           state at time 0
  /// @param absolute        absolute tolerance of each unknown, beside the relative one of 1e-9
  /// @param events          may be empty if event_count is 0
  Integrator(std::vector<double> start, std::vector<double> absolute, Slope slope,
             std::size_t event_count = 0, Events events = {});
  ~Integrator();
  Integrator(const Integrator&) = delete;
  Integrator& operator=(const Integrator&) = delete;

  /// Integrates from where it is to t_s, or to the first event before it.
  /// @throws std::runtime_error with the library's own name of what went wrong
  Stop run_to(double t_s);

  /// Forgets the past: after a jump of the right-hand side, or of the state.
  void restart();

  /// The unknowns now; may be changed before a restart.
  std::span<double> state();
  std::span<const double> state() const;
  double time_s() const;
  /// Steps taken since the beginning.
  long steps() const;

 private:
  struct Library;
  std::unique_ptr<Library> library_;
};

}  // namespace voltwright::oracle
