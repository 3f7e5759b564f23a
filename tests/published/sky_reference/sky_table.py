#!/usr/bin/env python3
"""Writes sky_table.csv: 2,000 random moments through the whole chain of an independent solar library.

Position, clear sky, split, transposition, incidence loss, cell temperature and direct-current power by the
library of Holmgren, Hansen and Mikofski 2018 (catalogue/references.bib: holmgren2018); the C++ test beside
this file holds the engine's chain against the rows. Only this table needs Python: the test reads the file.

    sky_table.py           writes the table
    sky_table.py --check   says whether the table is what this script and the library make today

Where the library offers a choice, the one the engine makes is taken:
  solar constant    1361.1 W/m2. The library's split of Erbs knows only 1366.1, so it is given irradiance in
                    that proportion and its answer is brought back; the relation itself is untouched.
  zenith            the true one for all cosines, the refracted one (1013.25 hPa, 15 degC) for the air mass.
                    Column poa_refracted has the refracted one throughout, to show what the choice does.
  split             Erbs, all diffuse beyond 87 deg
  transposition     Perez with the all-sites composite of 1990; Hay-Davies and isotropic beside it
  incidence loss    Martin and Ruiz with 0.16 for the beam, 0.95 for sky and ground
  cell temperature  King, Boyson and Kratochvil, the three sets the engine maps its mountings to
  power             linear in irradiance and temperature, low-light loss of 0.01 at 200 W/m2 after Marion
"""
import io
import pathlib
import sys

import numpy as np
import pandas as pd
import pvlib
from pvlib import atmosphere, clearsky, iam, irradiance, pvsystem, spa, temperature

SEED = 20260511
ROWS = 2000
TABLE = pathlib.Path(__file__).with_name("sky_table.csv")
SOLAR_CONSTANT = 1361.1
LIBRARY_CONSTANT = 1366.1
FIRST = pd.Timestamp("2020-01-01", tz="UTC").timestamp()
LAST = pd.Timestamp("2051-01-01", tz="UTC").timestamp()
MOUNTINGS = ["open_rack_glass_glass", "close_mount_glass_glass", "insulated_back_glass_polymer"]


def drawn(rng):
    """Places, times, planes and weather; the sun may be anywhere."""
    many = 5 * ROWS
    inputs = {
        "utc_s": np.floor(rng.uniform(FIRST, LAST, many)),
        "latitude_deg": np.round(rng.uniform(-66, 72, many), 4),
        "longitude_deg": np.round(rng.uniform(-180, 180, many), 4),
        "elevation_m": np.round(rng.uniform(0, 4000, many) * (rng.random(many) < 0.5)),
        "linke": np.round(rng.uniform(1.8, 7.0, many), 2),
        "sky_share": np.round(rng.uniform(0.05, 1.1, many), 3),
        "tilt_deg": np.round(rng.uniform(0, 90, many) * (rng.random(many) < 0.85), 1),
        "plane_azimuth_deg": np.round(rng.uniform(0, 360, many), 1),
        "albedo": np.round(rng.uniform(0.05, 0.8, many), 2),
        "mounting": rng.integers(0, 3, many),
        "air_C": np.round(rng.uniform(-25, 45, many), 1),
        "wind_m_s": np.round(rng.uniform(0, 12, many), 1),
        "peak_W": np.round(rng.uniform(50, 450, many)),
        "per_K": np.round(rng.uniform(-0.005, -0.002, many), 4),
    }
    return pd.DataFrame(inputs)


def sun(rows):
    """True zenith, refracted zenith and azimuth in deg by the algorithm of Reda and Andreas."""
    place = (rows.latitude_deg.to_numpy(), rows.longitude_deg.to_numpy(), rows.elevation_m.to_numpy())
    apparent, zenith, _, _, azimuth, _ = spa.solar_position_numpy(
        rows.utc_s.to_numpy(), *place, 1013.25, 15.0, 69.2, 0.5667, 1
    )
    return zenith, apparent, azimuth


def split(ghi, zenith, day):
    up = LIBRARY_CONSTANT / SOLAR_CONSTANT
    parts = irradiance.erbs(ghi * up, zenith, day)
    return np.asarray(parts["dni"]) / up, np.asarray(parts["dhi"]) / up


def chain(rows, zenith, apparent, azimuth):
    day = pd.to_datetime(rows.utc_s, unit="s", utc=True).dt.day_of_year.to_numpy()
    extra = irradiance.get_extra_radiation(day, solar_constant=SOLAR_CONSTANT, method="spencer")
    relative = atmosphere.get_relative_airmass(np.minimum(apparent, 90.0), "kastenyoung1989")
    absolute = atmosphere.get_absolute_airmass(relative, atmosphere.alt2pres(rows.elevation_m.to_numpy()))
    clear = clearsky.ineichen(
        zenith, absolute, rows.linke.to_numpy(), rows.elevation_m.to_numpy(), extra, perez_enhancement=False
    )
    ghi = clear["ghi"] * rows.sky_share.to_numpy()
    dni, dhi = split(ghi, zenith, day)
    tilt, facing, albedo = (rows[c].to_numpy() for c in ("tilt_deg", "plane_azimuth_deg", "albedo"))
    aoi = irradiance.aoi(tilt, facing, zenith, azimuth)
    beam = dni * np.maximum(np.cos(np.radians(aoi)), 0.0)
    ground = irradiance.get_ground_diffuse(tilt, ghi, albedo)
    isotropic = irradiance.isotropic(tilt, dhi)
    hay = irradiance.haydavies(tilt, facing, dhi, dni, extra, zenith, azimuth)
    perez = irradiance.perez(
        tilt, facing, dhi, dni, extra, zenith, azimuth, relative, model="allsitescomposite1990"
    )
    # On a level plane the engine keeps the diffuse light itself, also under the low sun where the floors of
    # the quotients in these two relations would not.
    hay, perez = (np.where(tilt == 0.0, dhi, sky) for sky in (hay, perez))
    poa = beam + perez + ground
    absorbed = beam * iam.martin_ruiz(aoi, 0.16) + 0.95 * (perez + ground)
    cell = np.empty(len(rows))
    for index, name in enumerate(MOUNTINGS):
        of = (rows.mounting == index).to_numpy()
        cell[of] = temperature.sapm_cell(
            poa[of], rows.air_C.to_numpy()[of], rows.wind_m_s.to_numpy()[of],
            **temperature.TEMPERATURE_MODEL_PARAMETERS["sapm"][name]
        )
    power = pvsystem.pvwatts_dc(
        absorbed, cell, rows.peak_W.to_numpy(), rows.per_K.to_numpy(), k=0.01, cap_adjustment=True
    )
    return {
        "clear_ghi": clear["ghi"], "clear_dni": clear["dni"], "dni": dni, "dhi": dhi,
        "poa_isotropic": beam + isotropic + ground, "poa_hay_davies": beam + hay + ground, "poa": poa,
        "absorbed": absorbed, "cell_C": cell, "power_W": power,
    }


def table():
    rows = drawn(np.random.default_rng(SEED))
    zenith, _, _ = sun(rows)
    rows = rows[zenith < 90.0].head(ROWS).reset_index(drop=True)
    zenith, apparent, azimuth = sun(rows)
    rows["zenith_deg"] = np.round(zenith, 5)
    rows["sun_azimuth_deg"] = np.round(azimuth, 5)
    for name, values in chain(rows, zenith, apparent, azimuth).items():
        rows[name] = np.round(values, 4)
    rows["poa_refracted"] = np.round(chain(rows, apparent, apparent, azimuth)["poa"], 4)
    if len(rows) != ROWS or rows.isna().any().any():
        sys.exit("sky_table: a row is missing or has no value.")
    for name in ("utc_s", "elevation_m", "peak_W"):
        rows[name] = rows[name].astype(int)
    text = io.StringIO()
    text.write(f"# Written by sky_table.py: pvlib {pvlib.__version__}, seed {SEED}, {ROWS} rows.\n")
    text.write("# Irradiance in W/m2, angles in deg, azimuths from north over east. Source: holmgren2018.\n")
    rows.to_csv(text, index=False, lineterminator="\n")
    return text.getvalue()


def values(text):
    return np.array([line.split(",") for line in text.splitlines()[3:]], dtype=float)


def check():
    """The last digit may differ between processors; anything more makes the table stale."""
    old = TABLE.read_text() if TABLE.exists() else ""
    new = table()
    if old.splitlines()[:3] != new.splitlines()[:3]:
        made = old.splitlines()[0] if old else "no table"
        sys.exit(f"sky_table: stale. There: {made}\n  Now:   {new.splitlines()[0]}")
    before, now = values(old), values(new)
    if before.shape != now.shape or np.max(np.abs(before - now)) > 2e-4:
        sys.exit("sky_table: stale: the same version and seed now give other numbers.")
    print("sky_table: up to date.")


if __name__ == "__main__":
    if sys.argv[1:] == ["--check"]:
        check()
    elif not sys.argv[1:]:
        TABLE.write_text(table())
    else:
        sys.exit(__doc__)
