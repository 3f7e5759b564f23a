#pragma once
// The assembled direct-current system: bank, chargers, loads and inverter on one bus, and its state.
#include <array>
#include <cstddef>
#include <cstdint>

#include "engine/bank/balancing.h"
#include "engine/bank/electrochemistry.h"
#include "engine/bank/protection.h"
#include "engine/supply/stages.h"

namespace voltwright::season {

/// The kinds of source on the bus, in the order in which they are used. The generator set feeds the mains
/// charger.
enum SourceKind : std::size_t { kSolar, kWind, kWater, kEngine, kMains, kGenerator, kSourceKinds };

/// Loads with a cable and a cut-off of their own, beyond the direct loads at the bus.
inline constexpr std::size_t kMostFarLoads = 4;

struct FarLoad {
  double ohm = 0.0;        // loop of its cable and contacts
  double cut_off_V = 0.0;  // at the load; 0 = none
  double restart_V = 0.0;
};

/// What does not change during a season. Scalars are shared by all lanes, R differs from bank to bank.
template <class R>
struct System {
  bank::Parameters<R> bank;
  /// The same bank for shorter steps: a step in which something switches is taken again in these.
  std::array<bank::Parameters<R>, 2> finer;
  std::size_t finer_count = 0;
  double cell_Ah = 100.0;  // rated capacity of one cell
  bank::Guard<R> guard;
  std::array<supply::Charger<R>, kSourceKinds> chargers;
  R peak_A{1e9};                    // a start that asks more of the bank fails
  R start_ahead{0.0};               // of the fullest cell
  R start_charge{1.0};              // state of charge at which the bank's own profile ends
  double inverter_cable_ohm = 0.0;  // loop
  double inverter_cut_off_V = 0.0;
  double inverter_restart_V = 0.0;
  double relay_V = 0.0;      // alternator voltage behind relay_ohm; 0 = no relay
  double relay_low_V = 0.0;  // the same while a controlled alternator saves fuel
  double relay_ohm = 1.0;
  double engine_limit_A = 0.0;
  double engine_low_limit_A = 0.0;
  double mains_limit_A = 0.0;
  double generator_W = 0.0;  // most that the mains charger puts out on the generator set; 0 = no set
  double generator_start_below = 0.0;  // state of charge; 0 = never by itself
  double generator_stop_above = 1.0;
  double heater_W = 0.0;  // of a heated box; 0 = none
  double heater_below_C = 0.0;
  bool heater_on_surplus = false;  // runs on what the sources give beyond the loads, never from the bank
  std::array<FarLoad, kMostFarLoads> far;
  std::size_t far_count = 0;

  /// Constants of the bank for steps of the pace: 0 the whole step, then ever shorter.
  const bank::Parameters<R>& paced(std::size_t pace) const { return pace == 0 ? bank : finer[pace - 1]; }
};

/// Tracked arrays whose controllers are near or at their output limits.
struct LimitedSun {
  float power_W = 0.0F;  // after the controllers, as if they had no limit
  float limit_A = 0.0F;
};

/// Whether the generator set may run in a minute.
enum class GeneratorMinute : std::uint8_t {
  kOff,        // none, quiet hours, or mains is there
  kMay,        // if the bank asks for it
  kScheduled,  // unless the bank is full
};

inline constexpr float kNoLimit = 1e9F;

/// One minute of what all banks share. Powers are means over the minute at the bus.
struct Minute {
  double direct_W = 0.0;            // direct-current loads
  double inverter_W = 0.0;          // input of the inverter
  double essential_direct_W = 0.0;  // parts of the two above
  double essential_inverter_W = 0.0;
  double surge_direct_W = 0.0;  // largest start within the minute, above the running power
  double surge_inverter_W = 0.0;
  std::array<float, kMostFarLoads> far_W{};  // direct loads behind cables of their own, besides direct_W
  std::array<float, kMostFarLoads> essential_far_W{};
  int surge_far = -1;    // the far load whose start surge_direct_W is; -1 = of a load at the bus
  double solar_W = 0.0;  // tracked arrays, after the controller, well below its output limit
  std::array<LimitedSun, 2> limited_sun{};  // tracked arrays near the limit, and far above it
  double solar_A = 0.0;                     // arrays coupled at battery voltage, at coupled_at_V
  float coupled_A_per_V = 0.0F;             // slope of that current
  float coupled_at_V = 0.0F;
  float coupled_over_A = 0.0F;   // what the limits of their controllers hold back of it
  float coupled_limit_A = 0.0F;  // what their controllers let through together; 0 = not known
  float coupled_peak_W = 0.0F;   // at the peaks of their curves; 0 = not known
  bool engine = false;
  bool engine_low = false;  // a controlled alternator holds its low voltage
  bool mains = false;
  GeneratorMinute generator = GeneratorMinute::kOff;
  float wind_W = 0.0F;             // after its controller
  float water_W = 0.0F;            // the same
  float engine_V = 0.0F;           // what the alternator holds; 0 = as the system says
  float engine_most_A = kNoLimit;  // besides the system's limit: spare current, or a converter in warm air
  float engine_most_W = kNoLimit;  // the power that a DC-DC converter finds at its input
  double surroundings_C = 20.0;    // of the bank

  bool has_sun() const {
    return solar_W > 0.0 || solar_A > 0.0 || limited_sun[0].power_W > 0.0F || limited_sun[1].power_W > 0.0F;
  }
  bool has_source() const { return has_sun() || engine || mains || wind_W > 0.0F || water_W > 0.0F; }
};

template <class R>
struct SystemState {
  bank::State<R> bank;
  bank::GuardState<R> guard;
  std::array<supply::StageState<R>, kSourceKinds> stages;
  R bus_V{12.0};
  R inverter_off{0.0};                     // latch, 1 = tripped on low voltage
  std::array<R, kMostFarLoads> far_off{};  // the same for far loads
  R charge_blocked{0.0};                   // by protection, in the step before
  R generator{0.0};                        // 1 = the generator set runs
  R relay_A{0.0};                          // from the alternator through a relay, in the step before
};

/// What one step did: mean powers [W], currents [A, discharge positive] and voltages over the step.
template <class R>
struct StepReport {
  R bus_V, bank_A, inverter_V;
  R solar_W, solar_left_W, engine_W, mains_W;
  R solar_clipped_W, solar_untracked_W;
  R wind_W, water_W, generator_W;
  R generator_on;  // 1 if the generator set ran
  R direct_W, inverter_W, inverter_cable_W, heater_W;
  R far_cable_W;
  R unmet_W, unmet_essential_W;
  bank::StepLosses<R> bank;
  R residual_W;        // what the bus solution leaves unbalanced
  R surge_A, surge_V;  // bank current and lowest voltage at the largest start; 0 if none
  R failed_start;      // 1 if a start pulled a load below its cut-off or the bank over its peak current
  R collapsed;         // 1 if no bus voltage could carry the loads
  R loads_off;         // 1 if all loads were off
  R charge_limit_A;    // what the protection allowed; 0 = charging blocked
  R charge_blocked;    // 1 if protection allowed no charge
  R over_current;      // 1 if the protection opened on over-current
  R frozen;            // 1 if the electrolyte was frozen
  R unwoken;           // 1 if sources were there and none could start on the dead bank
  R load_dump_A;       // what the alternator gave when the protection opened for charge; 0 if it did not
  R far_off;           // 1 if a far load wanted to run and was below its cut-off
};

}  // namespace voltwright::season
