#include <fmt/format.h>

#include <iterator>

#include "app/csv_text.h"
#include "app/life.h"

namespace voltwright::app {

namespace {

void add_duties(std::string& text, const char* part, const std::vector<ageing::Mapped>& duties) {
  for (const ageing::Mapped& one : duties) {
    fmt::format_to(std::back_inserter(text), "{},{:.1f},{:.3f},{:.3f},{:.3f},{:.3f},{:.3f},{},{}\n", part,
                   one.duty.temperature_C, one.duty.depth, one.duty.top_soc, one.life.years.min,
                   one.life.years.typical, one.life.years.max, one.life.law, reach_words(one.life.reach));
  }
}

}  // namespace

std::string life_csv(const LifeResponse& r) {
  std::string text = "law,leads,counted,years,capacity_share,plan_carried\n";
  for (const advise::LawLife& law : r.life.laws) {
    for (const ageing::LifeMoment& point : law.course) {
      fmt::format_to(std::back_inserter(text), "{},{},{},{:.4f},{:.5f},{}\n", law.id, law.leads ? 1 : 0,
                     law.counted ? 1 : 0, point.years, point.capacity, point.carried ? 1 : 0);
    }
  }
  return text;
}

std::string life_csv(const LifeMapResponse& r) {
  std::string text = "part,temperature_C,depth,top_soc,years_least,years,years_most,law,reach\n";
  add_duties(text, "depth", r.map.by_depth);
  add_duties(text, "ceiling", r.map.by_ceiling);
  add_duties(text, "storage", r.map.by_storage);
  return text;
}

}  // namespace voltwright::app
