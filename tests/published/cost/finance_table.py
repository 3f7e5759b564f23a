#!/usr/bin/env python3
"""Writes finance_table.csv: payments and what two finance libraries make of them.

The C++ test beside this file holds the engine's present value, internal rates, annuity and payback against the
rows. Only this table needs Python: the test reads the file. Libraries: catalogue/references.bib, numpyFinancial
and pyxirr; the roots of payments that change sign more than once are those of numpy's companion matrix.

    finance_table.py           writes the table
    finance_table.py --check   says whether the table is what this script and the libraries make today

Needs: pip install numpy-financial==1.0.0 pyxirr==0.10.8

A row is kind,rate,years,flows,answer; flows are year:amount and answers are parted by semicolons.
  npv      present value of yearly flows at the rate
  npv_at   the same of flows on any day of 365-day years
  irr      the one internal rate of yearly flows with one change of sign
  irr_at   the same of flows on any day
  rates    all internal rates of yearly flows with several changes of sign
  pv       present value of 1 at the end of each year
  pmt      the yearly sum that is worth 1 today
  payback  year in which an equal yearly saving has paid back the first flow
"""
import datetime
import math
import pathlib
import sys

import numpy as np
import numpy_financial as npf
import pyxirr

SEED = 20260606
TABLE = pathlib.Path(__file__).with_name("finance_table.csv")
START = datetime.date(2026, 1, 1)
LEAST, GREATEST = -0.99, 99.0


def row(kind, rate, years, flows, answers):
    listed = ";".join(f"{year!r}:{amount!r}" for year, amount in flows)
    return f"{kind},{rate!r},{years!r},{listed},{';'.join(repr(float(a)) for a in answers)}"


def yearly(amounts):
    return [(float(i), float(a)) for i, a in enumerate(amounts)]


def present_values(rng):
    for _ in range(120):
        amounts = np.round(rng.uniform(-2000, 2000, rng.integers(2, 31)), 2)
        rate = round(float(rng.uniform(-0.3, 0.6)), 4)
        value = npf.npv(rate, amounts)
        assert abs(value - pyxirr.npv(rate, amounts)) < 1e-9 * np.abs(amounts).sum() * max(1.0, (1 + rate) ** -31)
        yield row("npv", rate, 0.0, yearly(amounts), [value])


def dated(rng):
    days = np.concatenate([[0], np.sort(rng.choice(np.arange(1, 365 * 20), rng.integers(1, 25), replace=False))])
    return days, [START + datetime.timedelta(days=int(d)) for d in days]


def present_values_at(rng):
    for _ in range(80):
        days, dates = dated(rng)
        amounts = np.round(rng.uniform(-2000, 2000, len(days)), 2)
        rate = round(float(rng.uniform(-0.2, 0.5)), 4)
        flows = [(float(d) / 365.0, float(a)) for d, a in zip(days, amounts)]
        yield row("npv_at", rate, 0.0, flows, [pyxirr.xnpv(rate, dates, amounts)])


def rates_of_one_change(rng):
    made = 0
    while made < 120:
        amounts = np.round(rng.uniform(10, 600, rng.integers(2, 31)), 2)
        first = rng.integers(1, max(2, len(amounts) // 3 + 1))
        amounts[:first] *= -1
        rate = npf.irr(amounts)
        if np.isnan(rate) or not -0.9 < rate < 20:
            continue
        assert abs(rate - pyxirr.irr(amounts)) < 1e-8
        made += 1
        yield row("irr", 0.0, 0.0, yearly(amounts), [rate])


def rates_at(rng):
    made = 0
    while made < 60:
        days, dates = dated(rng)
        amounts = np.round(rng.uniform(10, 600, len(days)), 2)
        amounts[0] = -round(float(rng.uniform(100, 3000)), 2)
        rate = pyxirr.xirr(dates, amounts)
        if rate is None or not -0.8 < rate < 10:
            continue
        made += 1
        flows = [(float(d) / 365.0, float(a)) for d, a in zip(days, amounts)]
        yield row("irr_at", 0.0, 0.0, flows, [rate])


def several_rates(rng):
    """Only rows whose roots stand clear of each other, of the real axis and of the ends of the range."""
    made = 0
    while made < 120:
        # From rates that are wanted, so that several exist: the product of (1 - (1 + r) x).
        wanted = np.round(rng.uniform(-0.5, 2.0, rng.integers(2, 5)), 2)
        amounts = np.array([1.0])
        for r in wanted:
            amounts = np.convolve(amounts, [1.0, -(1.0 + r)])
        amounts = np.convolve(amounts, rng.uniform(0.2, 1.0, rng.integers(1, 4)))
        amounts = np.round(amounts * float(rng.choice([-1000, 1000])), 3)
        if np.any(amounts == 0.0):
            continue
        roots = np.roots(amounts)  # of the sum of amount (1 + r)^(n - year): the same roots, in 1 + r
        if np.any((np.abs(roots.imag) > 0) & (np.abs(roots.imag) < 1e-3) & (roots.real > 0)):
            continue
        real = np.sort(roots[np.abs(roots.imag) == 0].real)
        rates = real[(real > 1 + LEAST) & (real < 1 + GREATEST)] - 1.0
        if len(rates) < 2 or np.min(np.diff(rates)) < 0.01:
            continue
        made += 1
        yield row("rates", 0.0, 0.0, yearly(amounts), rates)


def annuities(rng):
    for _ in range(60):
        rate = round(float(rng.uniform(0.0, 0.3)), 4) if rng.random() < 0.9 else 0.0
        years = float(rng.integers(1, 41))
        yield row("pv", rate, years, [], [npf.pv(rate, years, -1.0)])
        yield row("pmt", rate, years, [], [npf.pmt(rate, years, -1.0)])


def paybacks(rng):
    made = 0
    while made < 60:
        price = round(float(rng.uniform(100, 3000)), 2)
        saving = round(float(rng.uniform(20, 800)), 2)
        rate = round(float(rng.uniform(0.001, 0.2)), 4)
        if price * rate >= 0.95 * saving:
            continue
        periods = float(npf.nper(rate, saving, -price))
        year = math.ceil(periods)
        if year > 60 or abs(periods - round(periods)) < 1e-6:
            continue
        made += 1
        yield row("payback", rate, 0.0, [(0.0, -price)] + [(float(y), saving) for y in range(1, 61)], [year])


def table():
    rng = np.random.default_rng(SEED)
    made_by = f"numpy-financial {npf.__version__}, pyxirr {pyxirr.__version__}"
    lines = [f"# Written by finance_table.py: {made_by}, seed {SEED}.", "kind,rate,years,flows,answer"]
    for part in (present_values, present_values_at, rates_of_one_change, rates_at, several_rates, annuities, paybacks):
        lines.extend(part(rng))
    return "\n".join(lines) + "\n"


def numbers(text):
    return [[float(a) for a in line.rsplit(",", 1)[1].split(";")] for line in text.splitlines()[2:]]


def check():
    """The last digits may differ between processors; anything more makes the table stale."""
    old = TABLE.read_text() if TABLE.exists() else ""
    new = table()
    if old.splitlines()[:2] != new.splitlines()[:2]:
        made = old.splitlines()[0] if old else "no table"
        sys.exit(f"finance_table: stale. There: {made}\n  Now:   {new.splitlines()[0]}")
    before, now = numbers(old), numbers(new)
    if [len(r) for r in before] != [len(r) for r in now]:
        sys.exit("finance_table: stale: the same versions and seed now give other rows.")
    for one, other in zip(before, now):
        for a, b in zip(one, other):
            if abs(a - b) > 1e-9 * max(1.0, abs(a)):
                sys.exit("finance_table: stale: the same versions and seed now give other numbers.")
    print("finance_table: up to date.")


if __name__ == "__main__":
    if sys.argv[1:] == ["--check"]:
        check()
    elif not sys.argv[1:]:
        TABLE.write_text(table())
    else:
        sys.exit(__doc__)
