// A year of several exposures may be cut into any portions, by every law of the catalogue.
#include "engine/ageing/changed_use.h"
#include "engine/ageing/life_map.h"
#include "tests/laws/ageing/every_law.h"

namespace voltwright::ageing {
namespace {

YearOfUse mixed_year() {
  base::RandomStream random(17, 4);
  YearOfUse year;
  for (int i = 0; i < 5; ++i) year.push_back({random_exposure(random), 2.0 * random.uniform()});
  return year;
}

TEST(YearPortions, DoNotMatter) {
  const YearOfUse year = mixed_year();
  for (const Opinion& opinion : every_opinion()) {
    Aged whole;
    age_by_years(*opinion.law, whole, year, 3.0);
    Aged cut;
    for (int i = 0; i < 12; ++i) age_by_years(*opinion.law, cut, year, 0.25);
    EXPECT_NEAR(cut.calendar_loss, whole.calendar_loss, 1e-12) << opinion.id;
    EXPECT_NEAR(cut.cycle_loss, whole.cycle_loss, 1e-12) << opinion.id;
    EXPECT_NEAR(cut.resistance_growth, whole.resistance_growth, 1e-12) << opinion.id;
  }
}

// Gentle daily use at 25 degC. Half as deep from twice the bank is the one habit that may not help: the bank
// then stands fuller, which costs iron-phosphate more time on the shelf than the depth saves.
TEST(Habits, DoNotShortenTheLifeByTheLawsThatLead) {
  const auto laws = files::read_ageing_catalogue();
  ASSERT_TRUE(laws);
  for (const Opinions& opinions : laws.value().opinions) {
    if (opinions.opinions.empty()) continue;
    for (const Gain& gain : what_helps(*opinions.opinions.front().law, year_of({25.0, 0.6}), {}, {})) {
      const bool is_depth = gain.habit.starts_with("half as deep");
      EXPECT_GE(gain.times, is_depth && opinions.chemistry == "lfp" ? 0.9 : 0.999)
          << opinions.chemistry << " " << gain.habit;
    }
  }
}

TEST(Habits, StoringAtHalfMakesEveryLawThatKnowsRestLastLonger) {
  for (const Opinion& opinion : every_opinion()) {
    if (!opinion.knows_rest) continue;
    const YearOfUse full = year_of({25.0, 0.0, 1.0});
    YearOfUse half = full;
    half[0].exposure = stored_at(half[0].exposure, 0.5);
    EXPECT_GE(years_until(*opinion.law, half, 0.8, 1000.0).value_or(1000.0),
              years_until(*opinion.law, full, 0.8, 1000.0).value_or(1000.0))
        << opinion.id;
  }
}

}  // namespace
}  // namespace voltwright::ageing
