#include <fmt/format.h>

#include "engine/advise/wording.h"
#include "files/report/axis.h"
#include "files/report/charts.h"

namespace voltwright::files::report {

namespace {

constexpr double kWidth = 156.0;
constexpr LogScale kScale{0.0003, 1.0, 8.0, kWidth - 8.0};

}  // namespace

std::string interval_chart(const advise::Chance& chance, double accepted) {
  Drawing d(kWidth, 18.0, "interval",
            "Ran short in " + advise::chance_text(chance.events, chance.seasons, chance.low, chance.high) +
                "; accepted " + advise::percent(accepted));
  for (const double tick : {0.001, 0.01, 0.1, 1.0}) d.line(kScale(tick), 2, kScale(tick), 16, "grid5");
  d.line(kScale(accepted), 0, kScale(accepted), 18, "wall");
  const double at = kScale(chance.events == 0 ? kScale.from : chance.share);
  const double low = kScale(chance.events == 0 ? kScale.from : chance.low);
  const double high = kScale(chance.high);
  d.path(fmt::format("M{0} 9H{1}M{0} 5V13M{1} 5V13", px(low), px(high)), "whisker");
  d.dot(at, 9, 3.6, chance.events == 0 ? "hollow" : "ink");
  return d.finish();
}

std::string interval_scale(double accepted) {
  Drawing d(kWidth, 16.0, "interval", "Scale of chance from 0.03 to 100 percent, by decades");
  const double wall = kScale(accepted);
  struct Tick {
    double at;
    const char* words;
  };
  for (const Tick& tick : {Tick{0.001, "0.1"}, Tick{0.01, "1"}, Tick{0.1, "10"}, Tick{1.0, "100\u202F%"}}) {
    const double x = kScale(tick.at);
    if (std::abs(x - wall) < 17.0) continue;
    d.text(tick.at == 1.0 ? kWidth : x, 12, tick.words, tick.at == 1.0 ? "end" : "middle", "small second");
  }
  d.text(wall, 12, advise::figure(accepted * 100.0), "middle", "small limit");
  return d.finish();
}

}  // namespace voltwright::files::report
