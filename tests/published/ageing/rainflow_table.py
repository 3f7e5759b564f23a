#!/usr/bin/env python3
"""Writes rainflow_table.csv: what a rainflow library of the Python registry counts in 1,000 random series.

The library is rainflow (catalogue/references.bib: rainflowPython), which keeps the ends of a series and counts
what is left over as half cycles. Of a series of equal values it counts half a cycle of no range, which is left
out here. The C++ test beside this file draws the same series from the same numbers and holds its own counts
against the rows. Only this table needs Python: the test reads the file.

    rainflow_table.py           writes the table
    rainflow_table.py --check   says whether the table is what this script and the library make today

Series i is drawn from the stream of whole numbers keyed by (SEED, i), as in engine/base/random.h: its length
is 3 plus a number modulo 58, each value a number modulo 41 less 20. The fingerprint is the sum over the swings,
modulo 2^64, of the mixed number 2 range * 2^32 + (2 mean + 1000) * 2^8 + 2 count, which does not depend on
their order.
"""
import pathlib
import sys
from importlib.metadata import version

import rainflow

SEED = 6
ROWS = 1000
MASK = (1 << 64) - 1
TABLE = pathlib.Path(__file__).with_name("rainflow_table.csv")


def mixed(x):
    x = (x + 0x9E3779B97F4A7C15) & MASK
    x = ((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9) & MASK
    x = ((x ^ (x >> 27)) * 0x94D049BB133111EB) & MASK
    return x ^ (x >> 31)


def numbers(a, b):
    key = mixed(mixed(mixed(mixed(a) ^ b)))
    counter = 0
    while True:
        counter += 1
        yield mixed(key ^ mixed(counter))


def series(index):
    stream = numbers(SEED, index)
    length = 3 + next(stream) % 58
    return [next(stream) % 41 - 20 for _ in range(length)]


def row(index):
    values = series(index)
    swings = halves = path = fingerprint = 0
    for span, mean, count, _, _ in rainflow.extract_cycles(values):
        if span == 0:
            continue
        swings += 1
        halves += round(2 * count)
        path += round(2 * span * count)
        fingerprint += mixed((round(2 * span) << 32) + ((round(2 * mean) + 1000) << 8) + round(2 * count))
    return f"{index},{len(values)},{swings},{halves},{path},{fingerprint & MASK:016x}"


def table():
    head = [
        f"# Written by rainflow_table.py: rainflow {version('rainflow')}, seed {SEED}, {ROWS} series.",
        "index,length,swings,half_cycles,path,fingerprint",
    ]
    return "\n".join(head + [row(i) for i in range(ROWS)]) + "\n"


def check():
    old = TABLE.read_text() if TABLE.exists() else ""
    new = table()
    if old == new:
        print("rainflow_table: up to date.")
        return
    there = old.splitlines()[0] if old else "no table"
    sys.exit(f"rainflow_table: stale. There: {there}\n  Now:   {new.splitlines()[0]}")


if __name__ == "__main__":
    if sys.argv[1:] == ["--check"]:
        check()
    elif not sys.argv[1:]:
        TABLE.write_text(table())
    else:
        sys.exit(__doc__)
