#include "tests/hostile/plan_mutation.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <string_view>

#include "engine/base/random.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

constexpr std::array<std::string_view, 30> kHardWords = {
    "nan",         "inf",     "1e400",        "-",          "\"",         "\"\"\"",
    "[",           "]]",      "[[load]]\n",   "{",          "}",          "= =",
    "\r",          "\n",      "\xEF\xBB\xBF", "\xC3",       "\xF0\x9F",   ",000 W",
    "9999999999",  "0x",      "'''",          "2026-02-30", "0001-01-01", " Ah\"",
    "a.b.c.d.e.f", "\\u0000", "true",         "-1e-400",    "[leg]\n",    "#"};

std::size_t below(base::RandomStream& random, std::size_t limit) {
  return limit == 0 ? 0 : static_cast<std::size_t>(random.next_bits() % limit);
}

void damage(std::string& text, base::RandomStream& random) {
  const std::size_t at = below(random, text.size());
  const std::size_t length = below(random, 40);
  switch (below(random, 6)) {
    case 0:
      if (!text.empty()) text[at] = static_cast<char>(random.next_bits() & 0xFFU);
      break;
    case 1:
      text.erase(at, length);
      break;
    case 2:
      text.insert(at, text.substr(below(random, text.size()), length));
      break;
    case 3:
      text.insert(at, kHardWords[below(random, kHardWords.size())]);
      break;
    case 4:
      text.replace(at, length, kHardWords[below(random, kHardWords.size())]);
      break;
    default:
      if (!text.empty()) text[at] = static_cast<char>('0' + below(random, 10));
      break;
  }
}

bool is_good(const ReadPlan& read) {
  const advise::Plan& plan = read.plan;
  bool good = !plan.loads.empty() && plan.legs.empty() == !read.track.empty() && plan.seasons >= 1;
  for (const demand::Load& load : plan.loads) {
    good = good && std::isfinite(units::as_watts(load.power)) && units::as_watts(load.power) > 0.0;
  }
  for (const journey::Leg& leg : plan.legs) {
    good = good && leg.end_utc_s > leg.start_utc_s && std::isfinite(leg.place.site.latitude_deg);
  }
  for (std::size_t i = 1; i < plan.legs.size(); ++i) {
    good = good && plan.legs[i].start_utc_s == plan.legs[i - 1].end_utc_s;
  }
  return good;
}

}  // namespace

std::string damaged_plan(std::uint64_t number) {
  base::RandomStream random(number, 0x706c616eU);
  std::string text = number % 3 == 0 ? short_plan() : full_plan();
  const std::size_t changes = 1 + below(random, 8);
  for (std::size_t i = 0; i < changes; ++i) damage(text, random);
  return text;
}

std::string broken_promise(const std::string& text) {
  const base::Result<ReadPlan> read = read_small(text);
  if (read.ok()) return is_good(read.value()) ? "" : "A plan was accepted that cannot be simulated.";
  if (!base::has_error(read.problems())) return "A plan was refused without an error.";
  for (const base::Problem& problem : read.problems()) {
    if (problem.what.empty()) return "A problem says nothing.";
    if (problem.where.line < 0 || problem.where.column < 0) return "A problem lies outside the text.";
  }
  return "";
}

}  // namespace voltwright::files
