#include "tests/oracle/continuous_season.h"

#include <cmath>
#include <limits>
#include <stdexcept>

#include "engine/base/curve.h"

namespace voltwright::oracle {

namespace {

/// Margins nearer to zero than this have just been met: their sign is that of the crossing.
constexpr double kMet = 1e-6;
constexpr double kAnyRate_per_h = 1e6;
constexpr double kSpare = 1.1;  // sources carry the loads alone with a tenth to spare
constexpr double kEmptyAbove = 1e-3;
constexpr double kNewCharge_s = 3600.0;
constexpr double kRelease = 0.98;  // of the over-voltage
constexpr int kMostSwitches = 20;

// Events: of each kind of source whether it holds, has tapered, is above the new bulk; temperatures; the
// rest.
std::size_t holds(std::size_t kind) { return 3 * kind; }
std::size_t flows(std::size_t kind) { return 3 * kind + 1; }
std::size_t above_rebulk(std::size_t kind) { return 3 * kind + 2; }
constexpr std::size_t kTemperatures = 3 * season::kSourceKinds;
constexpr std::size_t kOver = kTemperatures + 8;
constexpr std::size_t kOverReleased = kOver + 1;
constexpr std::size_t kSuffice = kOver + 2;
constexpr std::size_t kBelowFull = kOver + 3;
constexpr std::size_t kNotEmpty = kOver + 4;

}  // namespace

std::string stage_name(std::size_t kind, double stage) {
  static constexpr std::array kKinds{"solar", "wind", "water", "engine", "mains", "generator"};
  static constexpr std::array kStages{"bulk", "absorption", "float"};
  return std::string(kKinds[kind]) + " " + kStages[static_cast<std::size_t>(stage)];
}

ContinuousSeason::ContinuousSeason(const Bank& bank, const season::System<double>& system,
                                   const Outside& outside, std::vector<double> start)
    : bank_(&bank),
      system_(&system),
      outside_(&outside),
      integrator_(
          std::move(start), tolerances(),
          [this](double t, std::span<const double> y, std::span<double> dydt) {
            slope_of(*bank_, y, instant(t, y).point.bank_A, outside_->air_C(t), 0.0, dydt);
          },
          kEvents, [this](double t, std::span<const double> y, std::span<double> g) { events(t, y, g); }) {
  begin_piece(0);
}

ContinuousSeason::Instant ContinuousSeason::instant(double t_s, std::span<const double> y) const {
  const Piece& piece = outside_->pieces[piece_];
  Instant now;
  now.poles = poles_of(*bank_, y);
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    Source& source = now.sources[kind];
    source.set_V = held_V(system_->chargers[kind].stages, charging_[kind].stage, y[kTemperature_C]);
    source.lead_ohm = system_->chargers[kind].lead_ohm;
  }
  if (piece.sun) now.sources[season::kSolar].power_W = outside_->solar_W(t_s);
  if (piece.mains) now.sources[season::kMains].current_A = system_->mains_limit_A;
  now.loads_on = !blocks_.discharge() || signs_[kSuffice] > 0.0;
  const double rate_per_h =
      base::curve_at(bank_->chemistry->limits.charge_rate_by_C, y[kTemperature_C], kAnyRate_per_h);
  const double limit_A =
      blocks_.charge() ? 0.0 : std::min(system_->guard.charge_limit_A, rate_per_h * bank_->capacity_Ah);
  now.point = balance(now.poles, now.sources, now.loads_on ? piece.load_W : 0.0, limit_A);
  return now;
}

void ContinuousSeason::events(double t_s, std::span<const double> y, std::span<double> g) const {
  const Instant now = instant(t_s, y);
  const double bus_V = now.point.bus_V;
  double source_W = 0.0;
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    const Source& source = now.sources[kind];
    g[holds(kind)] = source.there() ? source.full_A(bus_V) - source.asked_A(bus_V) : -1.0;
    g[flows(kind)] = -now.point.bank_A - system_->chargers[kind].stages.tail_A;
    g[above_rebulk(kind)] = bus_V - system_->chargers[kind].stages.rebulk_V;
    source_W += source.there() ? source.full_A(bus_V) * bus_V : 0.0;
  }
  const bank::Guard<double>& guard = system_->guard;
  const double t_C = y[kTemperature_C];
  const std::array<double, kTemperatureEvents> limits{
      guard.charge_min_C,    guard.charge_min_C + guard.hysteresis_K,
      guard.charge_max_C,    guard.charge_max_C - guard.hysteresis_K,
      guard.discharge_min_C, guard.discharge_min_C + guard.hysteresis_K,
      guard.discharge_max_C, guard.discharge_max_C - guard.hysteresis_K};
  for (std::size_t i = 0; i < limits.size(); ++i) g[kTemperatures + i] = t_C - limits[i];
  g[kOver] = bus_V - guard.over_voltage_V;
  g[kOverReleased] = bus_V - kRelease * guard.over_voltage_V;
  g[kSuffice] = source_W - kSpare * outside_->pieces[piece_].load_W;
  g[kBelowFull] = 1.0 - y[kCharge];
  g[kNotEmpty] = std::min({bus_V - guard.under_voltage_V, y[kCharge] - guard.floor_charge,
                           now.poles.available - now.poles.floor - kEmptyAbove});
}

/// After a jump: where every margin stands now; what has just been met keeps the sign of its crossing.
void ContinuousSeason::read_signs() {
  std::array<double, kEvents> g{};
  events(integrator_.time_s(), integrator_.state(), g);
  for (std::size_t i = 0; i < kEvents; ++i) {
    if (std::fabs(g[i]) > kMet || signs_[i] == 0.0) signs_[i] = g[i] > 0.0 ? 1.0 : -1.0;
  }
}

bool ContinuousSeason::set(bool& block, bool sets, bool clears, const char* name) {
  const bool now = sets || (block && !clears);
  if (now == block) return false;
  block = now;
  changes_.push_back({integrator_.time_s(), std::string(name) + (now ? " on" : " off")});
  return true;
}

bool ContinuousSeason::switch_blocks() {
  const auto above = [this](std::size_t i) { return signs_[kTemperatures + i] > 0.0; };
  bool any = set(blocks_.charge_cold, !above(0), above(1), "charge cold");
  any = set(blocks_.charge_hot, above(2), !above(3), "charge hot") || any;
  any = set(blocks_.discharge_cold, !above(4), above(5), "discharge cold") || any;
  any = set(blocks_.discharge_hot, above(6), !above(7), "discharge hot") || any;
  return set(blocks_.over_voltage, signs_[kOver] > 0.0, signs_[kOverReleased] < 0.0, "over voltage") || any;
}

bool ContinuousSeason::move(std::size_t kind, double stage) {
  if (stage == charging_[kind].stage) return false;
  charging_[kind].stage = stage;
  charging_[kind].held_s = 0.0;
  changes_.push_back({integrator_.time_s(), stage_name(kind, stage)});
  return true;
}

bool ContinuousSeason::switch_stages() {
  const Piece& piece = outside_->pieces[piece_];
  bool any = false;
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    if (kind == season::kSolar ? !piece.sun : (kind != season::kMains || !piece.mains)) continue;
    Charging& c = charging_[kind];
    const supply::StageSettings<double>& settings = system_->chargers[kind].stages;
    const bool held = signs_[holds(kind)] > 0.0;
    double stage = c.stage;
    if (c.stage < 0.5 && held) stage = 1.0;
    if (c.stage > 0.5 && signs_[above_rebulk(kind)] < 0.0) stage = 0.0;
    const bool absorbing = c.stage > 0.5 && c.stage < 1.5;
    const bool tapered = held && signs_[flows(kind)] < 0.0;
    if (absorbing && (tapered || c.held_s >= settings.absorption_max_s - kMet)) stage = 2.0;
    any = move(kind, stage) || any;
  }
  return any;
}

void ContinuousSeason::settle() {
  for (int i = 0; i < kMostSwitches; ++i) {
    read_signs();
    if (signs_[kNotEmpty] < 0.0) throw std::runtime_error("season: the bank ran empty");
    const bool blocks = switch_blocks();
    if (!switch_stages() && !blocks) return;
  }
  throw std::runtime_error("season: switches do not come to rest");
}

void ContinuousSeason::begin_piece(std::size_t index) {
  piece_ = index;
  const Piece& piece = outside_->pieces[index];
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    const bool there = kind == season::kSolar ? piece.sun : kind == season::kMains && piece.mains;
    Charging& c = charging_[kind];
    if (!there) continue;
    if (c.without_s >= kNewCharge_s - kMet) move(kind, 0.0);
    c.without_s = 0.0;
  }
  signs_.fill(0.0);
  settle();
  integrator_.restart();
}

/// The end of the piece, of the run, or of the longest absorption.
double ContinuousSeason::next_stop_s(double end_s) const {
  const double now_s = integrator_.time_s();
  double stop_s = end_s;
  if (piece_ + 1 < outside_->pieces.size()) stop_s = std::min(stop_s, outside_->pieces[piece_ + 1].start_s);
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    const Charging& c = charging_[kind];
    if (c.stage < 0.5 || c.stage > 1.5 || signs_[holds(kind)] < 0.0) continue;
    stop_s = std::min(stop_s, now_s + system_->chargers[kind].stages.absorption_max_s - c.held_s);
  }
  return stop_s;
}

void ContinuousSeason::count_time(double step_s) {
  const Piece& piece = outside_->pieces[piece_];
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    const bool there = kind == season::kSolar ? piece.sun : kind == season::kMains && piece.mains;
    Charging& c = charging_[kind];
    if (!there) c.without_s += step_s;
    if (there && c.stage > 0.5 && c.stage < 1.5 && signs_[holds(kind)] > 0.0) c.held_s += step_s;
  }
}

void ContinuousSeason::run_to(double end_s) {
  while (integrator_.time_s() < end_s - kMet) {
    const double before_s = integrator_.time_s();
    const Stop stop = integrator_.run_to(next_stop_s(end_s));
    count_time(stop.t_s - before_s);
    for (std::size_t i = 0; i < stop.crossed.size(); ++i) {
      if (stop.crossed[i] != 0) signs_[i] = stop.crossed[i] > 0 ? 1.0 : -1.0;
    }
    const std::size_t next = piece_ + 1;
    if (next < outside_->pieces.size() && outside_->pieces[next].start_s <= stop.t_s + kMet) {
      begin_piece(next);
      continue;
    }
    const std::size_t before = changes_.size();
    const bool timed = stop.crossed.empty();
    settle();
    if (changes_.size() != before || !timed) integrator_.restart();
  }
}

}  // namespace voltwright::oracle
