// What must not stand in parallel and what is warned of. Where no source is named, a value follows from Ohm's
// law, conservation of charge or the threshold that the case itself sets.
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "tests/unit/bank/straight_group.h"

namespace voltwright::bank {
namespace {

std::string warnings_of(const GroupSetup& setup) {
  std::string text;
  for (const base::Problem& p : check_group(setup, straight())) {
    EXPECT_EQ(p.severity, base::Severity::kWarning);
    text += base::to_text(p) + "\n";
  }
  return text;
}

GroupSetup setup_of(std::vector<Member> members) {
  GroupSetup setup;
  setup.wiring = bus_bars(std::vector<double>(members.size(), 0.0));
  setup.members = std::move(members);
  return setup;
}

bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// Marine insurance and installation standards permit no mixed chemistries side by side; a converter between
// separate banks is the remedy (a sheet on wiring practice).
TEST(CheckGroup, RefusesMixedChemistriesAndVoltages) {
  GroupSetup mixed = setup_of({member(), member()});
  mixed.members[1].battery.chemistry = "agm";
  const auto refused = make_group(mixed, straight(), cell::make_tables(straight()));
  ASSERT_FALSE(refused.ok());
  ASSERT_EQ(refused.problems().size(), 1U);
  EXPECT_EQ(refused.problems()[0].severity, base::Severity::kError);
  EXPECT_EQ(refused.problems()[0].given, "agm");
  EXPECT_TRUE(says(refused.problems()[0].remedy, "DC-DC"));

  GroupSetup voltages = setup_of({member(), member()});
  voltages.members[1].in_series = 2;
  EXPECT_TRUE(base::has_error(check_group(voltages, straight())));
}

TEST(CheckGroup, RefusesWhatMakesNoSense) {
  EXPECT_TRUE(base::has_error(check_group(GroupSetup{}, straight())));
  GroupSetup wiring = setup_of({member(), member()});
  wiring.wiring = same_end(3, 1e-4);
  EXPECT_TRUE(base::has_error(check_group(wiring, straight())));
  for (const double bad : {-0.1, 1.1, std::nan("")}) {
    GroupSetup charge = setup_of({member()});
    charge.members[0].charge = bad;
    EXPECT_TRUE(base::has_error(check_group(charge, straight())));
    GroupSetup age = setup_of({member()});
    age.members[0].lost_capacity = bad;
    EXPECT_TRUE(base::has_error(check_group(age, straight())));
  }
  GroupSetup lead = setup_of({member(), member()});
  lead.wiring.lead_ohm[0] = -1e-3;
  EXPECT_TRUE(base::has_error(check_group(lead, straight())));
  GroupSetup step = setup_of({member()});
  step.step_s = 0.0;
  EXPECT_TRUE(base::has_error(check_group(step, straight())));
}

// A case of practice: 100 and 200 Ah with 100 A allowed of each give 150 A, as the large one carries two
// thirds.
TEST(CheckGroup, WarnsWithTheSharesOfDifferentSizes) {
  EXPECT_EQ(warnings_of(setup_of({member(), member()})), "");
  const std::string text = warnings_of(setup_of({member(100.0), member(200.0)}));
  EXPECT_TRUE(says(text, "differ in size: of 100 A they carry 33 and 67 A")) << text;
  EXPECT_TRUE(says(text, "at 150 A of the bank and not at 200 A")) << text;
  GroupSetup aged = setup_of({member(), member()});
  aged.members[1].resistance_factor = 1.5;
  aged.members[1].lost_capacity = 0.2;
  const std::string age = warnings_of(aged);
  EXPECT_TRUE(says(age, "differ in age: of 100 A they carry 60 and 40 A")) << age;
}

TEST(CheckGroup, WarnsOfUnevenWiringAndOfJoiningAtDifferentCharge) {
  GroupSetup row = setup_of({member(), member(), member(), member()});
  row.wiring = same_end(4, 4e-4);
  EXPECT_TRUE(says(warnings_of(row), "opposite ends"));
  row.wiring = diagonal(4, 1e-4);
  EXPECT_EQ(warnings_of(row), "");
  // 1.6 V of curve times 0.8 over two times 4 mohm: 160 A.
  GroupSetup apart = setup_of({member(), member()});
  apart.members[1].charge = 0.1;
  const std::string text = warnings_of(apart);
  EXPECT_TRUE(says(text, "160 A flow into")) << text;
  EXPECT_TRUE(says(text, "160 A flow out of")) << text;
}

}  // namespace
}  // namespace voltwright::bank
