#pragma once
// A small wind turbine, and a generator turned by the water that a boat passes through. See
// docs/method/wind_and_water.md.

namespace voltwright::supply {

struct WindTurbine {
  double diameter_m = 1.0;    // of the rotor
  double power_share = 0.30;  // electrical power over that of the wind through the rotor
  double rated_W = 300.0;     // never more
  double cut_in_m_s = 3.5;
  double cut_out_m_s = 25.0;  // turned out of the wind or braked from here on
  double height_m = 10.0;     // of the hub
};

/// Density of dry air [kg/m3] at a temperature and an elevation (barometric formula of the standard
/// atmosphere, ideal gas).
double air_kg_m3(double air_C, double elevation_m);

/// Wind at a height from that at 10 m: v (h/10)^(1/7); height > 0.
double wind_at_height(double wind_10_m_s, double height_m);

/// Output [W] at a wind at hub height: min(rated, 0.5 rho A Cp v^3) between cut-in and cut-out, else 0.
double turbine_W(const WindTurbine& turbine, double hub_wind_m_s, double density_kg_m3);

struct WaterGenerator {
  double power_W = 100.0;  // at `speed_m_s` through the water
  double speed_m_s = 3.0;
  double rated_W = 500.0;  // never more
  double cut_in_m_s = 1.5;
};

/// Output [W] of a shaft or towed generator at a boat's speed through the water: by the cube of the speed
/// from the known point, 0 below cut-in, at most rated.
double water_W(const WaterGenerator& generator, double boat_m_s);

}  // namespace voltwright::supply
