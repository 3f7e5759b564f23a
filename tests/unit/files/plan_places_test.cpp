// Place names in plans, with a place list of three towns in the column order of the GeoNames export.
#include <gtest/gtest.h>

#include "files/plan.h"
#include "tests/unit/files/plan_fixture.h"

namespace voltwright::files {
namespace {

constexpr const char* kTowns =
    "1\tTroms\xC3\xB8\tTromso\tTromso\t69.6489\t18.95508\tP\tPPLA2\tNO\t\t18\t\t\t\t52436\t\t15\tEurope/"
    "Oslo\t2020-01-01\n"
    "2\tOslo\tOslo\tChristiania\t59.91273\t10.74609\tP\tPPLC\tNO\t\t12\t\t\t\t580000\t\t26\tEurope/"
    "Oslo\t2020-01-01\n"
    "3\tOslo\tOslo\t\t48.19526\t-97.13174\tP\tPPL\tUS\t\tMN\t\t\t\t15100\t\t247\tAmerica/"
    "Chicago\t2020-01-01\n";

base::Result<ReadPlan> read_at(const std::string& place) {
  const base::Result<Gazetteer> towns = Gazetteer::parse(kTowns);
  if (!towns.ok()) return towns.problems();
  std::string text = short_plan();
  const std::string point = "lat = 59.91\nlon = 10.75\nzone = \"Europe/Oslo\"";
  text.replace(text.find(point), point.size(), place);
  return read_plan(text, "plan.toml", small_catalogue(), towns.value());
}

journey::Leg leg_at(const std::string& place) {
  const base::Result<ReadPlan> read = read_at(place);
  EXPECT_TRUE(read.ok()) << place << base::to_text(read.ok() ? base::Problem() : read.problems().front());
  return read.ok() ? read.value().plan.legs.at(0) : journey::Leg();
}

TEST(PlanPlaces, FindsTownsByName) {
  EXPECT_NEAR(leg_at("place = \"Troms\xC3\xB8\"").place.site.latitude_deg, 69.6489, 1e-9);
  EXPECT_NEAR(leg_at("place = \"tromso\"").place.site.latitude_deg, 69.6489, 1e-9);
  EXPECT_EQ(leg_at("place = \"Oslo\"").place.zone, "Europe/Oslo");
  EXPECT_EQ(leg_at("place = \"Oslo, US\"").place.zone, "America/Chicago");
  EXPECT_DOUBLE_EQ(leg_at("place = \"Oslo\"\nelevation = \"200 m\"").place.site.elevation_m, 200.0);
}

TEST(PlanPlaces, OffersNearNames) {
  const base::Result<ReadPlan> read = read_at("place = \"Trmso\"");
  ASSERT_FALSE(read.ok());
  ASSERT_EQ(read.problems().size(), 1U);
  EXPECT_EQ(read.problems()[0].what, "\"Trmso\" is not in the place list.");
  EXPECT_NE(read.problems()[0].remedy.find("Troms\xC3\xB8"), std::string::npos) << read.problems()[0].remedy;
}

TEST(PlanPlaces, PointTakesTheZoneOfTheNearestTown) {
  EXPECT_EQ(leg_at("lat = 59.8\nlon = 10.8").place.zone, "Europe/Oslo");
  EXPECT_EQ(leg_at("lat = 0\nlon = -45").place.zone, "Etc/GMT+3");
}

}  // namespace
}  // namespace voltwright::files
