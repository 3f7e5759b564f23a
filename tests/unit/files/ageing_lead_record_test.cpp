// The record of lead-acid wear: as it stands, and broken.
#include "files/ageing_lead_record.h"

#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

namespace voltwright::files {
namespace {

nlohmann::json record() {
  std::ifstream in(VW_SOURCE_DIR "/catalogue/ageing_lead/lead-acid-weighted.json");
  return nlohmann::json::parse(in);
}

TEST(LeadRecord, ReadsEveryKind) {
  const auto kinds = read_plate_wear(record().dump(), "lead.json");
  ASSERT_TRUE(kinds.ok());
  ASSERT_EQ(kinds.value().size(), 3U);
  const cell::PlateWear& flooded = kinds.value().at("flooded");
  EXPECT_EQ(flooded.rating.standard_cycles, 600.0);
  EXPECT_EQ(flooded.rating.float_years, 10.0);
  EXPECT_EQ(flooded.corrosion.rest_V, 1.75);
  EXPECT_EQ(flooded.corrosion.speed_by_V.size(), 13U);
  EXPECT_EQ(flooded.shedding.exponent, 5.0);
  EXPECT_NE(kinds.value().at("agm").rating.standard_cycles, flooded.rating.standard_cycles);
}

// Every problem comes at once, with its place.
TEST(LeadRecord, NamesEveryProblem) {
  nlohmann::json broken = record();
  broken["corrosion"]["doubling_K"] = 0.0;
  broken["partial_charge"].erase("empty_growth_per_h");
  broken.erase("validity");
  const auto kinds = read_plate_wear(broken.dump(), "lead.json");
  ASSERT_FALSE(kinds.ok());
  std::string fields;
  for (const auto& problem : kinds.problems()) fields += problem.field + ' ';
  EXPECT_NE(fields.find("corrosion.doubling_K"), std::string::npos) << fields;
  EXPECT_NE(fields.find("partial_charge.empty_growth_per_h"), std::string::npos) << fields;
  EXPECT_NE(fields.find("validity"), std::string::npos) << fields;
}

TEST(LeadRecord, WantsAtLeastOneKind) {
  nlohmann::json none = record();
  for (const char* kind : {"agm", "flooded", "gel"}) none.erase(kind);
  EXPECT_FALSE(read_plate_wear(none.dump(), "lead.json").ok());
  EXPECT_FALSE(read_plate_wear("{", "lead.json").ok());
}

}  // namespace
}  // namespace voltwright::files
