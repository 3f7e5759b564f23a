// Samples, stated figures, cylinders: arithmetic.
#include <gtest/gtest.h>

#include "engine/claims/subject.h"
#include "tests/unit/claims/invented_evidence.h"

namespace voltwright::claims {
namespace {

TEST(SampleTest, QuantilesAreLinearBetweenNeighbours) {
  const Sample sample({4.0, 1.0, 3.0, 2.0});
  EXPECT_DOUBLE_EQ(sample.quantile(0.0), 1.0);
  EXPECT_DOUBLE_EQ(sample.quantile(1.0), 4.0);
  EXPECT_DOUBLE_EQ(sample.quantile(0.5), 2.5);
  EXPECT_DOUBLE_EQ(sample.quantile(2.0), 4.0);
}

TEST(SampleTest, EqualValuesCountHalf) {
  const Sample sample({1.0, 2.0, 2.0, 3.0});
  EXPECT_DOUBLE_EQ(sample.share_below(2.0), 0.5);
  EXPECT_DOUBLE_EQ(sample.share_below(0.5), 0.0);
  EXPECT_DOUBLE_EQ(sample.share_below(9.0), 1.0);
}

TEST(StatedBatteryTest, FiguresNeedBothTheirParts) {
  StatedBattery stated;
  stated.nominal_V = 12.8;
  stated.capacity_Ah = 100.0;
  EXPECT_FALSE(stated_Wh_per_kg(stated));
  EXPECT_FALSE(stated_kg_per_L(stated));
  stated.mass_kg = 12.8;
  EXPECT_DOUBLE_EQ(*stated_Wh_per_kg(stated), 100.0);
  stated.volume_L = 10.0;
  EXPECT_DOUBLE_EQ(*stated_Wh_per_L(stated), 128.0);
  EXPECT_DOUBLE_EQ(*stated_kg_per_L(stated), 1.28);
  stated.price_USD = 256.0;
  EXPECT_DOUBLE_EQ(*stated_USD_per_kWh(stated), 200.0);
}

TEST(SubjectTest, ACylinderIsNamedByItsSize) {
  // pi / 4 x 18 mm x 18 mm x 65.0 mm = 16.54 mL
  EXPECT_NEAR(*cylinder_volume_L("18650"), 0.016540, 1e-6);
  EXPECT_NEAR(*cylinder_volume_L("21700"), 0.024245, 1e-6);
  EXPECT_FALSE(cylinder_volume_L(""));
  EXPECT_FALSE(cylinder_volume_L("1865"));
  EXPECT_FALSE(cylinder_volume_L("pouch"));
  EXPECT_FALSE(cylinder_volume_L("00650"));
}

TEST(SubjectTest, TwelveVoltsAreFourCellsOfIronPhosphateAndSixOfLead) {
  const Evidence evidence = invented_evidence();
  Sheet sheet = plain_sheet();
  sheet.nominal_V = 12.0;
  EXPECT_EQ(*subject_of(sheet, evidence).series, 4);
  sheet.kind = "agm";
  EXPECT_EQ(*subject_of(sheet, evidence).series, 6);
  EXPECT_TRUE(subject_of(sheet, evidence).lead_acid);
  sheet.kind = "nothing";
  EXPECT_TRUE(subject_of(sheet, evidence).kinds.empty());
}

}  // namespace
}  // namespace voltwright::claims
