// The weighted throughput model of lead-acid (schiffer2007): worked values of its parts, computed from its
// equations with its constants, which are read from the catalogue.
#include "engine/ageing/schiffer.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/ageing/water.h"
#include "files/catalogue.h"

namespace voltwright::ageing {
namespace {

const cell::Chemistry& flooded() {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return *kCatalogue.chemistry("flooded");
}

const cell::PlateWear& wear() { return *flooded().plate_wear; }

TEST(WeightedThroughput, EveryLeadAcidKindHasItsConstants) {
  const files::Catalogue catalogue = files::read_catalogue().value();
  for (const cell::Chemistry& c : catalogue.chemistries)
    EXPECT_EQ(c.plate_wear.has_value(), c.family == cell::Family::kLeadAcid) << c.id;
}

TEST(WeightedThroughput, PartialCharge) {
  EXPECT_NEAR(partial_charge_weight(wear().partial, 0.2, 240.0, 1.0), 1.6508176, 1e-7);
  EXPECT_NEAR(partial_charge_weight(wear().partial, 0.2, 240.0, 2.0), 2.3016352, 1e-7);
  // Our own bound: a month without a full charge weighs as much as a year.
  EXPECT_EQ(partial_charge_weight(wear().partial, 0.2, 720.0, 1.0),
            partial_charge_weight(wear().partial, 0.2, 8760.0, 1.0));
}

TEST(WeightedThroughput, BadCharges) {
  const double expected[][2] = {{0.90, 0.0}, {0.91, 0.36}, {0.92, 0.64},
                                {0.95, 1.0}, {0.98, 0.64}, {1.0, 0.0}};
  for (const auto& [soc, bad] : expected) EXPECT_NEAR(bad_charge(wear().partial, soc), bad, 1e-9) << soc;
}

TEST(WeightedThroughput, CurrentAtTheStart) {
  const cell::PartialCharge& p = wear().partial;
  EXPECT_NEAR(current_factor(p, 0.025, 0.0), 2.0, 1e-12);
  EXPECT_NEAR(current_factor(p, 0.1, 10.8), 2.7182818, 1e-7);
  EXPECT_NEAR(current_factor(p, 0.4, 0.0), 0.5, 1e-12);
  EXPECT_EQ(current_factor(p, 0.1, 300.0), current_factor(p, 0.1, 10.8));  // our own bound
  EXPECT_NEAR(current_factor(p, 0.05, 3.6), 1.9736940, 1e-7);
}

// Active mass lost at 0, 0.5, 1, 1.2 and 1.6 times the standard's cycles; at 1.1564 it is the whole
// allowance.
TEST(WeightedThroughput, ActiveMass) {
  const double cycles = wear().rating.standard_cycles;
  const double expected[][2] = {{0.0, 0.0053904}, {0.5, 0.0257160}, {1.0, 0.1226840},
                                {1.2, 0.2292038}, {1.6, 0.8},       {1.1563858, 0.2}};
  for (const auto& [share, loss] : expected)
    EXPECT_NEAR(shed_mass_loss(wear(), share * cycles), loss, 1e-6) << share;
}

TEST(WeightedThroughput, SpeedOfCorrosion) {
  const cell::GridCorrosion& g = wear().corrosion;
  const double expected[][2] = {{1.598, 0.666663}, {1.70, 0.1654926}, {1.75, 0.0168810},
                                {1.85, 0.0172360}, {2.0, 0.1189809},  {2.1, 0.6417930}};
  for (const auto& [potential_V, speed] : expected)
    EXPECT_NEAR(corrosion_speed(g, potential_V, 25.0), speed, 1e-6) << potential_V;
  EXPECT_NEAR(corrosion_speed(g, 1.75, 40.0) / corrosion_speed(g, 1.75, 25.0), 2.0, 1e-12);
}

// Polarisation by the publication's own voltage equation, first parameter set, at the ten-hour rate.
TEST(WeightedThroughput, CorrosionPotential) {
  const auto charging = [](double soc) { return 0.1 * 0.42 * (1.0 + 0.888 * soc / (1.001 - soc)); };
  const auto discharging = [](double soc) {
    return -0.1 * 0.699 * (1.0 + 0.0464 * (1.0 - soc) / (1.75 - (1.0 - soc)));
  };
  const cell::GridCorrosion& g = wear().corrosion;
  EXPECT_NEAR(corrosion_potential_V(g, 0.5, charging(0.5)), 1.7603800, 1e-6);
  EXPECT_NEAR(corrosion_potential_V(g, 0.9, charging(0.9)), 1.9313241, 1e-6);
  EXPECT_NEAR(corrosion_potential_V(g, 0.5, discharging(0.5)), 1.6851706, 1e-6);
  EXPECT_NEAR(corrosion_potential_V(g, 0.2, discharging(0.2)), 1.6669151, 1e-6);
  EXPECT_NEAR(corrosion_potential_V(g, 1.0, 0.0), 1.75, 1e-12);
}

// Below the knee 100 h at a speed of 0.017 make 0.2694318, in one piece or two.
TEST(WeightedThroughput, LayerThatHindersItself) {
  const double slow = 0.6 * std::pow(0.017, 5.0 / 3.0);
  EXPECT_NEAR(corroded(0.0, slow, 0.0, 100.0), 0.2694318, 1e-7);
  EXPECT_NEAR(corroded(corroded(0.0, slow, 0.0, 50.0), slow, 0.0, 50.0), 0.2694318, 1e-7);
}

// One capacity at the ten-hour rate from a cell that is half empty: ln(1.5) / 3, in one step or ten.
TEST(WeightedThroughput, LayeredAcid) {
  const cell::AcidLayers& a = wear().acid;
  EXPECT_NEAR(layered(a, 0.0, 0.5, 1.0, 0.1), 0.1351550, 1e-6);
  double stepped = 0.0;
  for (int hour = 0; hour < 10; ++hour) stepped = layered(a, stepped, 0.5, 0.1, 0.1);
  EXPECT_NEAR(stepped, 0.1351550, 1e-6);
}

// 2 x 10^-8 m2/s across 20 cm: 0.0144 per hour at 20 degC, 0.0064 across 30 cm. Molecular diffusion alone,
// 1e-9, would take 20 times as long.
TEST(WeightedThroughput, AcidSettlesByDiffusion) {
  cell::AcidLayers a = wear().acid;
  EXPECT_NEAR(diffusion_per_h(a, 20.0), 0.0144, 1e-12);
  EXPECT_NEAR(diffusion_per_h(a, 30.0), 0.0288, 1e-12);
  EXPECT_NEAR(mixed(a, 1.0, 2.1, 20.0, 100.0, 1.0 / 0.0144), std::exp(-1.0), 1e-12);
  a.height_mm = 300.0;
  EXPECT_NEAR(diffusion_per_h(a, 20.0), 0.0064, 1e-12);
}

// Gas mixes from 2.3 V a cell on: 0.1 per hour at 2.5 V and 25 degC in a cell of 100 Ah, half in one of 400
// Ah.
TEST(WeightedThroughput, GasMixesTheAcid) {
  const cell::AcidLayers& a = wear().acid;
  const double still = std::exp(-diffusion_per_h(a, 25.0));
  EXPECT_NEAR(mixed(a, 1.0, 2.5, 25.0, 100.0, 1.0), still - 0.1, 1e-12);
  EXPECT_NEAR(mixed(a, 1.0, 2.5, 25.0, 400.0, 1.0), still - 0.05, 1e-12);
  EXPECT_NEAR(mixed(a, 1.0, 2.29, 25.0, 100.0, 1.0), still, 1e-12);
  EXPECT_EQ(mixed(a, 0.001, 2.7, 25.0, 100.0, 1.0), 0.0);
}

// 11 per volt and cell: gassing at 14.7 V a block is 11.246 times that at 13.38 V. The tenfold slip 0.183 per
// block would give 1.27. Both the weights and the cell's own side reaction must have it.
TEST(WeightedThroughput, GassingGrowsElevenfoldFromFloatToAbsorption) {
  const cell::SideReaction& side = flooded().side_reaction;
  EXPECT_NEAR(std::exp(side.per_V * (2.45 - 2.23)), 11.24586, 1e-5);
  EXPECT_EQ(side.per_V, wear().acid.mixing_per_V);
  EXPECT_EQ(side.per_K, wear().acid.mixing_per_K);
  const auto of_100_Ah = [&side](double cell_V, double temperature_C) {
    return 100.0 * side.current_A_per_Ah *
           std::exp(side.per_V * (cell_V - side.reference_V) +
                    side.per_K * (temperature_C - side.reference_C));
  };
  EXPECT_NEAR(of_100_Ah(2.45, 25.0), 0.2249172, 1e-6);
  EXPECT_NEAR(of_100_Ah(2.40, 35.0), 0.2364489, 1e-6);
  EXPECT_NEAR(of_100_Ah(2.25, 40.0), 0.0612971, 1e-6);
}

// Faraday: 0.33608739 g of water an ampere-hour and cell. An open cell of 100 Ah in float at 2.25 V and 25
// degC loses 73.4 g a year.
TEST(WeightedThroughput, WaterOfGassing) {
  EXPECT_NEAR(water_split_g(1.0), 0.3360874, 1e-6);
  EXPECT_NEAR(water_split_g(0.0249215 * 8760.0), 73.4, 0.05);
}

}  // namespace
}  // namespace voltwright::ageing
