#include "engine/advise/bank_life.h"

#include <algorithm>
#include <cmath>

#include "engine/advise/ageing_course.h"
#include "engine/advise/between_seasons.h"

namespace voltwright::advise {

namespace {

using ageing::kLongestLookedFor_years;
using ageing::LifeMoment;

constexpr double kEnd = 0.8;
constexpr double kLateEnd = 0.7;
constexpr double kLeastRatio = 1e-6;  // of a doubt, so that its logarithm is finite

/// Places of a capacity between falling levels: the level above, the one below, and the share of the latter.
struct Between {
  std::size_t above = 0, below = 0;
  double share_below = 0.0;
};

Between between(std::span<const Level> levels, double capacity) {
  std::size_t below = 0;
  while (below + 1 < levels.size() && levels[below].capacity > capacity) ++below;
  if (below == 0 || levels[below].capacity >= capacity) return {below, below, 0.0};
  const Level& upper = levels[below - 1];
  const Level& lower = levels[below];
  return {below - 1, below, (upper.capacity - capacity) / (upper.capacity - lower.capacity)};
}

/// Everything that the courses of one bank share.
class Lives {
 public:
  Lives(const LifeQuestion& question, std::vector<Level> levels, double per_year, ageing::Exposure rest)
      : question_(&question), levels_(std::move(levels)), per_year_(per_year), rest_(std::move(rest)) {}

  const std::vector<Level>& levels() const { return levels_; }
  double floor() const { return levels_.back().capacity; }

  ageing::YearOfUse year(double capacity, std::optional<std::size_t> season = std::nullopt) const {
    return year_at(levels_, capacity, per_year_, rest_, season);
  }

  std::vector<CoursePoint> course(const ageing::Law& law) const {
    return ageing_course(
        law, [this](double capacity, double) { return year(capacity); }, floor(), kLongestLookedFor_years);
  }

  /// A life whose years are drawn from the seasons that were kept.
  std::vector<CoursePoint> drawn_course(const ageing::Law& law, std::uint64_t draw) const {
    constexpr std::uint64_t kWeatherYears = 0x7965617273ULL;
    const double kept = static_cast<double>(levels_.front().seasons.size());
    const auto use = [&](double capacity, double years) {
      base::RandomStream random(question_->plan->seed, kWeatherYears, draw,
                                static_cast<std::uint64_t>(years));
      return year(capacity, static_cast<std::size_t>(random.uniform() * kept));
    };
    return ageing_course(law, use, floor(), kLongestLookedFor_years);
  }

  /// Share of seasons with a shortfall, on straight lines between the levels.
  bool carried(double capacity) const {
    const Between at = between(levels_, capacity);
    const double share = (1.0 - at.share_below) * levels_[at.above].chance.share +
                         at.share_below * levels_[at.below].chance.share;
    return share <= units::as_fraction(question_->plan->limits.chance_of_shortfall);
  }

 private:
  const LifeQuestion* question_;
  std::vector<Level> levels_;
  double per_year_;
  ageing::Exposure rest_;
};

ageing::Reach reach_on_the_way(const ageing::Law& law, const Lives& lives,
                               const std::vector<CoursePoint>& course, double present) {
  const double end = present > kEnd ? kEnd : kLateEnd;
  ageing::Reach worst = ageing::Reach::kInside;
  for (const CoursePoint& point : course) {
    if (point.aged.capacity() < end) break;
    worst = std::max(worst, ageing::reach_of(law, lives.year(point.aged.capacity()), point.aged));
    if (worst == ageing::Reach::kOutside) break;
  }
  return worst;
}

/// The course of the whole bank from now on: what the mean cell has lost in a year takes it `weakest` years.
std::vector<LifeMoment> from_now(const std::vector<CoursePoint>& course, const Lives& lives, double present,
                                 double weakest) {
  const double now_years = years_at(course, present);
  std::vector<LifeMoment> points = {{0.0, present, lives.carried(present)}};
  for (const CoursePoint& point : course) {
    if (point.years <= now_years) continue;
    const double capacity = point.aged.capacity();
    points.push_back({(point.years - now_years) * weakest, capacity, lives.carried(capacity)});
  }
  return points;
}

LawLife law_life(const ageing::Opinion& opinion, const Lives& lives, double present, double weakest) {
  LawLife life;
  life.id = opinion.id;
  life.name = opinion.name;
  life.source = opinion.source;
  life.caution = opinion.caution;
  life.basis = opinion.basis;
  const std::vector<CoursePoint> course = lives.course(*opinion.law);
  life.reach = reach_on_the_way(*opinion.law, lives, course, present);
  life.counted = opinion.knows_rest && opinion.knows_swings;
  life.course = from_now(course, lives, present, weakest);
  life.ends = ageing::life_ends(life.course);
  return life;
}

/// The first counted law that is not outside its data leads; else the first counted, else the first.
void choose(std::vector<LawLife>& laws) {
  if (laws.empty()) return;
  const auto first = [&](auto&& fits) { return std::find_if(laws.begin(), laws.end(), fits); };
  auto leads = first([](const LawLife& law) { return law.counted && law.reach != ageing::Reach::kOutside; });
  if (leads == laws.end()) leads = first([](const LawLife& law) { return law.counted; });
  if (leads == laws.end()) leads = laws.begin();
  leads->leads = leads->counted = true;
}

double or_longest(const std::optional<double>& years) { return years.value_or(kLongestLookedFor_years); }

/// Doubt between the counted laws, from their ways to one end.
Doubt between_laws(const std::vector<LawLife>& laws, const LawLife& leading,
                   std::optional<double> ageing::LifeEnds::*end) {
  Doubt doubt{"between laws", 1.0, 1.0};
  const double typical = or_longest(leading.ends.*end);
  if (typical <= 0.0) return doubt;
  for (const LawLife& law : laws) {
    if (!law.counted) continue;
    const double ratio = or_longest(law.ends.*end) / typical;
    doubt.least = std::min(doubt.least, ratio);
    doubt.most = std::max(doubt.most, ratio);
  }
  return doubt;
}

Doubt between_years(const Lives& lives, const ageing::Law& law, double present, int draws,
                    const Executor& executor) {
  Doubt doubt{"between years", 1.0, 1.0};
  if (draws < 1 || lives.levels().front().seasons.size() < 2) return doubt;
  const double share = std::max(lives.floor(), std::min(kEnd, present - 0.1));
  std::vector<double> years(static_cast<std::size_t>(draws));
  executor(years.size(), [&](std::size_t i) { years[i] = years_at(lives.drawn_course(law, i), share); });
  std::sort(years.begin(), years.end());
  const units::Ranged range = ageing::central_90(years);
  if (range.typical > 0.0) doubt = {doubt.of, range.min / range.typical, range.max / range.typical};
  return doubt;
}

/// Independent doubts together: their logarithms add as squares.
units::Ranged with_doubts(double typical, std::span<const Doubt> doubts) {
  double down = 0.0;
  double up = 0.0;
  for (const Doubt& doubt : doubts) {
    const double least = std::log(std::max(doubt.least, kLeastRatio));
    const double most = std::log(doubt.most);
    down += least * least;
    up += most * most;
  }
  return {typical * std::exp(-std::sqrt(down)), typical, typical * std::exp(std::sqrt(up))};
}

/// Resistance at a capacity as the first law says that tells of it.
ResistanceAt resistance_of(const LifeQuestion& q, const Level& top, double per_year,
                           const ageing::Exposure& rest) {
  const double now = top.resistance_factor;
  const auto found = std::find_if(q.speaking.opinions.begin(), q.speaking.opinions.end(),
                                  [](const ageing::Opinion& o) { return o.knows_resistance; });
  if (found == q.speaking.opinions.end()) return [now](double) { return now; };
  const std::vector<Level> only_top = {top};
  std::vector<CoursePoint> course = ageing_course(
      *found->law, [&](double capacity, double) { return year_at(only_top, capacity, per_year, rest); },
      level_shares(top.capacity).back(), kLongestLookedFor_years);
  const auto growth_at = [course = std::move(course)](double capacity) {
    const auto after = std::find_if(course.begin(), course.end(), [capacity](const CoursePoint& p) {
      return p.aged.capacity() <= capacity;
    });
    return (after != course.end() ? after : course.end() - 1)->aged.resistance_growth;
  };
  const double grown_now = growth_at(top.capacity);
  return [=](double capacity) { return now * (1.0 + growth_at(capacity)) / (1.0 + grown_now); };
}

ageing::Strings strings_of(const Candidate& candidate) {
  const bool is_lead = candidate.chemistry->plate_wear.has_value();
  const int units = (is_lead ? 1 : candidate.battery->cells_in_series) * candidate.layout.in_series;
  return {std::max(1, units), std::max(1, candidate.layout.in_parallel)};
}

}  // namespace

const LawLife* BankLife::leading() const {
  const auto found = std::find_if(laws.begin(), laws.end(), [](const LawLife& law) { return law.leads; });
  return found != laws.end() ? &*found : nullptr;
}

const Doubt* BankLife::widest() const {
  const auto width = [](const Doubt& d) { return std::log(d.most / std::max(d.least, kLeastRatio)); };
  const auto found = std::max_element(doubts.begin(), doubts.end(),
                                      [&](const Doubt& a, const Doubt& b) { return width(a) < width(b); });
  return found != doubts.end() ? &*found : nullptr;
}

ageing::YearOfUse year_at(std::span<const Level> levels, double capacity, double per_year,
                          const ageing::Exposure& rest, std::optional<std::size_t> season) {
  ageing::YearOfUse year;
  const Between at = between(levels, capacity);
  const auto add = [&](const Level& level, double share) {
    if (share <= 0.0 || level.seasons.empty()) return;
    if (season) {
      year.push_back({level.seasons[std::min(*season, level.seasons.size() - 1)], share * per_year});
      return;
    }
    const double each = share * per_year / static_cast<double>(level.seasons.size());
    for (const ageing::Exposure& exposure : level.seasons) year.push_back({exposure, each});
  };
  add(levels[at.above], 1.0 - at.share_below);
  if (at.below != at.above) add(levels[at.below], at.share_below);
  if (rest.hours > 0.0) year.push_back({rest, 1.0});
  return year;
}

BankLife bank_life(const LifeQuestion& q, const Executor& executor, const LevelProgress& progress) {
  BankLife life;
  life.gap = q.speaking.gap;
  life.life_spread = q.speaking.life_spread;
  life.spread_source = q.speaking.spread_source;
  life.present = present_share(q.candidate);
  life.season_years = q.proving->minutes() / (60.0 * ageing::kHoursOfYear);
  const double per_year = seasons_per_year(*q.plan);
  const ageing::Exposure rest = rest_of_year(*q.plan, q.skies, *q.candidate.chemistry, 1.0);
  const LevelRunner runner(*q.plan, *q.proving, q.candidate, effort_for(*q.plan, life.season_years), executor,
                           progress);
  const Level top = runner.present();
  const Lives lives(q, runner.all(top, resistance_of(q, top, per_year, rest)), per_year, rest);
  life.levels = lives.levels();
  life.carries_now = lives.carried(life.present);
  const ageing::YearOfUse now = lives.year(life.present);
  life.cycles_per_year = ageing::full_cycles_per_year(now);
  if (q.speaking.opinions.empty()) return life;

  const std::vector<double> banks =
      ageing::bank_lives(strings_of(q.candidate), q.speaking.life_spread, q.plan->seed, q.draws);
  const units::Ranged cells = ageing::central_90(banks);
  life.weakest_life = cells.typical;
  const std::vector<ageing::Opinion>& opinions = q.speaking.opinions;
  life.laws.resize(opinions.size());
  executor(opinions.size(), [&](std::size_t i) {
    life.laws[i] = law_life(opinions[i], lives, life.present, life.weakest_life);
  });
  choose(life.laws);
  const LawLife& leading = *life.leading();
  const ageing::Law& law = *opinions[static_cast<std::size_t>(&leading - life.laws.data())].law;
  const Doubt of_cells{"between cells", cells.min / cells.typical, cells.max / cells.typical};
  const Doubt of_years = between_years(lives, law, life.present, q.weather_lives, executor);
  const auto all_doubts = [&](std::optional<double> ageing::LifeEnds::*end) {
    return std::vector<Doubt>{between_laws(life.laws, leading, end), of_cells, of_years};
  };
  using ageing::LifeEnds;
  life.doubts = all_doubts(life.present > kEnd ? &LifeEnds::at_80 : &LifeEnds::at_70);
  life.at_80 = with_doubts(or_longest(leading.ends.at_80), all_doubts(&LifeEnds::at_80));
  life.at_70 = with_doubts(or_longest(leading.ends.at_70), all_doubts(&LifeEnds::at_70));
  life.plan = with_doubts(or_longest(leading.ends.plan), all_doubts(&LifeEnds::plan));
  life.plan_ends = leading.ends.plan.has_value();

  ageing::Habits habits;
  if (q.candidate.chemistry->plate_wear)
    habits.plates_doubling_K = q.candidate.chemistry->plate_wear->corrosion.doubling_K;
  std::vector<std::size_t> resting;
  if (rest.hours > 0.0) resting.push_back(now.size() - 1);
  life.gains = ageing::what_helps(law, now, resting, habits);
  return life;
}

}  // namespace voltwright::advise
